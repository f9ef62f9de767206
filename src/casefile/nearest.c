/* SPDX-License-Identifier: MIT */
#include "casefile/nearest.h"

#include <stdio.h>
#include <string.h>

enum { LONGEST = 64 };

static int least(int a, int b)
{
    return a < b ? a : b;
}

static char lower(char c)
{
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

/*
 * Number of single-letter slips (one put in, left out, changed, or two neighbours swapped) between two
 * short texts; case does not count. Optimal string alignment: Damerau, Comm. ACM 7 (1964), 171-176.
 */
static int slips(const char *a, int n, const char *b, int m)
{
    int d[3][LONGEST + 1] = { { 0 } };
    for (int j = 0; j <= m; j++) d[0][j] = j;
    for (int i = 1; i <= n; i++) {
        int *row = d[i % 3], *above = d[(i + 2) % 3], *above2 = d[(i + 1) % 3];
        row[0] = i;
        for (int j = 1; j <= m; j++) {
            char x = lower(a[i - 1]), y = lower(b[j - 1]);
            row[j] = least(least(above[j], row[j - 1]) + 1, above[j - 1] + (x != y));
            if (i > 1 && j > 1 && x == lower(b[j - 2]) && lower(a[i - 2]) == y)
                row[j] = least(row[j], above2[j - 2] + 1);
        }
    }
    return d[n % 3][m];
}

void gw_nearest_offer(gw_nearest *near, const char *name)
{
    size_t n = strlen(near->want), m = strlen(name);
    if (n == 0 || n > LONGEST || m > LONGEST) return;
    int distance = slips(near->want, (int)n, name, (int)m);
    int allowed = n < 4 ? 1 : (int)(n / 3) + 1;
    /* A key without its unit ("mass" for "mass_kg") is a common slip, however long the unit. */
    if (n >= 3 && n < m && strncmp(name, near->want, n) == 0 && name[n] == '_') distance = least(distance, 1);
    if (distance > allowed || (near->best && distance >= near->distance)) return;
    near->best = name;
    near->distance = distance;
}

const char *gw_nearest_hint(const gw_nearest *near, char hint[GW_HINT_MAX])
{
    hint[0] = '\0';
    if (near->best) snprintf(hint, GW_HINT_MAX, "; did you mean \"%s\"?", near->best);
    return hint;
}
