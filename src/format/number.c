/* SPDX-License-Identifier: MIT */
#include "format/number.h"

#include "giveway/units.h"

#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static gw_number no_number(void)
{
    return (gw_number){ GW_NO_NUMBER };
}

/* A host program may have set a locale with a decimal comma. */
static void put_point(char *s)
{
    bool seen = false;
    char *to = s;
    for (; *s; s++) {
        bool plain = (*s >= '0' && *s <= '9') || *s == '-' || *s == '+' || *s == 'e' || *s == '.';
        if (plain)
            *to++ = *s;
        else if (!seen)
            *to++ = '.'; /* a separator of several bytes becomes one point */
        seen = !plain;
    }
    *to = '\0';
}

static bool all_zero(const char *s)
{
    return strspn(s, "-0.") == strlen(s);
}

static gw_number drop_sign_of_zero(gw_number number)
{
    if (number.s[0] == '-' && all_zero(number.s)) memmove(number.s, number.s + 1, strlen(number.s));
    return number;
}

gw_number gw_fixed(double value, int decimals)
{
    gw_number out;
    if (!isfinite(value)) return no_number();
    if (fabs(value) >= 1e30) return gw_exact(value); /* would not fit, and no such table cell is meant */
    snprintf(out.s, sizeof out.s, "%.*f", decimals, value);
    put_point(out.s);
    return drop_sign_of_zero(out);
}

gw_number gw_signed(double value, int decimals)
{
    gw_number out = gw_fixed(value, decimals);
    if (!isfinite(value) || out.s[0] == '-' || all_zero(out.s)) return out;
    gw_number plus = { "+" };
    memcpy(plus.s + 1, out.s, sizeof out.s - 1);
    plus.s[sizeof plus.s - 1] = '\0';
    return plus;
}

gw_number gw_significant(double value, int digits)
{
    if (!isfinite(value)) return no_number();
    double size = fabs(value);
    if (size == 0.0) return gw_fixed(0.0, 0);
    if (size >= 1e9 || size < 1e-6) {
        gw_number out;
        snprintf(out.s, sizeof out.s, "%.*e", digits - 1, value);
        put_point(out.s);
        return out;
    }
    gw_number rounded; /* 9.996 has one digit more once it is rounded */
    snprintf(rounded.s, sizeof rounded.s, "%.*e", digits - 1, size);
    int exponent = (int)strtol(strchr(rounded.s, 'e') + 1, NULL, 10);
    int decimals = digits - 1 - exponent;
    return gw_fixed(value, decimals > 0 ? decimals : 0);
}

gw_number gw_exact(double value)
{
    gw_number out;
    if (!isfinite(value)) return no_number();
    if (value == 0.0) return gw_fixed(0.0, 0); /* no negative zero */
    for (int digits = 15; digits <= 17; digits++) {
        snprintf(out.s, sizeof out.s, "%.*g", digits, value);
        if (strtod(out.s, NULL) == value) break;
    }
    put_point(out.s);
    return out;
}

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

/* "-0.31 of -0.67", "(-2", "+29.4/-45.4", but "20-200", "A-3", "2026-03-01", "8608-2". */
bool gw_is_minus(const char *text, const char *at)
{
    static const char BLANK[] = "\xC2\xA0"; /* that does not break */
    if (*at != '-' || !is_digit(at[1])) return false;
    if (at == text || (at - text >= 2 && memcmp(at - 2, BLANK, 2) == 0)) return true;
    return strchr(" (/,:;='\"", at[-1]) != NULL;
}

void gw_minus_signs(gw_buf *out, const char *text)
{
    for (const char *p = text; *p; p++) {
        if (gw_is_minus(text, p))
            gw_buf_add(out, "\xE2\x88\x92"); /* U+2212 */
        else
            gw_buf_bytes(out, p, 1);
    }
}

gw_number gw_degrees_minutes(double angle, int decimals)
{
    gw_number out;
    double minutes = fabs(angle) / GW_ARCMIN;
    if (!isfinite(minutes) || minutes > 1e9) return no_number();
    double scale = pow(10.0, decimals);
    double steps = round(minutes * scale); /* rounded first, so that 59.7' becomes 1°00' and not 0°60' */
    double degrees = floor(steps / (60.0 * scale));
    double rest = (steps - degrees * 60.0 * scale) / scale;
    snprintf(out.s, sizeof out.s, "%s%.0f\xC2\xB0%0*.*f'", angle < 0 && steps > 0 ? "-" : "", degrees,
             decimals > 0 ? decimals + 3 : 2, decimals, rest);
    char *comma = strchr(out.s, ',');
    if (comma) *comma = '.';
    return out;
}

double gw_toe_at_rim(double toe, double diameter)
{
    return diameter * sin(toe);
}
