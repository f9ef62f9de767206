/* SPDX-License-Identifier: MIT */
#include "giveway/spread.h"

#include <gsl/gsl_cdf.h>
#include <stdint.h>

static const uint64_t GAMMA = 0x9E3779B97F4A7C15u;

static uint64_t mix(uint64_t x)
{
    x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9u;
    x = (x ^ (x >> 27)) * 0x94D049BB133111EBu;
    return x ^ (x >> 31);
}

double gw_normal_draw(unsigned long seed, long draw, int figure)
{
    uint64_t h = mix((uint64_t)seed);
    h = mix(h + ((uint64_t)draw + 1u) * GAMMA);
    h = mix(h + ((uint64_t)figure + 1u) * GAMMA);
    return gsl_cdf_ugaussian_Pinv(((double)(h >> 11) + 0.5) * 0x1p-53);
}
