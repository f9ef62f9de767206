/* SPDX-License-Identifier: MIT */
/* Bushes that were measured: their curves, given as points or as the file of the press, and a dynamic test.
 */
#include "casefile/bench_file.h"
#include "casefile/document.h"
#include "casefile/section.h"
#include "giveway/units.h"

#include <string.h>

enum { MOST_POINTS = 500 };

/* One way of a bush: its curve for all directions, or two of them, or its rates. */
static const struct {
    const char *round, *e1, *e2, *rate;
    gw_curve_way way; /* of `round`; those of e1 and e2 follow */
} WAY[] = {
    { "radial", "radial_e1", "radial_e2", "radial_N_per_mm", GW_CURVE_RADIAL },
    { "axial", NULL, NULL, "axial_N_per_mm", GW_CURVE_AXIAL },
    { "conical", "conical_e1", "conical_e2", "conical_Nm_per_deg", GW_CURVE_CONICAL },
    { "torsional", NULL, NULL, "torsional_Nm_per_deg", GW_CURVE_TORSIONAL },
};

#define AT(field) offsetof(gw_rig_law, field)
static const gw_number_key RIG[] = {
    { "rate_N_per_mm", GW_REQUIRED, GW_ABOVE(0, 1e12), GW_N_PER_MM, 0, AT(rate) },
    { "zener_gain", GW_REQUIRED, GW_ABOVE(0, 1e6), 1, 0, AT(zener_gain) },
    { "zener_tau_s", GW_REQUIRED, GW_ABOVE(0, 1e6), 1, 0, AT(zener_tau) },
    { "zener_alpha", GW_REQUIRED, GW_ABOVE(0, 1), 1, 0, AT(zener_alpha) },
    { "payne_gain", GW_REQUIRED, GW_FROM(0, 1e3), 1, 0, AT(payne_gain) },
    { "payne_amplitude_mm", GW_OPTIONAL, GW_ABOVE(0, 1e4), GW_MM, 0, AT(payne_amplitude) },
    { "payne_exponent", GW_OPTIONAL, GW_ABOVE(0, 2), 1, 0, AT(payne_exponent) },
};

static bool is_turn(gw_curve_way way)
{
    return way >= GW_CURVE_CONICAL;
}

static bool take_point(const gw_reader *rd, const gw_node *node, double point[2])
{
    const gw_range range = GW_FROM(-1e9, 1e9);
    bool ok = true;
    int i = 0;
    if (!cJSON_IsArray(node->json) || cJSON_GetArraySize(node->json) != 2) {
        char found[80];
        gw_fault(rd, node, "expected a list of two numbers, deflection and force, found %s",
                 gw_found(node, found));
        return false;
    }
    for (const cJSON *e = node->json->child; e; e = e->next, i++) {
        gw_node entry = gw_node_entry(node, e, i);
        ok = gw_take_number(rd, &entry, range, &point[i]) && ok;
    }
    return ok;
}

/* Points as numbers of the case; the curve takes them over in SI. */
static bool make_curve(const gw_reader *rd, const gw_node *list, const double *x, const double *y, int n,
                       gw_curve *out)
{
    double *room_x = gw_reader_make(rd, 2 * n + 3, sizeof *room_x),
           *room_y = gw_reader_make(rd, 2 * n + 3, sizeof *room_y);
    int bad = -1;
    if (!room_x || !room_y) return false;
    gw_status st = gw_curve_make(x, y, n, room_x, room_y, out, &bad, NULL);
    if (st == GW_OK) return true;
    gw_node entry = bad >= 0 ? gw_node_entry(list, cJSON_GetArrayItem(list->json, bad), bad) : *list;
    if (bad >= 0)
        gw_fault(rd, &entry,
                 "expected deflection and force that rise strictly from point to point, (0, 0) counted");
    else
        gw_fault(rd, &entry, "expected two points or more, (0, 0) not counted");
    return false;
}

static bool read_points(const gw_reader *rd, const gw_node *list, bool turn, gw_curve *out)
{
    double x[MOST_POINTS], y[MOST_POINTS];
    int i = 0;
    bool ok = true;
    if (!gw_is_within(rd, list, MOST_POINTS, "points")) return false;
    for (const cJSON *e = gw_first(list); e; e = gw_node_next(e), i++) {
        gw_node entry = gw_node_entry(list, e, i);
        double point[2] = { 0 };
        ok = take_point(rd, &entry, point) && ok;
        x[i] = point[0] * (turn ? GW_DEG : GW_MM);
        y[i] = point[1];
    }
    return ok && make_curve(rd, list, x, y, i, out);
}

