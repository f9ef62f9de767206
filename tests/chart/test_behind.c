/* SPDX-License-Identifier: MIT */
/* An axle from behind: how the body leans and the wheels stand on the picture, measured in its pixels. */
#include "support/case_sample.h"
#include "support/check.h"

#include "chart/set.h"
#include "chart/style.h"
#include "giveway/pick.h"
#include "giveway/units.h"
#include "show/compare_charts.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <string.h>

typedef struct drawn {
    gw_case c;
    gw_deflect_study deflect;
    gw_picture_study pictures;
    gw_charts charts;
    int load;
} drawn;

static void draw(const char *path, drawn *d)
{
    const gw_selection all = { 0 };
    const gw_grid_study none = { 0 };
    gw_laws laws;
    sample_load(path, &d->c);
    gw_charts_begin(&d->charts, "nowhere", GW_CHART_SVG);
    assert_int_equal(gw_laws_make(&d->c, GW_METHOD_SOLVED, &laws, NULL), GW_OK);
    assert_int_equal(gw_study_deflect(&d->c, &all, &d->deflect, NULL), GW_OK);
    assert_int_equal(gw_study_pictures(&d->c, &laws, &d->deflect, &none, &d->pictures, NULL), GW_OK);
    gw_behind_charts(&d->c, &d->deflect, &d->pictures, &d->charts);
    d->load = gw_pick_load(&d->c, &d->deflect, GW_PICK_CORNER);
    gw_laws_free(&laws);
}

static void let_go(drawn *d)
{
    gw_charts_free(&d->charts);
    gw_picture_study_free(&d->pictures);
    gw_deflect_study_free(&d->deflect);
    gw_case_free(&d->c);
}

static const gw_layout *page_of(const drawn *d, const char *stem)
{
    for (int i = 0; i < d->charts.n_pages; i++)
        if (strcmp(d->charts.page[i].stem, stem) == 0) return &d->charts.page[i].layout;
    fail_msg("no chart %s", stem);
    return NULL;
}

/* The last stroke in a colour: of the body its middle, of a wheel its tyre. */
static const gw_shape *last_line(const gw_layout *l, const char *colour)
{
    const gw_shape *found = NULL;
    for (int i = 0; i < l->n_shapes; i++)
        if (l->shape[i].kind == GW_SHAPE_LINE && strcmp(l->shape[i].colour, colour) == 0)
            found = &l->shape[i];
    assert_non_null(found);
    return found;
}

/* Of a line from a to b, to the left of upright [rad]; pixels count down. */
static double lean(gw_point a, gw_point b)
{
    return atan2(a.x - b.x, a.y - b.y);
}

static void body_leans_to_the_outer_side_by_three_times_its_roll(void **unused)
{
    (void)unused;
    drawn d = { 0 };
    draw("cases/fast-saloon.json", &d);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        const gw_deflection *item = gw_deflect_find(&d.deflect, 0, a, d.load);
        const gw_layout *l = page_of(&d, a == GW_FRONT ? "axle-front-rubber" : "axle-rear-rubber");
        const gw_shape *middle = last_line(l, gw_style_colour(0));
        assert_int_equal(middle->n, 2);
        check_abs(lean(middle->at[0], middle->at[1]) / GW_DEG, 3.0 * item->roll / GW_DEG, 0.01, "body");
    }
    let_go(&d);
}

/* The body's outline: of its colour, with more than two points. */
static const gw_shape *outline(const gw_layout *l)
{
    for (int i = 0; i < l->n_shapes; i++)
        if (l->shape[i].kind == GW_SHAPE_LINE && l->shape[i].n > 2 &&
            strcmp(l->shape[i].colour, gw_style_colour(0)) == 0)
            return &l->shape[i];
    fail_msg("no outline of the body");
    return NULL;
}

