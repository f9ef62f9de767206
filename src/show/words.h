/* SPDX-License-Identifier: MIT */
/**
 * The sentences that carry cautions and limits, each in one place, so that every output says the
 * same and a translation needs one file.
 */
#ifndef SHOW_WORDS_H
#define SHOW_WORDS_H

typedef enum gw_words {
    GW_WORDS_SAFETY,          /**< brakes, steering and suspension can kill                  */
    GW_WORDS_DEFER,           /**< maker's data, local law and a qualified technician first  */
    GW_WORDS_ESTIMATE,        /**< figures are for comparing kits                            */
    GW_WORDS_RIDE_ESTIMATE,   /**< no prediction of a noise level                            */
    GW_WORDS_RATE_ESTIMATE,   /**< bush rates from hardness                                  */
    GW_WORDS_STATIC_ONLY,     /**< loads are steady                                          */
    GW_WORDS_INVENTED,        /**< demonstration data                                        */
    GW_WORDS_CHECK_ALIGNMENT, /**< measure and set after fitting                             */
    GW_WORDS_COUNT
} gw_words;

/** One sentence or two, without a line break; never NULL. */
const char *gw_words_text(gw_words which);

#endif
