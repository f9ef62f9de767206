/* SPDX-License-Identifier: MIT */
/**
 * What stands around the declarations of every public header: C linkage for C++, and, in the shared library,
 * that programs may see them. Whatever else the library holds is hidden (-fvisibility=hidden).
 */
#ifndef GIVEWAY_API_H
#define GIVEWAY_API_H

#if defined(__GNUC__)
#define GW_VISIBLE_BEGIN _Pragma("GCC visibility push(default)")
#define GW_VISIBLE_END   _Pragma("GCC visibility pop")
#else
#define GW_VISIBLE_BEGIN
#define GW_VISIBLE_END
#endif

#if defined(__cplusplus)
#define GW_API_BEGIN                                                                                         \
    GW_VISIBLE_BEGIN extern "C"                                                                              \
    {
#define GW_API_END                                                                                           \
    }                                                                                                        \
    GW_VISIBLE_END
#else
#define GW_API_BEGIN GW_VISIBLE_BEGIN
#define GW_API_END   GW_VISIBLE_END
#endif

#endif
