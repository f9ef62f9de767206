/* SPDX-License-Identifier: MIT */
/* What a reader has to know beside the figures, in words. */
#include "ride/remarks.h"

#include <math.h>

enum { MAX_WARNINGS = 64 };

static gw_status no_memory(gw_error *err)
{
    return gw_fail(err, GW_E_NOMEM, "out of memory while writing the remarks on ride");
}

/* A message written by gw_fail, kept with the result. */
static gw_status keep(gw_ride_result *result, const gw_error *text, gw_error *err)
{
    if (!result->warnings)
        result->warnings = gw_arena_alloc(&result->arena, MAX_WARNINGS, sizeof *result->warnings);
    if (!result->warnings) return no_memory(err);
    if (result->n_warnings == MAX_WARNINGS) return GW_OK;
    char *copy = gw_arena_strdup(&result->arena, text->msg);
    if (!copy) return no_memory(err);
    result->warnings[result->n_warnings++] = copy;
    return GW_OK;
}

typedef enum role { ROLE_BODY, ROLE_VERTICAL, ROLE_FORE_AFT, ROLES } role;
static const char *const ROLE_NAME[ROLES] = { "body", "wheel vertical", "wheel fore-aft" };

static double share_of(const gw_ride_mode *mode, role which)
{
    if (which == ROLE_BODY) return mode->body;
    return which == ROLE_VERTICAL ? mode->wheel_vertical : mode->wheel_fore_aft;
}

static int largest_share(const gw_ride_result *result, role which, double highest, int except)
{
    int most = -1;
    for (int i = 0; i < result->n_modes; i++)
        if (i != except && (which == ROLE_BODY || result->modes[i].hz < highest) &&
            (most < 0 || share_of(&result->modes[i], which) > share_of(&result->modes[most], which)))
            most = i;
    return most;
}

/* A second mode with at least half the share of the first. */
static gw_status remark_second(gw_ride_result *result, role which, double highest, int first, gw_error *err)
{
    int second = largest_share(result, which, highest, first);
    if (second < 0) return GW_OK;
    const gw_ride_mode *a = &result->modes[first], *b = &result->modes[second];
    double share_a = share_of(a, which), share_b = share_of(b, which);
    if (share_b < 0.5 * share_a) return GW_OK;
    gw_error text;
    gw_fail(&text, GW_OK, "two modes share the %s movement: %.3g Hz (%.0f %%) and %.3g Hz (%.0f %%)",
            ROLE_NAME[which], a->hz, 100.0 * share_a, b->hz, 100.0 * share_b);
    return keep(result, &text, err);
}

static gw_status remark_double(gw_ride_result *result, int mode, role a, role b, gw_error *err)
{
    gw_error text;
    gw_fail(&text, GW_OK, "one mode, at %.3g Hz, is both the %s and the %s mode", result->modes[mode].hz,
            ROLE_NAME[a], ROLE_NAME[b]);
    return keep(result, &text, err);
}

/* A part without weight has no mode of its own. */
static gw_status remark_shared(const gw_corner *corner, int body, gw_ride_result *result, gw_error *err)
{
    const gw_ride_mode *most = NULL;
    gw_error text;
    for (int i = 0; i < result->n_modes; i++) {
        const gw_ride_mode *mode = &result->modes[i];
        bool moves = mode->shared > 0.25 && mode->shared_body == body && mode->hz < GW_NOISE_HIGH;
        if (moves && (!most || mode->shared > most->shared)) most = mode;
    }
    if (!most) return GW_OK;
    gw_fail(&text, GW_OK, "the %s that both wheels share moves most at %.3g Hz: %s",
            corner->bodies[body].name, most->hz, most->words);
    return keep(result, &text, err);
}

gw_status gw_remark_modes(const gw_corner *corner, gw_ride_result *result, gw_error *err)
{
    double highest = gw_is_pair(corner) ? GW_NOISE_HIGH : HUGE_VAL;
    int *const index[ROLES] = { &result->body, &result->wheel_vertical, &result->wheel_fore_aft };
    gw_status st = GW_OK;
    for (role r = ROLE_BODY; r < ROLES && st == GW_OK; r++) {
        *index[r] = largest_share(result, r, highest, -1);
        if (*index[r] >= 0) st = remark_second(result, r, highest, *index[r], err);
        for (role q = ROLE_BODY; q < r && st == GW_OK && *index[r] >= 0; q++)
            if (*index[q] == *index[r]) st = remark_double(result, *index[r], q, r, err);
    }
    for (int b = corner->first_shared; gw_is_pair(corner) && b < corner->right_upright && st == GW_OK; b++)
        st = remark_shared(corner, b, result, err);
    return st;
}

static gw_status remark_part(gw_ride_result *result, const gw_ride_mode *mode, const char *figure,
                             double part, double all, gw_error *err)
{
    if (!(part > 0.5 * all)) return GW_OK;
    gw_error text;
    gw_fail(&text, GW_OK,
            "the mode at %.4g Hz (%s) has %.2g %% damping and carries %.0f %% of the %s power: the figure "
            "hangs on that damping",
            mode->damped_hz, mode->words, 100.0 * mode->zeta, 100.0 * part / all, figure);
    return keep(result, &text, err);
}