/* Along the body's middle and across it, from its foot. */
static gw_point from_middle(const gw_shape *middle, gw_point p)
{
    gw_point foot = middle->at[0], up = { middle->at[1].x - foot.x, middle->at[1].y - foot.y };
    double length = hypot(up.x, up.y), x = p.x - foot.x, y = p.y - foot.y;
    return (gw_point){ (x * up.x + y * up.y) / length, (x * up.y - y * up.x) / length };
}

/* What is fixed to the body is alike left and right, so its outline leans as its middle does. */
static void body_leans_as_one(void **unused)
{
    (void)unused;
    drawn d = { 0 };
    draw("cases/fast-saloon.json", &d);
    for (int a = 0; a < GW_AXLES; a++) {
        const gw_layout *l = page_of(&d, a == GW_FRONT ? "axle-front-rubber" : "axle-rear-rubber");
        const gw_shape *middle = last_line(l, gw_style_colour(0)), *body = outline(l);
        for (int i = 0; i < body->n; i++) {
            gw_point p = from_middle(middle, body->at[i]);
            double nearest = HUGE_VAL;
            for (int j = 0; j < body->n; j++) {
                gw_point q = from_middle(middle, body->at[j]);
                nearest = fmin(nearest, hypot(q.x - p.x, q.y + p.y));
            }
            check_abs(nearest, 0.0, 0.01, "the same corner on the other side");
        }
    }
    let_go(&d);
}

/* A tyre leans by its setting and three times what it has gained to the road: outer and inner, both to the
 * left; all stand on the ground, however their tyres give. */
static void tyres_stand_on_the_ground_at_their_camber_to_the_road(void **unused)
{
    (void)unused;
    static const char *const CARS[] = { "cases/fast-saloon.json", "cases/live-axle.json" };
    for (size_t i = 0; i < sizeof CARS / sizeof *CARS; i++) {
        drawn d = { 0 };
        draw(CARS[i], &d);
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            const gw_axle_pictures *of = gw_pictures_find(&d.pictures, 0, a);
            const gw_picture *p = &of->load[d.load];
            const gw_layout *l = page_of(&d, a == GW_FRONT ? "axle-front-rubber" : "axle-rear-rubber");
            double bottom[2];
            for (int w = 0; w < GW_WHEELS; w++) {
                const gw_shape *tyre = last_line(l, gw_style_colour(w == GW_LEFT_WHEEL ? 1 : 2));
                double out = w == GW_LEFT_WHEEL ? 1.0 : -1.0;
                double gained = p->roll + out * (p->camber[w] - of->static_camber[w]);
                double want = out * of->static_camber[w] + 3.0 * gained;
                assert_int_equal(tyre->n, 5);
                check_abs(lean(tyre->at[0], tyre->at[1]) / GW_DEG, want / GW_DEG, 0.15, "tyre");
                check_abs(tyre->at[0].y, tyre->at[3].y, 1e-6, "both edges on the ground");
                bottom[w] = tyre->at[0].y;
            }
            check_abs(bottom[0], bottom[1], 1e-6, "on one ground");
        }
        let_go(&d);
    }
}

static void case_without_a_corner_to_drive_through_has_no_such_picture(void **unused)
{
    (void)unused;
    drawn d = { 0 };
    draw("cases/fast-saloon.json", &d);
    const gw_charts before = d.charts;
    for (int l = 0; l < d.c.n_loads; l++) d.c.loads[l].manoeuvre.lateral_g = 0.0;
    gw_behind_charts(&d.c, &d.deflect, &d.pictures, &d.charts);
    assert_int_equal(d.charts.n_pages, before.n_pages);
    let_go(&d);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(body_leans_to_the_outer_side_by_three_times_its_roll),
        cmocka_unit_test(body_leans_as_one),
        cmocka_unit_test(tyres_stand_on_the_ground_at_their_camber_to_the_road),
        cmocka_unit_test(case_without_a_corner_to_drive_through_has_no_such_picture),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
