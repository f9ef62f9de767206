/* SPDX-License-Identifier: MIT */
#include "giveway/ride_places.h"

#include <math.h>
#include <string.h>

/* Left and right stand in the same order, the left one first. */
static int mirror_image(const gw_corner *corner, const gw_ride_result *r, int path)
{
    const gw_ride_path *of = &r->paths[path];
    int joint = of->joint >= 0 ? corner->joints[of->joint].twin : -1;
    for (int p = 0; p < r->n_paths; p++)
        if (p != path && r->paths[p].kind == of->kind && r->paths[p].joint == joint) return p;
    return -1;
}

int gw_ride_places(const gw_corner *corner, const gw_ride_result *r, gw_ride_place *place)
{
    int n = 0;
    for (int p = 0; p < r->n_paths; p++) {
        int image = mirror_image(corner, r, p);
        if (image < 0 || image > p) place[n++] = (gw_ride_place){ p, image };
    }
    return n;
}

double gw_ride_place_share(const gw_ride_result *r, gw_ride_place place)
{
    return r->paths[place.path].share + (place.image < 0 ? 0.0 : r->paths[place.image].share);
}

static double largest_share(const gw_ride_item *const *items, int n, gw_ride_place place)
{
    double most = 0.0;
    for (int i = 0; i < n; i++) most = fmax(most, gw_ride_place_share(&items[i]->result, place));
    return most;
}

int gw_ride_largest_places(const gw_ride_item *const *items, int n, int room, gw_ride_place *place, int of)
{
    int found = 0;
    for (; found < room && found < of; found++) {
        int best = found;
        for (int p = found + 1; p < of; p++)
            if (largest_share(items, n, place[p]) > largest_share(items, n, place[best])) best = p;
        if (!(largest_share(items, n, place[best]) > 0.0)) break;
        gw_ride_place first = place[best];
        memmove(&place[found + 1], &place[found], (size_t)(best - found) * sizeof *place);
        place[found] = first;
    }
    return found;
}
