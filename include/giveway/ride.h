/* SPDX-License-Identifier: MIT */
/**
 * Ride, harshness and road noise of one corner: the linear corner in the frequency domain, driven by
 * a road profile under the tyre. SI units throughout; left wheel, axes of ISO 8855:2011.
 *
 * All of it is an estimate to compare kits with, not a prediction of a noise level in the cabin.
 */
#ifndef GIVEWAY_RIDE_H
#define GIVEWAY_RIDE_H

#include "giveway/api.h"
#include "giveway/arena.h"
#include "giveway/corner.h"
#include "giveway/status.h"

#include <stdbool.h>

GW_API_BEGIN

/** Settings that have a default. */
typedef enum gw_ride_setting {
    GW_RIDE_CONTACT_LENGTH,
    GW_RIDE_DEFAULT_BRACKET,
    GW_RIDE_BRACKET_LOSS,
    GW_RIDE_AMPLITUDE,
    GW_RIDE_TEMPERATURE,
    GW_RIDE_DAMPER_FRICTION,
    GW_RIDE_SETTINGS
} gw_ride_setting;

/** What the road and the body are; the `ride` part of a case. */
typedef struct gw_ride {
    bool present;
    double roughness;       /**< Gd(n0) at n0 = 0.1 cycle/m [m^3]               */
    char road_class;        /**< 'A' to 'H', 0 where roughness is given         */
    double speed;           /**< [m/s]                                          */
    double contact_length;  /**< [m], 0.12 where left out                       */
    bool brackets_rigid;    /**< default_bracket null                           */
    double default_bracket; /**< [N/m], 25e6 where left out                     */
    double bracket_loss;    /**< [-], 0.05 where left out                       */
    double amplitude;       /**< of the bush law [m]                            */
    double temperature;     /**< [K]; no law depends on it (see gw_study_ride)  */
    double damper_friction; /**< equivalent viscous damping added [N s/m], >= 0 */
    bool has_obstacle;
    double obstacle_height, obstacle_length; /**< half-sine bump [m]                  */
    bool left_out[GW_RIDE_SETTINGS];         /**< the case does not say: the value is the default */
} gw_ride;

/* ---- Road: ISO 8608:2016 ---------------------------------------------------------------------- */

#define GW_ROAD_N0    0.1   /**< reference spatial frequency [cycle/m]                             */
#define GW_ROAD_N_MIN 0.011 /**< the standard's own range [cycle/m], from memory                   */
#define GW_ROAD_N_MAX 2.83  /**< beyond it the spectrum is an extrapolation                        */

/** Geometric mean Gd(n0) of road class 'A' to 'H' [m^3]; 0 for any other letter. Source: ISO 8608. */
double gw_road_class_roughness(char road_class);

/**
 * Displacement spectrum over frequency, one-sided [m^2/Hz], of a road of roughness Gd(n0) [m^3]
 * driven at `speed` [m/s]: Gd(n0) (n/n0)^-2 / v with n = f/v. hz > 0.
 */
double gw_road_spectrum(double roughness, double speed, double hz);

/** Averaging of the profile over the contact length: sin(x)/x with x = pi f L / v. Common practice. */
double gw_road_contact_filter(double contact_length, double speed, double hz);

/** One-sided spectrum [1/Hz] of a process that jumps between -1 and 1 `rate` times a second, power and tail
 * of the arcsine law. */
double gw_crackle_spectrum(double rate, double hz);

/* ---- People and hearing ----------------------------------------------------------------------- */

/** |Wk| and |Wd| of ISO 2631-1:1997 at hz > 0, by their transfer functions (Q1 = Q2 = 1/sqrt 2). */
double gw_weight_wk(double hz);
double gw_weight_wd(double hz);

/** A weighting of IEC 61672-1 as an amplitude factor, 1 at 1000 Hz; hz > 0. */
double gw_weight_a(double hz);

/** The reactions of ISO 2631-1:1997, Annex C; their bands overlap on purpose. */
enum { GW_REACTIONS = 6 };