/* The static file of a press beside the case. */
static bool read_press(const gw_reader *rd, const gw_node *node, const char *name, bool turn, gw_curve *out)
{
    gw_reader at = { gw_beside(rd, name), rd->faults, rd->arena, rd->again };
    gw_bench_file file;
    bool ok = false;
    if (!at.file || gw_bench_file_read(&at, at.file, &file) != GW_OK) return false;
    if (file.kind != (turn ? GW_BENCH_MOMENT : GW_BENCH_FORCE))
        gw_fault(rd, node, "expected a file of %s: this one is of another kind",
                 turn ? "angle_deg and moment_Nm" : "deflection_mm and force_N");
    else
        ok = make_curve(rd, node, file.press.x, file.press.f, file.press.n, out);
    if (ok) gw_bench_file_doubts(&at, &file);
    gw_bench_file_free(&file);
    return ok;
}

static const gw_curve *read_curve(const gw_reader *rd, const gw_node *node, bool turn)
{
    static const char *const KEYS[] = { "points", "file", NULL };
    const char *name;
    gw_node points = gw_node_key(node, "points"), file = gw_node_key(node, "file");
    gw_curve *curve = gw_reader_make(rd, 1, sizeof *curve);
    if (!curve || !gw_is_object(rd, node, "an object { } with points or file")) return NULL;
    gw_check_keys(rd, node, NULL, 0, KEYS);
    if ((points.json != NULL) == (file.json != NULL)) {
        gw_fault(rd, node, "expected either \"points\" or \"file\"");
        return NULL;
    }
    if (points.json)
        return gw_is_list(rd, &points, "a list of points") && read_points(rd, &points, turn, curve) ? curve
                                                                                                    : NULL;
    if (!gw_get_text(rd, node, "file", GW_REQUIRED, GW_MAX_TEXT_BYTES, &name)) return NULL;
    return read_press(rd, &file, name, turn, curve) ? curve : NULL;
}

static int count_given(const gw_node *node, int i)
{
    const char *const key[] = { WAY[i].round, WAY[i].e1, WAY[i].rate };
    int n = 0;
    for (int k = 0; k < 3; k++) n += key[k] && gw_node_key(node, key[k]).json;
    return n;
}

static void read_rate(const gw_reader *rd, const gw_node *node, int i, gw_given_rates *r)
{
    const gw_range range = GW_FROM(0, 1e12);
    double v[2] = { 0 };
    if (WAY[i].e1)
        gw_get_pair(rd, node, WAY[i].rate, range, v);
    else
        gw_get_number(rd, node, WAY[i].rate, GW_REQUIRED, range, v);
    if (WAY[i].way == GW_CURVE_AXIAL) r->axial = v[0] * GW_N_PER_MM;
    if (WAY[i].way == GW_CURVE_TORSIONAL) r->torsional = v[0] * GW_NM_PER_DEG;
    for (int k = 0; k < 2; k++) {
        if (WAY[i].way == GW_CURVE_RADIAL) r->radial[k] = v[k] * GW_N_PER_MM;
        if (WAY[i].way == GW_CURVE_CONICAL) r->conical[k] = v[k] * GW_NM_PER_DEG;
    }
}

static void read_way(const gw_reader *rd, const gw_node *node, int i, gw_bush *bush)
{
    const char *const key[] = { WAY[i].round, WAY[i].e1, WAY[i].e2 };
    gw_node round = gw_node_key(node, WAY[i].round);
    if (count_given(node, i) != 1) {
        if (WAY[i].e1)
            gw_fault(rd, &round, "expected exactly one of \"%s\", \"%s\" with \"%s\", and \"%s\"",
                     WAY[i].round, WAY[i].e1, WAY[i].e2, WAY[i].rate);
        else
            gw_fault(rd, &round, "expected exactly one of \"%s\" and \"%s\"", WAY[i].round, WAY[i].rate);
        return;
    }
    for (int k = 0; k < 3; k++) {
        gw_node curve = gw_node_key(node, key[k] ? key[k] : "");
        if (key[k] && curve.json)
            bush->curve[(int)WAY[i].way + k] = read_curve(rd, &curve, is_turn(WAY[i].way));
    }
    if (gw_node_key(node, WAY[i].rate).json) read_rate(rd, node, i, &bush->rates);
}

