/* SPDX-License-Identifier: MIT */
#include "bush/layer.h"

double gw_layer_end(const gw_layer *layer, double r)
{
    double x = 2.0 * (r - layer->wall_from) / layer->wall - 1.0;
    return layer->half_length - layer->dish * (1.0 - x * x);
}

void gw_layer_open(gw_layer *layer, double half_angle, double floor, double thinnest)
{
    double least = thinnest * (layer->r1 - layer->r0);
    if (floor >= layer->r1 - 1e-9 * layer->r1) return;
    layer->void_angle = half_angle;
    layer->void_floor = layer->r0;
    if (floor <= layer->r0 * (1.0 + 1e-9)) return;
    if (floor < layer->r0 + least) floor = layer->r0 + least;
    if (floor > layer->r1 - least) floor = layer->r1 - least;
    layer->void_floor = floor;
}
