/* SPDX-License-Identifier: MIT */
/* Keys that nobody reads: a slip of the pen, or a feature that the user believes to be there. */
#include "casefile/get.h"
#include "casefile/nearest.h"

#include <string.h>

static void check_key(const gw_reader *rd, const gw_node *entry, const gw_number_key *numbers, size_t n,
                      const char *const *words)
{
    char hint[GW_HINT_MAX];
    gw_nearest near = { .want = entry->key };
    for (size_t i = 0; i < n; i++)
        if (strcmp(numbers[i].key, entry->key) == 0) return;
    for (const char *const *w = words; w && *w; w++)
        if (strcmp(*w, entry->key) == 0) return;
    for (size_t i = 0; i < n; i++) gw_nearest_offer(&near, numbers[i].key);
    for (const char *const *w = words; w && *w; w++) gw_nearest_offer(&near, *w);
    gw_fault(rd, entry, "unknown key%s",
             near.best ? gw_nearest_hint(&near, hint)
                       : ": take it out, or begin it with // to make it a comment");
}

void gw_check_keys(const gw_reader *rd, const gw_node *node, const gw_number_key *numbers, size_t n,
                   const char *const *words)
{
    for (const cJSON *e = rd->again ? NULL : gw_first(node); e; e = gw_node_next(e)) {
        gw_node entry = gw_node_entry(node, e, 0);
        if (rd->faults->overflow) return; /* what is not listed needs no hint */
        check_key(rd, &entry, numbers, n, words);
    }
}
