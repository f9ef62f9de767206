/* SPDX-License-Identifier: MIT */
#include "show/words.h"

static const char *const WORDS[GW_WORDS_COUNT] = {
    [GW_WORDS_SAFETY] = "Faulty work on brakes, steering or suspension can injure or kill. These figures are "
                        "no approval of a part or a repair.",
    [GW_WORDS_DEFER] = "The vehicle maker's data, local law and the judgement of a qualified technician come "
                       "first wherever they differ from this.",
    [GW_WORDS_ESTIMATE] = "Estimates, made to compare kits with one another; they stand or fall with the "
                          "rates and points given.",
    [GW_WORDS_RIDE_ESTIMATE] =
        "An estimate to compare kits with, not a prediction of a noise level in the cabin.",
    [GW_WORDS_RATE_ESTIMATE] = "Rates from shape and hardness: a hardness tolerance of 5 points alone "
                               "(common practice) moves the modulus by up to a fifth.",
    [GW_WORDS_STATIC_ONLY] = "Steady loads on a rigid body and rigid arms; tyre, wheel, hub and bracket give "
                             "is left out unless it is stated.",
    [GW_WORDS_INVENTED] =
        "Demonstration data, invented for this program; they describe no car and no product on sale.",
    [GW_WORDS_CHECK_ALIGNMENT] = "After fitting, tighten at ride height, then measure and set the alignment, "
                                 "and check the brakes and the steering before the road.",
};

const char *gw_words_text(gw_words which)
{
    return (unsigned)which < GW_WORDS_COUNT ? WORDS[which] : "";
}
