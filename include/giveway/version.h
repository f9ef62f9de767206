/* SPDX-License-Identifier: MIT */
/** The version, in one place: program, manual page and pkg-config file take it from here. */
#ifndef GIVEWAY_VERSION_H
#define GIVEWAY_VERSION_H

#define GW_VERSION "0.1.0"

#endif