/** Text of a reaction and its band of weighted rms acceleration [m/s^2]; high < 0: no upper end. */
typedef struct gw_reaction {
    const char *text;
    double low, high;
} gw_reaction;

/** Reaction number 0 to GW_REACTIONS - 1, from the mildest. */
const gw_reaction *gw_reaction_get(int index);

/** The reactions whose bands hold `acceleration` [m/s^2, >= 0]: indices into `out`, and how many. */
int gw_reactions_at(double acceleration, int out[GW_REACTIONS]);

/* ---- Third-octave bands: IEC 61260-1, base ten ------------------------------------------------- */

enum { GW_BAND_FIRST = 10, GW_BAND_LAST = 25, GW_BANDS = GW_BAND_LAST - GW_BAND_FIRST + 1 };

/** Exact mid frequency 10^(n/10) [Hz] of band n, its edges, and the name it goes by (31.5 for n = 15). */
double gw_band_centre(int n);
double gw_band_low(int n);
double gw_band_high(int n);
double gw_band_nominal(int n);

/* ---- The result -------------------------------------------------------------------------------- */

#define GW_COMFORT_LOW    0.5   /**< [Hz] */
#define GW_COMFORT_HIGH   80.0  /**< [Hz] */
#define GW_HARSHNESS_LOW  20.0  /**< [Hz] */
#define GW_HARSHNESS_HIGH 200.0 /**< [Hz] */
#define GW_NOISE_LOW      40.0  /**< [Hz] */
#define GW_NOISE_HIGH     315.0 /**< [Hz] */

/** How many things nobody knows for sure (giveway/ride_unknowns.h). */
enum { GW_UNKNOWN_COUNT = 7 };

/** Draws that the range is made of, and with them the case as given, which comes first. */
enum { GW_RIDE_DRAWS = 8, GW_RIDE_STATES = 1 + GW_RIDE_DRAWS };

typedef enum gw_path_kind { GW_PATH_JOINT, GW_PATH_SPRING, GW_PATH_DAMPER } gw_path_kind;

/** One attachment to the chassis. */
typedef struct gw_ride_path {
    gw_path_kind kind;
    int joint;        /**< index of the joint; -1 for spring and damper            */
    const char *name; /**< the joint's, "spring" or "damper"; borrowed              */
    double force;     /**< rms over 20 to 200 Hz [N]                                */
    double share;     /**< of the squared harshness figure; all add up to 1         */
} gw_ride_path;

/** One mode of vibration. */
typedef struct gw_ride_mode {
    double hz;        /**< undamped, from Re(K), brackets and tyre spring, no damper  */
    double damped_hz; /**< imaginary part of the complex pole [Hz]                     */
    double zeta;      /**< damping ratio of that pole; 1 where not tracked             */
    bool tracked;     /**< the complex pole was found; not where overdamped, nor above 500 Hz     */
    double body, wheel_vertical,
        wheel_fore_aft; /**< share of kinetic energy in chassis z, wheel z, wheel x */
    int shared_body;    /**< of an axle: which of the parts that both wheels share moves most */
    double shared;      /**< its share of kinetic energy                                      */
    char words[120];    /**< "wheel fore-aft 71 %, lower_arm 20 %"  */
} gw_ride_mode;

/** A bush against the bracket that holds it on the chassis (series rule). */
typedef struct gw_isolation {
    int joint;
    double bush;      /**< largest dynamic rate in translation, |k*| at 63 Hz [N/m]    */
    double bracket;   /**< [N/m]                                                       */
    double ratio;     /**< bracket over bush                                           */
    double effective; /**< both in series over bush: r / (1 + r)                       */
    bool weak;        /**< ratio below five: common practice asks for more             */
} gw_isolation;

/** Force of one attachment per metre of road, on the grid of a gw_ride_curve. */
typedef struct gw_path_curve {
    const char *name; /**< of the attachment */
    int n;
    double *force; /**< [N/m] */
} gw_path_curve;

