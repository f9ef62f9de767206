/* SPDX-License-Identifier: MIT */
#ifndef CLI_MEMORY_H
#define CLI_MEMORY_H

/** Before anything else is allocated: memory from the system in few large pieces, where it can be had so. */
void gw_memory_in_large_pages(void);

#endif
