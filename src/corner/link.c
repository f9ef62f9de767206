/* SPDX-License-Identifier: MIT */
/*
 * One joint: strain, wrench and exact tangent of the potential
 *     V = W(u) + 1/2 sum c_i theta_i^2   (theta_3 less the rest where a bush was clamped elsewhere),
 * u = E^T R_a^T (x_b - x_a), theta = E^T log(R_a^T R_b), with the bush frame E riding on body a.
 *
 * Varying V gives the force on b at the current x_b, the same force reversed on a at the same place, and
 * a moment that carries the derivative of the logarithm. Left-trivialised variations throughout:
 * d log(Q) = Jl^-1 dpsi for dQ = [dpsi]x Q. Source for Jl^-1: F. Bullo, R. M. Murray, "Proportional
 * derivative (PD) control on the Euclidean group", Caltech CDS 95-010 (1995), from memory.
 */
#include "corner/workspace.h"

#include <string.h>

static gw_vec3 to_vec(const double v[3])
{
    return gw_v3(v[0], v[1], v[2]);
}

static void to_array(gw_vec3 v, double out[3])
{
    out[0] = v.x;
    out[1] = v.y;
    out[2] = v.z;
}

gw_vec3 gw_point_now(const gw_pose *pose, gw_vec3 point)
{
    return gw_add(gw_mul(&pose->r, point), pose->p);
}

/* beta = 1/t^2 - (1 + cos t)/(2 t sin t) and (d beta/dt)/t, by series where the quotients lose digits. */
static void log_coefficients(double t2, double *beta, double *slope)
{
    if (t2 < 1e-2) {
        *beta = 1.0 / 12 + t2 * (1.0 / 720 + t2 * (1.0 / 30240 + t2 * (1.0 / 1209600 + t2 / 47900160)));
        *slope = 1.0 / 360 + t2 * (1.0 / 7560 + t2 * (1.0 / 201600 + t2 / 5987520));
        return;
    }
    double t = sqrt(t2), cot = 1.0 / tan(0.5 * t), csc = 1.0 / sin(0.5 * t);
    *beta = 1.0 / t2 - 0.5 * cot / t;
    *slope = (-2.0 / (t2 * t) + 0.5 * cot / t2 + 0.25 * csc * csc / t) / t;
}

/* Jl^-T(v) w = Jr^-1(v) w = w + 1/2 v x w + beta v x (v x w). */
static gw_vec3 log_transposed(gw_vec3 v, gw_vec3 w)
{
    double beta, slope;
    log_coefficients(gw_dot(v, v), &beta, &slope);
    gw_vec3 vw = gw_cross(v, w);
    return gw_add(gw_axpy(w, 0.5, vw), gw_scale(beta, gw_cross(v, vw)));
}

static gw_mat3 outer(gw_vec3 a, gw_vec3 b)
{
    return (gw_mat3){ { { a.x * b.x, a.x * b.y, a.x * b.z },
                        { a.y * b.x, a.y * b.y, a.y * b.z },
                        { a.z * b.x, a.z * b.y, a.z * b.z } } };
}

/* E diag(d) E^T. */
static gw_mat3 in_frame(const gw_mat3 *e, const double d[3])
{
    gw_mat3 scaled;
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++) scaled.m[i][j] = e->m[i][j] * d[j];
    return gw_matmul_nt(&scaled, e);
}

/* Moment, and where `c` is not NULL its tangent; theta_3 counts from the rest. */
static void turning_law(const gw_link *link, const double theta[3], double m[3], double c[3][3])
{
    double unused[3][3];
    if (link->curved_turn) {
        const double since[3] = { theta[0], theta[1], theta[2] - link->rest };
        gw_bush_moment(&link->law, since, m, c ? c : unused);
        return;
    }
    for (int i = 0; i < 3; i++) m[i] = link->law.c[i] * theta[i];
    m[2] -= link->law.c[2] * link->rest;
}

