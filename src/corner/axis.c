/* SPDX-License-Identifier: MIT */
/* The wheel axis and what is read from it. */
#include "corner/workspace.h"

double gw_camber_of_axis(gw_vec3 axis)
{
    return -asin(fmax(-1.0, fmin(1.0, axis.z)));
}

double gw_toe_of_axis(gw_vec3 axis)
{
    return atan2(axis.x, axis.y);
}

gw_vec3 gw_axis_from_camber_toe(double camber, double toe)
{
    return gw_v3(cos(camber) * sin(toe), cos(camber) * cos(toe), -sin(camber));
}