/* A resonance holds 94 % of its power within ten half-widths on either side. */
gw_status gw_remark_sharp(gw_ride_sweep *sweep, const gw_figures *all, gw_ride_result *result, gw_error *err)
{
    double *path = gw_arena_alloc(&result->arena, (size_t)sweep->model->n_paths, sizeof *path);
    if (!path) return no_memory(err);
    for (int i = 0; i < result->n_modes; i++) {
        const gw_ride_mode *mode = &result->modes[i];
        gw_figures part = { .path = path };
        double low = fmax(mode->damped_hz * (1.0 - 10.0 * mode->zeta), GW_COMFORT_LOW);
        double high = fmin(mode->damped_hz * (1.0 + 10.0 * mode->zeta), GW_NOISE_HIGH);
        if (!mode->tracked || mode->zeta >= 0.01 || high <= low) continue;
        gw_status st = gw_figures_part(sweep, low, high, &part, err);
        if (st == GW_OK) st = remark_part(result, mode, "comfort", part.comfort, all->comfort, err);
        if (st == GW_OK) st = remark_part(result, mode, "harshness", part.harshness, all->harshness, err);
        if (st == GW_OK) st = remark_part(result, mode, "road noise", part.noise, all->noise, err);
        if (st != GW_OK) return st;
    }
    return GW_OK;
}

/* One line, however many there are: which they are stands in `isolation`. */
gw_status gw_remark_brackets(const gw_corner *corner, gw_ride_result *result, gw_error *err)
{
    const gw_isolation *worst = NULL;
    gw_error text;
    int weak = 0;
    for (int i = 0; i < result->n_isolation; i++) {
        const gw_isolation *at = &result->isolation[i];
        if (!at->weak) continue;
        weak++;
        if (!worst || at->ratio < worst->ratio) worst = at;
    }
    if (!worst) return GW_OK;
    gw_fail(
        &text, GW_OK,
        "%d of %d brackets are less than five times as stiff as the bush in motion, that of %s %.2g times; "
        "five or more is common practice, so the body counts there as much as the bush",
        weak, result->n_isolation, corner->joints[worst->joint].name, worst->ratio);
    return keep(result, &text, err);
}

gw_status gw_remark_play(const gw_corner *corner, const gw_fit *fit, gw_ride_result *result, gw_error *err)
{
    const char *first = NULL;
    gw_error text;
    int loose = 0;
    for (int j = 0; j < corner->n_joints; j++) {
        if (!(fit[j].law.clearance > 0.0)) continue;
        if (!first) first = corner->joints[j].name;
        loose++;
    }
    if (!loose) return GW_OK;
    gw_fail(&text, GW_OK,
            "%d of %d joints have play (%s%s): they are taken as tight, and the rattle that play makes is "
            "left out",
            loose, corner->n_joints, first, loose > 1 ? " and others" : "");
    return keep(result, &text, err);
}

gw_status gw_remark_slow_test(const gw_corner *corner, const gw_fit *fit, gw_ride_result *result,
                              gw_error *err)
{
    const char *first = NULL;
    gw_error text;
    int slow = 0;
    for (int j = 0; j < corner->n_joints; j++) {
        if (!gw_bush_has_curves(&fit[j].law) || fit[j].law.dynamic.zener_gain > 0.0) continue;
        if (!first) first = corner->joints[j].name;
        slow++;
    }
    if (!slow) return GW_OK;
    gw_fail(
        &text, GW_OK,
        "%d of %d joints have bushes that were measured slowly (%s%s): such a test does not know the dynamic "
        "stiffness, which stands on dynamic_ratio and loss_factor; give a dynamic test",
        slow, corner->n_joints, first, slow > 1 ? " and others" : "");
    return keep(result, &text, err);
}

gw_status gw_remark_wavers(const char *what, gw_ride_result *result, gw_error *err)
{
    gw_error text;
    result->wavers = gw_arena_strdup(&result->arena, what);
    gw_fail(&text, GW_OK, "friction does not settle: %s; the figures of ride are left out", what);
    return result->wavers ? keep(result, &text, err) : no_memory(err);
}

gw_status gw_remark_road(const gw_ride *settings, gw_ride_result *result, gw_error *err)
{
    gw_error text;
    double top = GW_ROAD_N_MAX * settings->speed, bottom = GW_ROAD_N_MIN * settings->speed;
    result->road_limit_hz = top;
    gw_fail(
        &text, GW_OK,
        "ISO 8608 describes roads from %.3g to %.3g cycle/m, at this speed %.3g to %.3g Hz; beyond that the "
        "spectrum is extrapolated",
        GW_ROAD_N_MIN, GW_ROAD_N_MAX, bottom, top);
    result->road_note = gw_arena_strdup(&result->arena, text.msg);
    return result->road_note ? GW_OK : no_memory(err);
}
