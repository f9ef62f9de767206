/* SPDX-License-Identifier: MIT */
#include "page/pack.h"

#include <math.h>

static const char DIGITS[] = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefg"
                             "hijklmnopqrstuvwxyz!#$%()*+,-./:;=?@[]^_`{}";
enum { BASE = (sizeof DIGITS - 1) / 2 };

const char *gw_pack_digits(void)
{
    return DIGITS;
}

void gw_pack(gw_buf *out, double value)
{
    const long whole = lround(value);
    unsigned long left = whole < 0 ? 2 * (unsigned long)-whole - 1 : 2 * (unsigned long)whole;
    do {
        const unsigned long digit = left % BASE;
        left /= BASE;
        gw_buf_bytes(out, &DIGITS[left ? digit + BASE : digit], 1);
    } while (left);
}

void gw_pack_nothing(gw_buf *out)
{
    gw_buf_bytes(out, " ", 1);
}
