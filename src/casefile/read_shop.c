/* SPDX-License-Identifier: MIT */
/* What the workshop reckons prices with: currency, an hour's work, tax. */
#include "casefile/section.h"

static const char *const WORDS[] = { "currency", NULL };

void gw_read_shop(const gw_reader *rd, const gw_node *top, gw_shop *out)
{
    static const gw_number_key NUMBERS[] = {
        { "labour_per_hour", GW_OPTIONAL, GW_FROM(0, 1e9), 1, 0, offsetof(gw_shop, labour) },
        { "tax_percent", GW_OPTIONAL, GW_FROM(0, 100), 0.01, 0, offsetof(gw_shop, tax) },
    };
    gw_node shop;
    if (!gw_get_object(rd, top, "shop", GW_OPTIONAL, &shop)) return;
    gw_check_keys(rd, &shop, NUMBERS, GW_COUNT(NUMBERS), WORDS);
    gw_get_text(rd, &shop, "currency", GW_OPTIONAL, GW_MAX_CURRENCY_BYTES, &out->currency);
    gw_get_numbers(rd, &shop, NUMBERS, GW_COUNT(NUMBERS), out);
    out->has_labour = gw_node_key(&shop, "labour_per_hour").json != NULL;
    out->has_tax = gw_node_key(&shop, "tax_percent").json != NULL;
}