/** Transfer functions on a logarithmic grid, for charts. */
typedef struct gw_ride_curve {
    int n;
    double *hz;           /**< [Hz]                                                        */
    double *force;        /**< body force per road displacement [N/m]                      */
    double *chassis_z;    /**< |z chassis / z road| [-]                                    */
    double *chassis_x;    /**< |x chassis / z road| [-]                                    */
    double *path;         /**< [path * n + i]: force of one attachment [N/m]                */
    gw_path_curve *paths; /**< the same by attachment                                    */
} gw_ride_curve;

/** Force on the body after one obstacle, and how it dies away. */
typedef struct gw_obstacle {
    int n;                 /**< 0: no obstacle in the settings                          */
    double dt;             /**< [s]; the bump begins at time 0                          */
    double *fore_aft;      /**< net force on the chassis in x [N]                       */
    double *vertical;      /**< in z [N]                                                */
    double peak_fore_aft;  /**< largest magnitude [N]                                   */
    double peak_vertical;  /**<                                                         */
    double decay_fore_aft; /**< from the peak until it stays below a tenth of it [s]    */
    double decay_vertical; /**<                                                         */
    bool settled;          /**< both are below a tenth before the record ends           */
} gw_obstacle;

/** Friction of a joint or of the damper, as the ride model takes it: linearised on this road. */
typedef struct gw_ride_friction {
    int joint;        /**< index; -1: a damper                                                      */
    const char *name; /**< of the joint; damper, or left.damper and right.damper where two move together */
    double damping;   /**< [N m s/rad]; of the damper [N s/m]                                        */
    double speed;     /**< rms slip speed [rad/s]; of the damper [m/s]; not below what counts as sticking */
    bool sticks;
} gw_ride_friction;

/** How far a bush with a material moves on this road: the sine of equal power. */
typedef struct gw_ride_movement {
    int joint;
    double amplitude; /**< [m] */
} gw_ride_movement;

typedef struct gw_ride_result {
    bool settled;       /**< friction and amplitudes came to one state; false: figures are not numbers */
    const char *wavers; /**< not settled: what wavers, and between what; NULL: it is             */
    double comfort;     /**< weighted rms acceleration, 0.5 to 80 Hz [m/s^2] */
    double harshness[GW_RIDE_STATES]; /**< body force, 20 to 200 Hz [N]: as given, then each draw */
    double noise[GW_RIDE_STATES];     /**< A-weighted body force, 40 to 315 Hz [N]         */
    double crackle[2];                /**< part of both that friction's jumps alone make [N] */
    double friction;                  /**< at the wheel, before it moves; see gw_corner_friction [N] */
    double reversals;                 /**< of the wheel's movement, a second               */
    int n_sliders;
    gw_ride_friction *sliders; /**< joints in their order, the damper last */
    int n_movements;
    gw_ride_movement *movements; /**< bushes with a material, in the order of the joints */
    double band[GW_BANDS];       /**< body force by third-octave, 10 to 315 Hz [N]    */
    int heard_band;              /**< index into `band`: where most is heard, by the A weighting */
    int body, wheel_vertical, wheel_fore_aft; /**< indices into modes                         */
    int n_modes;                              /**< in rising order of frequency, rigid motion left out */
    gw_ride_mode *modes;
    int n_paths;
    gw_ride_path *paths;
    int n_isolation;
    gw_isolation *isolation;
    gw_ride_curve curve;
    gw_obstacle obstacle;
    const char
        *belt_note; /**< that the tyre has no belt, and what that does to what is heard; NULL: it has */
    const char *road_note; /**< over which frequencies the road spectrum is extrapolated        */
    double road_limit_hz;  /**< above it the road spectrum is extrapolated [Hz]                 */
    double chassis_mass; /**< on one wheel [kg]                                                            */
    int evaluations;     /**< frequencies at which the corner was solved                      */
    int n_warnings;
    char **warnings;
    gw_arena arena; /**< owns all of the above                                                  */
} gw_ride_result;

