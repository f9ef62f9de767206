/* SPDX-License-Identifier: MIT */
/**
 * Eight complex numbers that are worked on together, one for each of eight frequencies. Real and
 * imaginary parts lie apart, so that a compiler turns every loop here into vector instructions.
 * (C's own complex product also tests for infinities, which costs more than the product.)
 */
#ifndef RIDE_LANES_H
#define RIDE_LANES_H

#include <complex.h>
#include <string.h>

enum { GW_LANES = 8 };

typedef struct gw_lanes {
    double re[GW_LANES], im[GW_LANES];
} gw_lanes;

/** re + i im, without the float constant I and with any compiler (C11 6.2.5: laid out as an array of two). */
static inline double complex gw_complex(double re, double im)
{
    const double part[2] = { re, im };
    double complex value;
    memcpy(&value, part, sizeof value);
    return value;
}

static inline double complex gw_lanes_get(const gw_lanes *a, int lane)
{
    return gw_complex(a->re[lane], a->im[lane]);
}

static inline void gw_lanes_put(gw_lanes *a, int lane, double complex value)
{
    a->re[lane] = creal(value);
    a->im[lane] = cimag(value);
}

/** a = value in every lane. */
static inline void gw_lanes_fill(gw_lanes *a, double complex value)
{
    for (int i = 0; i < GW_LANES; i++) gw_lanes_put(a, i, value);
}

/** y += s x, s real. */
static inline void gw_lanes_axpy(gw_lanes *restrict y, double s, const gw_lanes *restrict x)
{
    for (int i = 0; i < GW_LANES; i++) y->re[i] += s * x->re[i];
    for (int i = 0; i < GW_LANES; i++) y->im[i] += s * x->im[i];
}

/** y += a b. */
static inline void gw_lanes_add_product(gw_lanes *restrict y, const gw_lanes *restrict a,
                                        const gw_lanes *restrict b)
{
    for (int i = 0; i < GW_LANES; i++) {
        y->re[i] += a->re[i] * b->re[i] - a->im[i] * b->im[i];
        y->im[i] += a->re[i] * b->im[i] + a->im[i] * b->re[i];
    }
}

/** y -= a b. */
static inline void gw_lanes_sub_product(gw_lanes *restrict y, const gw_lanes *restrict a,
                                        const gw_lanes *restrict b)
{
    for (int i = 0; i < GW_LANES; i++) {
        y->re[i] -= a->re[i] * b->re[i] - a->im[i] * b->im[i];
        y->im[i] -= a->re[i] * b->im[i] + a->im[i] * b->re[i];
    }
}

/** Two doubles as one vector register of any 64-bit machine; gcc and clang both know this. */
typedef double gw_pair __attribute__((vector_size(16)));

static inline gw_pair gw_pair_load(const double *at)
{
    return (gw_pair){ at[0], at[1] };
}

static inline void gw_pair_store(double *at, gw_pair value)
{
    at[0] = value[0];
    at[1] = value[1];
}

/**
 * y -= sum of a[k] b[k], k = 0 to n - 1: most of the time of a sweep is spent here, so the sums of four
 * lanes at a time stay in registers.
 */
static inline void gw_lanes_sub_products(gw_lanes *restrict y, const gw_lanes *restrict a,
                                         const gw_lanes *restrict b, int n)
{
    for (int i = 0; i < GW_LANES; i += 4) {
        gw_pair re0 = gw_pair_load(y->re + i), re1 = gw_pair_load(y->re + i + 2);
        gw_pair im0 = gw_pair_load(y->im + i), im1 = gw_pair_load(y->im + i + 2);
        for (int k = 0; k < n; k++) {
            gw_pair ar = gw_pair_load(a[k].re + i), ai = gw_pair_load(a[k].im + i);
            gw_pair br = gw_pair_load(b[k].re + i), bi = gw_pair_load(b[k].im + i);
            re0 -= ar * br - ai * bi;
            im0 -= ar * bi + ai * br;
            ar = gw_pair_load(a[k].re + i + 2), ai = gw_pair_load(a[k].im + i + 2);
            br = gw_pair_load(b[k].re + i + 2), bi = gw_pair_load(b[k].im + i + 2);
            re1 -= ar * br - ai * bi;
            im1 -= ar * bi + ai * br;
        }
        gw_pair_store(y->re + i, re0);
        gw_pair_store(y->re + i + 2, re1);
        gw_pair_store(y->im + i, im0);
        gw_pair_store(y->im + i + 2, im1);
    }
}

/** y = a b. */
static inline gw_lanes gw_lanes_product(const gw_lanes *a, const gw_lanes *b)
{
    gw_lanes y;
    for (int i = 0; i < GW_LANES; i++) {
        y.re[i] = a->re[i] * b->re[i] - a->im[i] * b->im[i];
        y.im[i] = a->re[i] * b->im[i] + a->im[i] * b->re[i];
    }
    return y;
}

/** 1 / a. The numbers here are stiffnesses, far from the ends of the range. */
static inline gw_lanes gw_lanes_inverse(const gw_lanes *a)
{
    gw_lanes y;
    for (int i = 0; i < GW_LANES; i++) {
        double size = a->re[i] * a->re[i] + a->im[i] * a->im[i];
        y.re[i] = a->re[i] / size;
        y.im[i] = -a->im[i] / size;
    }
    return y;
}

/** y[i] += |a[i]|^2. */
static inline void gw_lanes_add_square(double *restrict y, const gw_lanes *restrict a)
{
    for (int i = 0; i < GW_LANES; i++) y[i] += a->re[i] * a->re[i] + a->im[i] * a->im[i];
}

#endif