static void strain_rotation(const gw_link *link, const gw_mat3 *ra, const gw_mat3 *rb, gw_link_state *out)
{
    gw_mat3 q = gw_matmul_tn(ra, rb);
    gw_vec3 theta = gw_scale(link->hand, gw_mul_t(&link->frame, gw_rot_log(&q)));
    to_array(theta, out->theta);
    turning_law(link, out->theta, out->m, NULL);
    if (link->turns_freely) return;
    gw_vec3 turn = gw_mul(&link->frame, theta), m = gw_mul(&link->frame, to_vec(out->m));
    gw_vec3 moment = log_transposed(gw_scale(link->hand, turn), gw_scale(link->hand, m));
    out->wrench.m = gw_add(out->wrench.m, gw_mul(ra, moment));
}

/* Force and tangent in translation; while play is opened, with the shut joint's share in it. */
static void translation_law(const gw_link *link, const double u[3], double f[3], double k[3][3])
{
    gw_bush_force(&link->law, u, f, k);
    if (!(link->shut > 0.0)) return;
    for (int i = 0; i < 2; i++) {
        f[i] += link->shut * (link->law.k[i] * u[i] - f[i]);
        for (int j = 0; j < 2; j++) k[i][j] -= link->shut * k[i][j];
        k[i][i] += link->shut * link->law.k[i];
    }
}

static void strain_translation(const gw_link *link, const gw_pose *pose, gw_link_state *out)
{
    const gw_pose *a = &pose[link->a], *b = &pose[link->b];
    gw_vec3 xb = gw_point_now(b, link->pb);
    gw_vec3 d = gw_mul_t(&a->r, gw_sub(xb, gw_point_now(a, link->pa)));
    to_array(gw_mul_t(&link->frame, d), out->u);
    if (link->linear) {
        for (int i = 0; i < 3; i++) out->f[i] = link->law.k[i] * out->u[i];
    } else {
        double unused[3][3];
        translation_law(link, out->u, out->f, unused);
    }
    out->wrench.f = gw_mul(&a->r, gw_mul(&link->frame, to_vec(out->f)));
    out->wrench.m = gw_cross(xb, out->wrench.f);
}

void gw_link_strain(const gw_link *link, const gw_pose *pose, gw_link_state *out)
{
    strain_translation(link, pose, out);
    strain_rotation(link, &pose[link->a].r, &pose[link->b].r, out);
}

void gw_link_push(const gw_link *link, const gw_pose *pose, gw_link_state *out)
{
    strain_translation(link, pose, out);
    if (!link->turns_freely) strain_rotation(link, &pose[link->a].r, &pose[link->b].r, out);
}

static gw_mat3 turning_tangent(const gw_link *link, const double theta[3])
{
    double m[3];
    gw_mat3 c;
    if (!link->curved_turn) return in_frame(&link->frame, link->law.c);
    turning_law(link, theta, m, c.m);
    gw_mat3 ec = gw_matmul(&link->frame, &c);
    return gw_matmul_nt(&ec, &link->frame);
}

/* d(Jl^-T(v) w)/dv with w = C v, times Jl^-1(v): the rotational tangent in the frame of body a. */
static gw_mat3 rotation_tangent(const gw_link *link, const gw_link_state *s)
{
    gw_mat3 c = turning_tangent(link, s->theta);
    gw_vec3 v = gw_scale(link->hand, gw_mul(&link->frame, to_vec(s->theta)));
    gw_vec3 w = gw_scale(link->hand, gw_mul(&link->frame, to_vec(s->m)));
    double beta, slope, v2 = gw_dot(v, v), vw = gw_dot(v, w);
    log_coefficients(v2, &beta, &slope);
    gw_mat3 sv = gw_skew(v), sv2 = gw_skew_times(v, &sv), sw = gw_skew(w);
    gw_mat3 jr, jl, d;
    gw_mat3 v_w = outer(v, w), w_v = outer(w, v), steep = outer(gw_axpy(gw_scale(vw, v), -v2, w), v);
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++) {
            double unit = i == j ? 1.0 : 0.0;
            jr.m[i][j] = unit + 0.5 * sv.m[i][j] + beta * sv2.m[i][j];
            jl.m[i][j] = unit - 0.5 * sv.m[i][j] + beta * sv2.m[i][j];
            d.m[i][j] = -0.5 * sw.m[i][j] + slope * steep.m[i][j] +
                        beta * (unit * vw + v_w.m[i][j] - 2.0 * w_v.m[i][j]);
        }
    gw_mat3 jrc = gw_matmul(&jr, &c), sum = gw_matadd(&jrc, &d);
    return gw_matmul(&sum, &jl);
}