/* Two curves across the bush belong together. */
static void check_pair(const gw_reader *rd, const gw_node *node, int i)
{
    if (!WAY[i].e1) return;
    gw_node one = gw_node_key(node, WAY[i].e1), two = gw_node_key(node, WAY[i].e2);
    if ((one.json != NULL) == (two.json != NULL)) return;
    gw_fault(rd, one.json ? &two : &one, "this key is missing: \"%s\" and \"%s\" belong together", WAY[i].e1,
             WAY[i].e2);
}

static void check_any_curve(const gw_reader *rd, const gw_node *node)
{
    static const char *const CURVES[] = {
        "radial", "radial_e1", "axial", "conical", "conical_e1", "torsional"
    };
    for (size_t i = 0; i < GW_COUNT(CURVES); i++)
        if (gw_node_key(node, CURVES[i]).json) return;
    gw_fault(rd, node, "expected at least one curve; rates alone are a bush of type \"rates\"");
}

static void read_rig_file(const gw_reader *rd, const gw_node *node, gw_rig_law *law)
{
    gw_node key = gw_node_key(node, "file");
    const char *name;
    gw_bench_file file;
    if (!gw_get_text(rd, node, "file", GW_REQUIRED, GW_MAX_TEXT_BYTES, &name)) return;
    gw_reader at = { gw_beside(rd, name), rd->faults, rd->arena, rd->again };
    if (!at.file || gw_bench_file_read(&at, at.file, &file) != GW_OK) return;
    if (file.kind == GW_BENCH_DYNAMIC) {
        *law = file.rig.law;
        gw_bench_file_doubts(&at, &file);
    } else {
        gw_fault(rd, &key,
                 "expected a file of frequency_Hz, amplitude_mm, stiffness_N_per_mm and loss_angle_deg");
    }
    gw_bench_file_free(&file);
}

static void read_dynamic(const gw_reader *rd, const gw_node *bush, gw_rig_law *law)
{
    static const char *const KEYS[] = { "file", NULL };
    static const char *const PAYNE[] = { "payne_amplitude_mm", "payne_exponent" };
    gw_node node;
    if (!gw_get_object(rd, bush, "dynamic", GW_OPTIONAL, &node)) return;
    if (gw_node_key(&node, "file").json) {
        gw_check_keys(rd, &node, NULL, 0, KEYS);
        read_rig_file(rd, &node, law);
        return;
    }
    gw_check_keys(rd, &node, RIG, GW_COUNT(RIG), NULL);
    law->given = gw_get_numbers(rd, &node, RIG, GW_COUNT(RIG), law);
    for (int i = 0; i < 2; i++) {
        gw_node key = gw_node_key(&node, PAYNE[i]);
        bool wanted = law->given && law->payne_gain > 0.0;
        if (wanted && !key.json) gw_fault(rd, &key, "this key is missing: payne_gain above 0 needs it");
        if (law->given && !wanted && key.json) gw_fault(rd, &key, "this belongs to a payne_gain above 0");
    }
}

/* A dynamic test of another bush, or in other units, shows in its rate. */
static void compare_rates(const gw_reader *rd, const gw_node *node, const gw_bush *bush)
{
    gw_bush plain = *bush;
    gw_bush_law law;
    if (!bush->rig.given) return;
    plain.stiffness_factor = 1.0;
    plain.rig.given = false;
    if (gw_bush_law_make(&plain, GW_METHOD_HANDBOOK, &law, NULL) != GW_OK) return;
    double slow = gw_bush_rate_across(&law);
    if (!(slow > 0.0)) {
        gw_node at = gw_node_key(node, "dynamic");
        gw_fault(rd, &at, "a test across a bush that has no rate across or along it: give its radial curve");
    } else if (fabs(bush->rig.rate / slow - 1.0) > 1.0 / 3) {
        gw_node at = gw_node_key(node, "dynamic");
        gw_warn(rd, &at,
                "its rate, %.4g N/mm, is more than a third off the %.4g N/mm at zero of the slow test",
                bush->rig.rate / GW_N_PER_MM, slow / GW_N_PER_MM);
    }
}

void gw_read_measured(const gw_reader *rd, const gw_node *node, gw_bush *bush)
{
    const int before = gw_faults_count(rd->faults);
    for (size_t i = 0; i < GW_COUNT(WAY); i++) {
        check_pair(rd, node, (int)i);
        read_way(rd, node, (int)i, bush);
    }
    check_any_curve(rd, node);
    read_dynamic(rd, node, &bush->rig);
    if (gw_faults_count(rd->faults) == before) compare_rates(rd, node, bush);
}
