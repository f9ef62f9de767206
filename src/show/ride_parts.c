/* SPDX-License-Identifier: MIT */
#include "show/ride_parts.h"

#include <math.h>

static double largest_share(const gw_ride_item *const *items, int n, int path)
{
    double most = 0.0;
    for (int i = 0; i < n; i++) most = fmax(most, items[i]->result.paths[path].share);
    return most;
}

static bool holds(const int *list, int n, int value)
{
    for (int i = 0; i < n; i++)
        if (list[i] == value) return true;
    return false;
}

int gw_ride_largest_paths(const gw_ride_item *const *items, int n, int room, int *paths)
{
    int found = 0;
    while (found < room) {
        int best = -1;
        double most = 0.0;
        for (int p = 0; p < items[0]->result.n_paths; p++) {
            double share = largest_share(items, n, p);
            if (share > most && !holds(paths, found, p)) best = p, most = share;
        }
        if (best < 0) break;
        paths[found++] = best;
    }
    return found;
}