/* R E K E^T R^T of the translation law. */
static gw_mat3 translation_tangent(const gw_link *link, const gw_mat3 *ra, const gw_link_state *s,
                                   bool linear)
{
    gw_mat3 e = gw_matmul(ra, &link->frame);
    if (linear || link->linear) return in_frame(&e, link->law.k);
    double f[3];
    gw_mat3 k = { 0 };
    translation_law(link, s->u, f, k.m);
    gw_mat3 ek = gw_matmul(&e, &k);
    return gw_matmul_nt(&ek, &e);
}

/* What the relative twist strains: the same block for b and, negated, for a. */
static void material_part(const gw_mat3 *k, const gw_mat3 *m, gw_vec3 xb, gw_block out)
{
    gw_mat3 kx = gw_times_skew(k, xb), xk = gw_skew_times(xb, k), xkx = gw_skew_times(xb, &kx);
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++) {
            out[6 * i + j] = k->m[i][j];
            out[6 * i + 3 + j] = -kx.m[i][j];
            out[6 * (3 + i) + j] = xk.m[i][j];
            out[6 * (3 + i) + 3 + j] = m ? m->m[i][j] - xkx.m[i][j] : -xkx.m[i][j];
        }
}

/* How the wrench turns with body a and its line of action moves with body b. */
static void turning_with_b(const gw_wrench *w, gw_vec3 xb, gw_block to_b)
{
    gw_mat3 sf = gw_skew(w->f), fx = gw_times_skew(&sf, xb);
    gw_block_add(to_b, 1, 0, -1.0, &sf);
    gw_block_add(to_b, 1, 1, 1.0, &fx);
}

static void turning_with_a(const gw_wrench *w, gw_vec3 xb, gw_block to_a)
{
    gw_mat3 sf = gw_skew(w->f), xf = gw_skew_times(xb, &sf);
    gw_mat3 sm = gw_skew(gw_sub(w->m, gw_cross(xb, w->f)));
    gw_block_add(to_a, 0, 1, -1.0, &sf);
    gw_block_add(to_a, 1, 1, -1.0, &xf);
    gw_block_add(to_a, 1, 1, -1.0, &sm);
}

void gw_link_tangent(const gw_link *link, const gw_pose *pose, const gw_link_state *strain, bool linear,
                     gw_block to_b, gw_block to_a)
{
    const gw_mat3 *ra = &pose[link->a].r;
    gw_vec3 xb = gw_point_now(&pose[link->b], link->pb);
    gw_mat3 k = translation_tangent(link, ra, strain, linear), m;
    if (!link->turns_freely) {
        gw_mat3 local = linear ? in_frame(&link->frame, link->law.c) : rotation_tangent(link, strain);
        gw_mat3 turned = gw_matmul(ra, &local);
        m = gw_matmul_nt(&turned, ra);
    }
    material_part(&k, link->turns_freely ? NULL : &m, xb, to_b);
    for (int i = 0; i < 36; i++) to_a[i] = -to_b[i];
    if (linear) return;
    turning_with_b(&strain->wrench, xb, to_b);
    turning_with_a(&strain->wrench, xb, to_a);
}
