/* SPDX-License-Identifier: MIT */
/* What decibels mean in words: one grade, or two where the range spans more. */
#include "show/ride_words.h"

#include "format/number.h"

/* In the order of gw_ride_grade; the last word of each side is the same. */
static const char *const DEGREE[GW_GRADES] = { "clearly", "a little", "as", "a little", "clearly", "much" };
static const char *const FELT[GW_GRADES] = { "clearly softer",  "a little softer", "as firm as before",
                                             "a little firmer", "clearly firmer",  "much firmer" };
static const char *const HEARD[GW_GRADES] = { "clearly less",  "a little less", "as much as before",
                                              "a little more", "clearly more",  "much more" };
enum { SAME = 2 };

static const char *const UNKNOWN[GW_UNKNOWNS][2] = {
    [GW_UNKNOWN_BRACKETS] = { "brackets", "half to twice" },
    [GW_UNKNOWN_BRACKET_LOSS] = { "loss of brackets", "0.02 to 0.3" },
    [GW_UNKNOWN_KEPT] = { "bushes kept", "1/1.3 to 1.3 times" },
    [GW_UNKNOWN_CHANGED] = { "bushes changed", "1/1.3 to 1.3 times" },
    [GW_UNKNOWN_LOSS] = { "loss of bushes", "half to twice" },
    [GW_UNKNOWN_GIVE] = { "links and lugs", "0 to 0.04 mm/kN" },
    [GW_UNKNOWN_BELT] = { "belt of the tyre", "1/1.15 to 1.15 times its Hz" },
};

const char *gw_ride_unknown_name(int unknown)
{
    return UNKNOWN[unknown][0];
}

const char *gw_ride_unknown_limits(int unknown)
{
    return UNKNOWN[unknown][1];
}

const char *gw_ride_grade_word(int grade, bool heard)
{
    return heard ? HEARD[grade] : FELT[grade];
}

void gw_ride_say_grades(const int grade[2], bool heard, gw_buf *out)
{
    int low = grade[0], high = grade[1];
    bool one_side = (low < SAME && high < SAME) || (low > SAME && high > SAME);
    if (low != high) gw_buf_fmt(out, "%s to ", one_side ? DEGREE[low] : gw_ride_grade_word(low, heard));
    gw_buf_add(out, gw_ride_grade_word(high, heard));
}

void gw_ride_say_beside(const double beside[GW_OTHER_PATHS], gw_buf *out)
{
    gw_buf_fmt(out, "%s, %s or %s dB", gw_signed(beside[0], 1).s, gw_signed(beside[1], 1).s,
               gw_signed(beside[2], 1).s);
}
