/* SPDX-License-Identifier: MIT */
#include "bush/dynamic.h"

#include "giveway/units.h"

#include <math.h>

/* CMPLX of C11 is not to be had with every compiler, and the plain I is a float. */
static double complex complex_of(double re, double im)
{
    return re + im * (double complex)I;
}

double complex gw_zener_factor(double gain, double tau, double alpha, double hz)
{
    double size = pow(2.0 * GW_PI * hz * tau, alpha), angle = 0.5 * GW_PI * alpha;
    double complex x = complex_of(size * cos(angle), size * sin(angle));

    return 1.0 + gain * x / (1.0 + x);
}

double complex gw_kraus_factor(double gain, double loss, double exponent, double ratio)
{
    double s = pow(ratio, exponent), over = 1.0 / (1.0 + s * s);

    return complex_of(1.0 + gain * over, 2.0 * loss * s * over);
}

double complex gw_dynamic_factor(const gw_dynamic_law *law, double hz, double amplitude)
{
    double complex factor = complex_of(law->ratio, law->ratio * law->loss);

    if (law->zener_gain > 0.0)
        factor *= gw_zener_factor(law->zener_gain, law->zener_tau, law->zener_alpha, hz);
    if (law->payne_gain > 0.0)
        factor *=
            gw_kraus_factor(law->payne_gain, 0.0, law->payne_exponent, amplitude / law->payne_amplitude);
    return factor;
}

gw_stiffness_ratio gw_dynamic_ratio(const gw_dynamic_law *law, double hz, double amplitude)
{
    double complex factor = gw_dynamic_factor(law, hz, amplitude);
    gw_stiffness_ratio ratio = { creal(factor), cimag(factor) };

    return ratio;
}

/** Three values that mean something only together: how many of them are known. */
static int known(const gw_value *a, const gw_value *b, const gw_value *c)
{
    return (a->known ? 1 : 0) + (b->known ? 1 : 0) + (c->known ? 1 : 0);
}

static gw_status check_zener(const gw_material *m, gw_error *err)
{
    int n = known(&m->zener_gain, &m->zener_tau, &m->zener_alpha);

    if (n == 0) return GW_OK;
    if (n < 3)
        return gw_fail(err, GW_E_RANGE,
                       "material %s: zener_gain, zener_tau_s and zener_alpha are needed together", m->name);
    if (!(m->zener_gain.v >= 0.0) || !isfinite(m->zener_gain.v))
        return gw_fail(err, GW_E_RANGE, "material %s: zener_gain %g must not be negative", m->name,
                       m->zener_gain.v);
    if (!(m->zener_tau.v > 0.0) || !isfinite(m->zener_tau.v))
        return gw_fail(err, GW_E_RANGE, "material %s: zener_tau_s %g must be above 0", m->name,
                       m->zener_tau.v);
    if (!(m->zener_alpha.v > 0.0 && m->zener_alpha.v <= 1.0))
        return gw_fail(err, GW_E_RANGE, "material %s: zener_alpha %g must lie above 0 and not above 1",
                       m->name, m->zener_alpha.v);
    return GW_OK;
}

static gw_status check_payne(const gw_material *m, gw_error *err)
{
    int n = known(&m->payne_gain, &m->payne_strain, &m->payne_exponent);

    if (n == 0) return GW_OK;
    if (n < 3)
        return gw_fail(err, GW_E_RANGE,
                       "material %s: payne_gain, payne_strain and payne_exponent are needed together",
                       m->name);
    if (!(m->payne_gain.v >= 0.0) || !isfinite(m->payne_gain.v))
        return gw_fail(err, GW_E_RANGE, "material %s: payne_gain %g must not be negative", m->name,
                       m->payne_gain.v);
    if (!(m->payne_strain.v > 0.0) || !isfinite(m->payne_strain.v))
        return gw_fail(err, GW_E_RANGE, "material %s: payne_strain %g must be above 0", m->name,
                       m->payne_strain.v);
    if (!(m->payne_exponent.v > 0.0 && m->payne_exponent.v <= 2.0))
        return gw_fail(err, GW_E_RANGE, "material %s: payne_exponent %g must lie above 0 and not above 2",
                       m->name, m->payne_exponent.v);
    return GW_OK;
}

gw_status gw_dynamic_law_from_material(const gw_material *material, double wall, gw_dynamic_law *law,
                                       gw_error *err)
{
    gw_dynamic_law out = { .ratio = 1.0 };
    gw_status st;

    if (!(wall > 0.0) || !isfinite(wall))
        return gw_fail(err, GW_E_RANGE, "material %s: a rubber wall of %g mm must be above 0", material->name,
                       wall / GW_MM);
    if ((st = check_zener(material, err)) != GW_OK) return st;
    if ((st = check_payne(material, err)) != GW_OK) return st;
    if (material->zener_gain.known) {
        out.zener_gain = material->zener_gain.v;
        out.zener_tau = material->zener_tau.v;
        out.zener_alpha = material->zener_alpha.v;
    }
    if (material->payne_gain.known) {
        out.payne_gain = material->payne_gain.v;
        out.payne_amplitude = material->payne_strain.v * wall;
        out.payne_exponent = material->payne_exponent.v;
    }
    *law = out;
    return GW_OK;
}
