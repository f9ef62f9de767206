/* SPDX-License-Identifier: MIT */
#include "study/drawn.h"

#include <stdlib.h>

gw_status gw_draws_open(const gw_case *c, const gw_selection *wanted, gw_draws *out, gw_error *err)
{
    *out = (gw_draws){ .c = c, .method = wanted->method, .owns_laws = !wanted->laws };
    if (!wanted->laws) return gw_laws_make(c, wanted->method, &out->laws, err);
    out->laws = *wanted->laws;
    return GW_OK;
}

void gw_draws_close(gw_draws *draws)
{
    if (draws->owns_laws) gw_laws_free(&draws->laws);
    *draws = (gw_draws){ 0 };
}

static double factor_of(const gw_bush *bush)
{
    return bush->stiffness_factor > 0.0 ? bush->stiffness_factor : 1.0;
}

/* `bushes` and `laws` are those that the factors of the new ones are told from. */
static gw_status make_laws(const gw_draws *draws, const bool *anew, const gw_bush *bushes,
                           const gw_laws *laws, gw_drawn *out, gw_error *err)
{
    gw_status status = GW_OK;
    const int n = out->c.n_bushes;
    out->laws = (gw_laws){ n, calloc((size_t)n + 1, sizeof *out->laws.law) };
    if (!out->laws.law) return gw_fail(err, GW_E_NOMEM, "out of memory for %d bushes", n);
    for (int b = 0; b < n && status == GW_OK; b++) {
        const gw_bush *bush = &out->c.bushes[b];
        gw_bush_law *law = &out->laws.law[b];
        double factor = factor_of(bush) / factor_of(&bushes[b]);
        if (anew[b])
            status = gw_bush_law_make(bush, draws->method, law, err);
        else
            *law = factor == 1.0 ? laws->law[b] : gw_bush_law_times(&laws->law[b], factor);
    }
    return status;
}

static gw_status hand_over(gw_status status, const gw_draws *draws, gw_drawn *made, gw_drawn *out)
{
    if (status != GW_OK) {
        gw_drawn_free(made);
        return status;
    }
    *out = *made;
    out->wanted = (gw_selection){ .method = draws->method, .laws = &out->laws };
    return GW_OK;
}

gw_status gw_drawn_make(const gw_draws *draws, gw_drawer *drawer, const double *z, gw_drawn *out,
                        gw_error *err)
{
    gw_drawn made = { 0 };
    gw_status status = gw_drawer_make(drawer, z, &made.c, err);
    if (status == GW_OK)
        status = make_laws(draws, gw_drawer_anew(drawer), draws->c->bushes, &draws->laws, &made, err);
    return hand_over(status, draws, &made, out);
}

gw_status gw_drawn_make_near(const gw_draws *draws, gw_drawer *drawer, const gw_drawn *near, const double *z,
                             int figure, gw_drawn *out, gw_error *err)
{
    gw_drawn made = { 0 };
    gw_status status = gw_drawer_make_near(drawer, &near->c, z, figure, &made.c, err);
    if (status == GW_OK)
        status = make_laws(draws, gw_drawer_anew(drawer), near->c.bushes, &near->laws, &made, err);
    return hand_over(status, draws, &made, out);
}

void gw_drawn_free(gw_drawn *drawn)
{
    gw_laws_free(&drawn->laws);
    gw_case_free(&drawn->c);
    *drawn = (gw_drawn){ 0 };
}
