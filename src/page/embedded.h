/* SPDX-License-Identifier: MIT */
#ifndef PAGE_EMBEDDED_H
#define PAGE_EMBEDDED_H

/** What is embedded when the program is built: report.css, report.js and report.html of src/page, and the
 * hashes by which the page's policy lets the first two in. */
extern const char gw_page_style[], gw_page_script[], gw_page_template[], gw_page_style_hash[],
    gw_page_script_hash[];

#endif