/** What to leave out where it is not wanted. */
typedef struct gw_ride_options {
    bool no_range;            /**< draws of what is not known: then equal to the case as given    */
    bool no_curve;            /**< no charts wanted                                               */
    bool no_obstacle;         /**< even where the settings hold one                               */
    bool no_modes;            /**< nor remarks on them: without damping they serve integration alone */
    const bool *changed;      /**< one a joint: its bush is not the first kit's; NULL: none    */
    const gw_corner_ws *like; /**< of the corner, with whatever fitted: see gw_corner_open_like; NULL      */
    int passes;               /**< sweeps within which friction and amplitudes must settle; 0: plenty   */
} gw_ride_options;

/**
 * Everything that the ride model says of one corner with one kit.
 *
 * An axle with shared parts is one result: both wheels on the same road. Its forces are those of one wheel:
 * the root-sum-square over the attachments of both sides over sqrt 2; of obstacles half.
 *
 * @param[in]  corner    wheel with mass, inertias, tyre and static load; joints; spring; damper.
 * @param[in]  fit       one entry a joint: the laws of the bushes, without brackets.
 * @param[in]  settings  road, speed, brackets.
 * @param[in]  options   NULL: everything.
 * @param[out] out       written only on success; freed with gw_ride_result_free. Names in it are the
 * corner's.
 * @retval GW_OK
 * @retval GW_E_RANGE     a value that ride needs is missing or not allowed; the message names it.
 * @retval GW_E_NUMERIC   a mode in the band has no damping at all, so that its figure has no end.
 * @retval GW_E_NOMEM
 * Accuracy: integrals to 1e-5 of their value.
 */
gw_status gw_ride_solve(const gw_corner *corner, const gw_fit *fit, const gw_ride *settings,
                        const gw_ride_options *options, gw_ride_result *out, gw_error *err);

/** Frees what a result owns; a zeroed result is allowed. */
void gw_ride_result_free(gw_ride_result *result);

/** Parts of the cabin's noise that other paths may carry: a half, three quarters, nine tenths. */
enum { GW_OTHER_PATHS = 3 };
double gw_ride_other_path(int index);

/**
 * What is heard of `dB` more on one path where others carry the part `other` [0 to 1] of the energy before
 * and stay as they are: 10 lg(other + (1 - other) 10^(dB/10)).
 */
double gw_ride_beside(double dB, double other);

/** Grades of a difference: below -3, -1, 1, 3, 8 dB and above; 1 dB can hardly be told, 3 dB plainly (common
 * practice). */
enum { GW_GRADES = 6 };
int gw_ride_grade(double dB);

/**
 * Decibels of a kit over the baseline. Low and high hold about nine in ten of what seven unknowns make of it
 * (brackets and their loss, stiffness and loss of bushes, give of links and lugs, the tyre's belt): mean
 * and 1.645 standard deviations of eight draws, widened to hold the nominal figure.
 */
typedef struct gw_ride_difference {
    double harshness, harshness_low, harshness_high; /**< [dB] */
    double noise, noise_low, noise_high;             /**< [dB] */
    double band[GW_BANDS];                           /**< [dB] */
    int felt_grade[2], heard_grade[2]; /**< of low and high: 0 clearly less to 5 much more (gw_ride_grade) */
    double felt_effect[GW_UNKNOWN_COUNT], heard_effect[GW_UNKNOWN_COUNT]; /**< of each unknown at its upper
                                          end, the others in their middle, by the draws' linear part [dB] */
    double beside[GW_OTHER_PATHS]; /**< noise that is heard where other paths carry a part of it [dB]  */
} gw_ride_difference;

/** Both are taken in the same draws, so that what both have in common does not count twice. */
void gw_ride_compare(const gw_ride_result *kit, const gw_ride_result *baseline, gw_ride_difference *out);

/** The caution that belongs beside every figure. */
const char *gw_ride_caution(void);

GW_API_END

#endif
