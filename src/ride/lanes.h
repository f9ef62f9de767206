/* SPDX-License-Identifier: MIT */
/**
 * Eight complex numbers that are worked on together, one for each of eight frequencies. Real and
 * imaginary parts lie apart, so that a compiler turns every loop here into vector instructions.
 * (C's own complex product also tests for infinities, which costs more than the product.)
 */
#ifndef RIDE_LANES_H
#define RIDE_LANES_H

#include "base/wide.h"

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

/** a / b. The numbers here are far from the ends of the range, which C's own quotient would test for. */
static inline double complex gw_quotient(double complex a, double complex b)
{
    double re = creal(b), im = cimag(b), size = re * re + im * im;
    return gw_complex((creal(a) * re + cimag(a) * im) / size, (cimag(a) * re - creal(a) * im) / size);
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

/** Four doubles, or eight, as one vector: one register with AVX, or AVX-512; gcc and clang both know this. */
typedef double gw_quad __attribute__((vector_size(32)));
typedef double gw_eight __attribute__((vector_size(64)));

/** Columns that follow each other. */
typedef struct gw_stretch_of_row {
    int first, n;
} gw_stretch_of_row;

/**
 * y -= sum of a[k] b[k] over the columns of `n_runs` runs: most of the time of a sweep is spent here, so the
 * sums of a vector of lanes at a time stay in registers.
 */
#define GW_LANES_SUB_PRODUCTS(NAME, vector)                                                                  \
    static inline void NAME(gw_lanes *restrict y, const gw_lanes *restrict a, const gw_lanes *restrict b,    \
                            const gw_stretch_of_row *run, int n_runs)                                        \
    {                                                                                                        \
        for (size_t i = 0; i < GW_LANES; i += sizeof(vector) / sizeof(double)) {                             \
            vector re, im, ar, ai, br, bi;                                                                   \
            memcpy(&re, y->re + i, sizeof re);                                                               \
            memcpy(&im, y->im + i, sizeof im);                                                               \
            for (int r = 0; r < n_runs; r++)                                                                 \
                for (int k = run[r].first; k < run[r].first + run[r].n; k++) {                               \
                    memcpy(&ar, a[k].re + i, sizeof ar);                                                     \
                    memcpy(&ai, a[k].im + i, sizeof ai);                                                     \
                    memcpy(&br, b[k].re + i, sizeof br);                                                     \
                    memcpy(&bi, b[k].im + i, sizeof bi);                                                     \
                    re -= ar * br - ai * bi;                                                                 \
                    im -= ar * bi + ai * br;                                                                 \
                }                                                                                            \
            memcpy(y->re + i, &re, sizeof re);                                                               \
            memcpy(y->im + i, &im, sizeof im);                                                               \
        }                                                                                                    \
    }
GW_LANES_SUB_PRODUCTS(gw_lanes_sub_products, gw_quad)
GW_LANES_SUB_PRODUCTS(gw_lanes_sub_products_of_eight, gw_eight)

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
