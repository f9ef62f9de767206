/* SPDX-License-Identifier: MIT */
/**
 * Trade units to SI and back. Inside the library everything is SI; only the case reader and the
 * printing layer use this header. Multiply by the constant to come in, divide to go out.
 */
#ifndef GIVEWAY_UNITS_H
#define GIVEWAY_UNITS_H

#define GW_PI 3.14159265358979323846

#define GW_MM         1e-3              /**< millimetre                     [m]        */
#define GW_DEG        (GW_PI / 180.0)   /**< degree                         [rad]      */
#define GW_ARCMIN     (GW_PI / 10800.0) /**< minute of arc                  [rad]      */
#define GW_N_PER_MM   1e3               /**< newton per millimetre          [N/m]      */
#define GW_NM_PER_DEG (180.0 / GW_PI)   /**< newton metre per degree        [N m/rad]  */
#define GW_N_PER_DEG  (180.0 / GW_PI)   /**< newton per degree of slip      [N/rad]    */
#define GW_NS_PER_MM  1e3               /**< newton second per millimetre   [N s/m]    */
#define GW_MPA        1e6               /**< megapascal, newton per square mm[Pa]       */
#define GW_KN         1e3               /**< kilonewton                     [N]        */
#define GW_KM_H       (1.0 / 3.6)       /**< kilometre per hour             [m/s]      */
#define GW_ZERO_C     273.15            /**< 0 degrees Celsius              [K]        */
#define GW_G0         9.80665           /**< standard gravity (ISO 80000-3, CGPM 1901) [m/s^2] */

#endif
