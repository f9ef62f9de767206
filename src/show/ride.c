/* SPDX-License-Identifier: MIT */
/* The rows of `ride`: every figure that it shows. */
#include "show/ride.h"
#include "record/csv.h"
#include "show/ride_words.h"

#include <math.h>

/* -- what was assumed -- */

/* Keys as a case has them, so that settings can be copied back into one. */
static const char *const SETTING_KEYS[GW_RIDE_SETTINGS] = {
    "contact_length_mm", "default_bracket_N_per_mm", "bracket_loss_factor", "amplitude_mm",
    "temperature_C",     "damper_friction_Ns_per_mm"
};

static const char *const CLASSES[] = { "A", "B", "C", "D", "E", "F", "G", "H", NULL };

static const char *road_class(const gw_place *p)
{
    char letter = p->c->ride.road_class;
    return letter ? CLASSES[letter - 'A'] : NULL;
}

GW_READS(double, default_bracket, gw_case, it->ride.brackets_rigid ? (double)NAN : it->ride.default_bracket)
GW_READS(double, temperature, gw_case, it->ride.temperature - GW_ZERO_C)

/* Which setting is the n-th of those that were left out; GW_RIDE_SETTINGS: there are no more. */
static int left_out(const gw_place *p, int n)
{
    for (int i = 0; i < GW_RIDE_SETTINGS; i++)
        if (p->c->ride.left_out[i] && n-- == 0) return i;
    return GW_RIDE_SETTINGS;
}

static int count_left_out(const gw_place *p)
{
    int n = 0;
    while (left_out(p, n) < GW_RIDE_SETTINGS) n++;
    return n;
}

GW_READS(const char *, left_out_key, gw_case, SETTING_KEYS[left_out(p, p->index)])

static GW_RECORD(BUMP_RECORD, gw_ride,
    GW_MEMBER("height", MM, gw_ride, obstacle_height, 0, "of the half-sine bump"),
    GW_MEMBER("length", MM, gw_ride, obstacle_length, 0, "of the half-sine bump"));

static GW_RECORD(SETTINGS_RECORD, gw_ride,
    GW_CHOSEN("road_class", road_class, CLASSES, GW_SOMETIMES, "of ISO 8608"),
    GW_MEMBER("roughness", M3, gw_ride, roughness, 0, "of the road at 0.1 cycle/m"),
    GW_MEMBER("speed", KM_H, gw_ride, speed, GW_AS_ASKED, "of the car"),
    GW_MEMBER("contact_length", MM, gw_ride, contact_length, 0, "of the tyre"),
    GW_WORKED_OUT("default_bracket", N_PER_MM, default_bracket, GW_MAY_LACK, "body behind a bush whose joint names no bracket; null: rigid"),
    GW_MEMBER("bracket_loss_factor", PLAIN, gw_ride, bracket_loss, 0, "of every bracket"),
    GW_MEMBER("amplitude", MM, gw_ride, amplitude, 0, "that bushes are taken at where the case gives it, and measured ones without"),
    GW_WORKED_OUT("temperature", C, temperature, GW_AS_ASKED, "no law of a bush follows it"),
    GW_MEMBER("damper_friction", NS_PER_MM, gw_ride, damper_friction, 0, "as damping added"),
    GW_HERE_IF("obstacle", gw_ride, has_obstacle, &BUMP_RECORD, GW_ON_LINE, "the bump"),
    GW_SAYINGS("left_out_of_the_case", count_left_out, left_out_key, 0, "settings that stand at their default"));

/* -- friction and movement -- */

GW_READS(double, joint_damping, gw_ride_friction, it->joint < 0 ? (double)NAN : it->damping)
GW_READS(double, line_damping, gw_ride_friction, it->joint < 0 ? it->damping : (double)NAN)

static GW_RECORD(SLIDER_RECORD, gw_ride_friction,
    GW_MEMBER("joint", PLAIN, gw_ride_friction, name, 0, "the joint, or damper"),
    GW_WORKED_OUT("damping", NMS_PER_RAD, joint_damping, GW_SOMETIMES, "that friction of a joint is taken for on this road"),
    GW_WORKED_OUT("damping", NS_PER_MM, line_damping, GW_SOMETIMES, "the same of the damper"),
    GW_MEMBER("sticks", PLAIN, gw_ride_friction, sticks, 0, "hardly ever slips on this road, and does not crackle"));

static GW_RECORD(MOVEMENT_RECORD, gw_ride_movement,
    GW_JOINT("joint", gw_ride_movement, joint, gw_ride_item, 0, "the joint"),
    GW_MEMBER("amplitude", MM, gw_ride_movement, amplitude, 0, "of a sine of equal power, that its bush is taken at"));

/* -- bands, modes, paths, brackets -- */

GW_READS(const void *, band_at, gw_ride_item, &it->result.band[p->index])
GW_READS(double, band_centre, gw_ride_item, gw_band_nominal(GW_BAND_FIRST + GW_INDEX(p, gw_ride_band)))

static GW_RECORD(BAND_RECORD, gw_ride_band,
    GW_WORKED_OUT("centre", HZ, band_centre, 0, "nominal mid-frequency"),
    GW_ENTRY("body_force", N, gw_ride_item, result.band, gw_ride_band, GW_MAY_LACK, "rms in the band"),
    GW_ENTRY("dB_from_baseline", PLAIN, gw_ride_item, difference.band, gw_ride_band, GW_MAY_LACK, "over the first kit"));

static int modes(const gw_place *p)
{
    const gw_ride_result *r = &GW_IT(p, gw_ride_item)->result;
    int n = 0;
    while (n < r->n_modes && r->modes[n].hz <= GW_NOISE_HIGH) n++;
    return n;
}

GW_READS(const void *, mode_at, gw_ride_item, &it->result.modes[p->index])

static GW_RECORD(MODE_RECORD, gw_ride_mode,
    GW_MEMBER("natural", HZ, gw_ride_mode, hz, 0, "without damping"),
    GW_MEMBER_IF("damped", HZ, gw_ride_mode, tracked, gw_ride_mode, damped_hz, GW_MAY_LACK, "with it; null: it does not swing"),
    GW_MEMBER_IF("damping_ratio", PLAIN, gw_ride_mode, tracked, gw_ride_mode, zeta, GW_MAY_LACK, "of the critical damping"),
    GW_MEMBER("body_share", PLAIN, gw_ride_mode, body, 0, "of the kinetic energy: body, vertical"),
    GW_MEMBER("wheel_vertical_share", PLAIN, gw_ride_mode, wheel_vertical, 0, "of the kinetic energy"),
    GW_MEMBER("wheel_fore_aft_share", PLAIN, gw_ride_mode, wheel_fore_aft, 0, "of the kinetic energy"),
    GW_MEMBER("shape", PLAIN, gw_ride_mode, words, 0, "in words"));

/* The mode that a row asks for. */
enum { BODY, WHEEL_VERTICAL, WHEEL_FORE_AFT };
static const gw_ride_mode *named_mode(const gw_place *p)
{
    const gw_ride_result *r = &GW_IT(p, gw_ride_item)->result;
    const int modes[] = { r->body, r->wheel_vertical, r->wheel_fore_aft };
    return &r->modes[modes[GW_WHICH(p)]];
}

GW_READS(double, named_hz, gw_ride_item, named_mode(p)->hz)
GW_READS(double, named_damping, gw_ride_item, named_mode(p)->tracked ? named_mode(p)->zeta : (double)NAN)

static GW_RECORD(NATURAL_RECORD, gw_ride_item,
    GW_WORKED_OUT_OF("body", HZ, named_hz, BODY, GW_NO_UNIT, "up and down"),
    GW_WORKED_OUT_OF("wheel_vertical", HZ, named_hz, WHEEL_VERTICAL, GW_NO_UNIT, "up and down"),
    GW_WORKED_OUT_OF("wheel_fore_aft", HZ, named_hz, WHEEL_FORE_AFT, GW_NO_UNIT, "fore and aft"));

static GW_RECORD(PATH_RECORD, gw_ride_path,
    GW_MEMBER("attachment", PLAIN, gw_ride_path, name, 0, "joint, spring or damper"),
    GW_MEMBER("force", N, gw_ride_path, force, GW_MAY_LACK, "rms, 20 to 200 Hz"),
    GW_MEMBER("share", PLAIN, gw_ride_path, share, GW_MAY_LACK, "of the squared harshness"));

static GW_RECORD(ISOLATION_RECORD, gw_isolation,
    GW_JOINT("joint", gw_isolation, joint, gw_ride_item, 0, "the joint"),
    GW_MEMBER("bush_dynamic", N_PER_MM, gw_isolation, bush, 0, "in its stiffest direction at 63 Hz"),
    GW_MEMBER("bracket", N_PER_MM, gw_isolation, bracket, GW_MAY_LACK, "that holds it"),
    GW_MEMBER("bracket_over_bush", PLAIN, gw_isolation, ratio, GW_MAY_LACK, "five or more is common practice"),
    GW_MEMBER("effective_over_bush", PLAIN, gw_isolation, effective, 0, "both in series over the bush"),
    GW_MEMBER("weak", PLAIN, gw_isolation, weak, 0, "less than five times"));

/* -- a bump; what a metre of road does -- */

GW_READS(const void *, obstacle, gw_ride_item, it->result.obstacle.n ? &it->result.obstacle : NULL)
GW_READS(const void *, in_full, gw_obstacle, GW_IT(p, gw_ride_made)->all ? it : NULL)

static GW_RECORD(AFTER_BUMP_RECORD, gw_obstacle,
    GW_MEMBER("step", S, gw_obstacle, dt, 0, "between two forces below; the bump begins at 0"),
    GW_SERIES("fore_aft", N, gw_obstacle, n, fore_aft, 0, "net force on the body"),
    GW_SERIES("vertical", N, gw_obstacle, n, vertical, 0, "net force on the body"));

static GW_RECORD(OBSTACLE_RECORD, gw_obstacle,
    GW_MEMBER("peak_fore_aft", N, gw_obstacle, peak_fore_aft, 0, "largest net force on the body"),
    GW_MEMBER("peak_vertical", N, gw_obstacle, peak_vertical, 0, "largest net force on the body"),
    GW_MEMBER("decay_fore_aft", S, gw_obstacle, decay_fore_aft, 0, "until it stays below a tenth of the peak"),
    GW_MEMBER("decay_vertical", S, gw_obstacle, decay_vertical, 0, "until it stays below a tenth of the peak"),
    GW_MEMBER("settled", PLAIN, gw_obstacle, settled, GW_NO_CSV, "both do so within the record"),
    GW_PART_FOUND(in_full, &AFTER_BUMP_RECORD, GW_NO_CSV));

GW_READS(const void *, curve, gw_ride_item,
         GW_IT(p, gw_ride_made)->all && it->result.curve.n ? &it->result.curve : NULL)

static GW_RECORD(CURVE_PATH_RECORD, gw_path_curve,
    GW_MEMBER("attachment", PLAIN, gw_path_curve, name, 0, "joint, spring or damper"),
    GW_SERIES("force", N_PER_M, gw_path_curve, n, force, 0, "per metre of road"));

static GW_RECORD(CURVE_RECORD, gw_ride_curve,
    GW_SERIES("frequency", HZ, gw_ride_curve, n, hz, 0, "logarithmic steps"),
    GW_SERIES("body_force", N_PER_M, gw_ride_curve, n, force, 0, "per metre of road"),
    GW_SERIES("body_vertical_m_per_m", PLAIN, gw_ride_curve, n, chassis_z, 0, "movement per metre of road"),
    GW_SERIES("body_fore_aft_m_per_m", PLAIN, gw_ride_curve, n, chassis_x, 0, "movement per metre of road"),
    GW_ROWS("paths", gw_ride_item, result.n_paths, result.curve.paths, &CURVE_PATH_RECORD, 0, "the force of each attachment"));

/* -- a kit in a corner -- */

static int reactions(const gw_place *p)
{
    int list[GW_REACTIONS];
    return gw_reactions_at(GW_IT(p, gw_ride_item)->result.comfort, list);
}

static const char *reaction(const gw_place *p)
{
    int list[GW_REACTIONS];
    gw_reactions_at(GW_IT(p, gw_ride_item)->result.comfort, list);
    return gw_reaction_get(list[p->index])->text;
}

/* Of what is felt, or heard: how it may lie over the first kit. */
static void range(const gw_place *p, double *x)
{
    const gw_ride_difference *d = &GW_IT(p, gw_ride_item)->difference;
    x[0] = GW_WHICH(p) ? d->noise_low : d->harshness_low;
    x[1] = GW_WHICH(p) ? d->noise_high : d->harshness_high;
}

/* Of what is felt, or heard: one word, or two where the range spans them. */
GW_READS(const int *, grade_of, gw_ride_item,
         GW_WHICH(p) ? it->difference.heard_grade : it->difference.felt_grade)

static int grades(const gw_place *p)
{
    if (!GW_IT(p, gw_ride_item)->result.settled) return 0;
    return grade_of(p)[0] == grade_of(p)[1] ? 1 : 2;
}

GW_READS(const char *, grade, gw_ride_item, gw_ride_grade_word(grade_of(p)[p->index], GW_WHICH(p)))
GW_READS(const void *, other_at, gw_ride_item, &it->difference.beside[p->index])

static double other_part(const gw_place *p)
{
    static const double PART[GW_OTHER_PATHS] = { 0.5, 0.75, 0.9 };
    return PART[GW_INDEX(p, gw_other_path)];
}

static GW_RECORD(OTHER_RECORD, gw_other_path,
    GW_WORKED_OUT("other_paths", PERCENT, other_part, 0, "of the cabin's noise"),
    GW_ENTRY("heard", DB, gw_ride_item, difference.beside, gw_other_path, GW_MAY_LACK, "what is then left of the difference, energies added"));

GW_READS(int, unknowns, gw_ride_item, it->kit == 0 ? 0 : GW_UNKNOWNS)
GW_READS(const void *, unknown_at, gw_ride_item, &it->difference.felt_effect[p->index])
GW_READS(const char *, unknown_name, gw_ride_item, gw_ride_unknown_name(GW_INDEX(p, gw_unknown_effect)))
GW_READS(const char *, unknown_limits, gw_ride_item, gw_ride_unknown_limits(GW_INDEX(p, gw_unknown_effect)))

static GW_RECORD(UNKNOWN_RECORD, gw_unknown_effect,
    GW_SAID("unknown", unknown_name, 0, "what nobody knows for sure"),
    GW_SAID("taken", unknown_limits, 0, "between what"),
    GW_ENTRY("harshness", DB, gw_ride_item, difference.felt_effect, gw_unknown_effect, GW_MAY_LACK, "that its upper end adds to harshness_dB; the lower end takes it away"),
    GW_ENTRY("road_noise", DB, gw_ride_item, difference.heard_effect, gw_unknown_effect, GW_MAY_LACK, "the same of road_noise_dB"));

GW_READS(const char *, caution, gw_ride_item, gw_ride_caution())

/* What tells kits apart. */
GW_RECORD(GW_RIDE_FIGURES_RECORD, gw_ride_item,
    GW_KIT("kit", gw_ride_item, kit, 0, "name of the kit"),
    GW_WORD("corner", gw_ride_item, axle, GW_AXLE_NAMES, 0, "the axle"),
    GW_MEMBER("comfort", MS2, gw_ride_item, result.comfort, GW_MAY_LACK, "weighted acceleration of the body, 0.5 to 80 Hz; null, as all figures: friction does not settle"),
    GW_SAYINGS("comfort_reactions", reactions, reaction, 0, "what ISO 2631-1 says of it"),
    GW_MEMBER("harshness", N, gw_ride_item, result.harshness[0], GW_MAY_LACK, "felt: force into the body, 20 to 200 Hz"),
    GW_MEMBER("harshness", DB, gw_ride_item, difference.harshness, GW_MAY_LACK, "over the first kit"),
    GW_FILLED_OF("harshness_range", DB, GW_PAIR, range, false, GW_MAY_LACK, "about nine in ten of what brackets, their loss, bushes, links, lugs and the tyre's belt may make of it"),
    GW_MEMBER("road_noise", N, gw_ride_item, result.noise[0], GW_MAY_LACK, "heard: force into the body, A-weighted, 40 to 315 Hz"),
    GW_MEMBER("road_noise", DB, gw_ride_item, difference.noise, GW_MAY_LACK, "over the first kit"),
    GW_FILLED_OF("road_noise_range", DB, GW_PAIR, range, true, GW_MAY_LACK, "as that of harshness"));

static GW_RECORD(ITEM_RECORD, gw_ride_item,
    GW_PART_SAME(&GW_RIDE_FIGURES_RECORD),
    GW_SAYINGS_OF("harshness_grade", grades, grade, false, 0, "in words; two where the range spans them"),
    GW_SAYINGS_OF("road_noise_grade", grades, grade, true, 0, "the same of the A-weighted force"),
    GW_EACH("unknowns", unknowns, unknown_at, &UNKNOWN_RECORD, GW_ON_LINE, "what each does to the figure; none of the first kit"),
    GW_EVERY("beside_other_paths", GW_OTHER_PATHS, other_at, &OTHER_RECORD, GW_ON_LINE, "road_noise_dB among what else is heard"),
    GW_MEMBER("crackle", N, gw_ride_item, result.crackle, GW_MAY_LACK, "part of harshness and of road noise that friction makes by jumping"),
    GW_MEMBER("friction", N, gw_ride_item, result.friction, 0, "at the wheel, before it moves"),
    GW_ROWS("sliders", gw_ride_item, result.n_sliders, result.sliders, &SLIDER_RECORD, GW_ON_LINE, "what rubs"),
    GW_ROWS("amplitudes", gw_ride_item, result.n_movements, result.movements, &MOVEMENT_RECORD, GW_ON_LINE, "how far bushes with a material move"),
    GW_MEMBER("belt_note", PLAIN, gw_ride_item, result.belt_note, GW_SOMETIMES, "where the tyre has no belt: what that does to what is heard"),
    GW_MEMBER("wavers", PLAIN, gw_ride_item, result.wavers, GW_SOMETIMES, "why figures are left out"),
    GW_HERE("natural_Hz", &NATURAL_RECORD, GW_ON_LINE, "frequencies without damping and without the tyre's belt"),
    GW_EVERY("third_octave", GW_BANDS, band_at, &BAND_RECORD, GW_ON_LINE, "10 to 315 Hz"),
    GW_EACH("modes", modes, mode_at, &MODE_RECORD, GW_ON_LINE, "up to 315 Hz"),
    GW_ROWS("paths", gw_ride_item, result.n_paths, result.paths, &PATH_RECORD, GW_ON_LINE, "every attachment to the body"),
    GW_ROWS("isolation", gw_ride_item, result.n_isolation, result.isolation, &ISOLATION_RECORD, GW_ON_LINE, "bushes against their brackets"),
    GW_INSIDE("obstacle", obstacle, &OBSTACLE_RECORD, 0, "after the bump"),
    GW_INSIDE("transmissibility", curve, &CURVE_RECORD, 0, "what a metre of road does; with --detail"),
    GW_MEMBER("body_mass", KG, gw_ride_item, result.chassis_mass, 0, "on this corner"),
    GW_TEXTS("warnings", gw_ride_item, result.n_warnings, result.warnings, 0, "of this kit in this corner"),
    GW_SAID("caution", caution, 0, "that belongs beside every figure"));

GW_READS(const char *, baseline, gw_case, it->kits[0].name)
GW_READS(const char *, road_note, gw_ride_made, it->study.n ? it->study.item[0].result.road_note : NULL)
GW_READS(const char *, kit_of_two, gw_ride_close, p->c->kits[it->kit[p->index]].name)
GW_READS(const char *, close_figure, gw_ride_close, it->heard ? "road_noise" : "harshness")

GW_RECORD(GW_RIDE_CLOSE_RECORD, gw_ride_close,
    GW_WORD("corner", gw_ride_close, axle, GW_AXLE_NAMES, 0, "the axle"),
    GW_SAID("figure", close_figure, 0, "harshness or road_noise"),
    GW_ALL_SAYINGS("kits", 2, kit_of_two, 0, "whose order may be the other way round"));

static GW_RECORD(RESULT_RECORD, gw_ride_made,
    GW_SAID("baseline", baseline, 0, "the first kit of the case"),
    GW_WITHIN("settings", gw_case, ride, &SETTINGS_RECORD, 0, "as a case has them"),
    GW_ROWS("results", gw_ride_made, study.n, study.item, &ITEM_RECORD, 0, "by kit, then corner"),
    GW_ROWS("too_close_to_call", gw_ride_made, study.n_close, study.close, &GW_RIDE_CLOSE_RECORD, 0, "kits within the range of each other"),
    GW_SAID("road_note", road_note, GW_SOMETIMES, "where the road's spectrum is extrapolated"),
    GW_TEXTS("warnings", gw_ride_made, n_warnings, warning, 0, "as on standard error"));

/* -- in CSV: what a line can hold, bands as columns -- */

static const void *largest_path(const gw_place *p)
{
    const gw_ride_result *r = &GW_IT(p, gw_ride_item)->result;
    const gw_ride_path *most = r->n_paths ? r->paths : NULL;
    for (int i = 1; i < r->n_paths; i++)
        if (r->paths[i].share > most->share) most = &r->paths[i];
    return most;
}

GW_RECORD(GW_RIDE_COLUMNS_RECORD, gw_ride_item,
    GW_MEMBER("comfort", MS2, gw_ride_item, result.comfort, 0, "weighted acceleration of the body"),
    GW_MEMBER("harshness", N, gw_ride_item, result.harshness[0], 0, "felt"),
    GW_MEMBER("harshness", DB, gw_ride_item, difference.harshness, 0, "over the first kit"),
    GW_MEMBER("harshness_low", DB, gw_ride_item, difference.harshness_low, 0, "end of its range"),
    GW_MEMBER("harshness_high", DB, gw_ride_item, difference.harshness_high, 0, "end of its range"),
    GW_MEMBER("road_noise", N, gw_ride_item, result.noise[0], 0, "heard"),
    GW_MEMBER("road_noise", DB, gw_ride_item, difference.noise, 0, "over the first kit"),
    GW_MEMBER("road_noise_low", DB, gw_ride_item, difference.noise_low, 0, "end of its range"),
    GW_MEMBER("road_noise_high", DB, gw_ride_item, difference.noise_high, 0, "end of its range"));

GW_RECORD(GW_RIDE_COMPARED_RECORD, gw_ride_item,
    GW_MEMBER("friction", N, gw_ride_item, result.friction, 0, "at the wheel, before it moves"),
    GW_WORKED_OUT_OF("wheel_fore_aft", HZ, named_hz, WHEEL_FORE_AFT, 0, "natural frequency"));

static GW_RECORD(LARGEST_RECORD, gw_ride_path,
    GW_MEMBER("largest_path", PLAIN, gw_ride_path, name, 0, "joint, spring or damper"),
    GW_MEMBER("largest_path_share", PLAIN, gw_ride_path, share, 0, "of the squared harshness"));

/* clang-format off */
#define BANDS(X) X(0, "10") X(1, "12.5") X(2, "16") X(3, "20") X(4, "25") X(5, "31.5") X(6, "40") X(7, "50") \
    X(8, "63") X(9, "80") X(10, "100") X(11, "125") X(12, "160") X(13, "200") X(14, "250") X(15, "315")
#define BAND_FORCE(i, hz) GW_MEMBER("band_" hz "_Hz", N, gw_ride_item, result.band[i], 0, "rms in the band"),
#define BAND_OVER(i, hz) GW_MEMBER("band_" hz "_Hz", DB, gw_ride_item, difference.band[i], 0, "over the first kit"),
/* clang-format on */
static GW_RECORD(LINE_RECORD, gw_ride_item,
    GW_KIT("kit", gw_ride_item, kit, 0, "name of the kit"),
    GW_WORD("corner", gw_ride_item, axle, GW_AXLE_NAMES, 0, "the axle"),
    GW_PART_SAME(&GW_RIDE_COLUMNS_RECORD),
    GW_MEMBER("crackle_felt", N, gw_ride_item, result.crackle[0], 0, "part of harshness"),
    GW_MEMBER("crackle_heard", N, gw_ride_item, result.crackle[1], 0, "part of road noise"),
    GW_WORKED_OUT_OF("body", HZ, named_hz, BODY, 0, "up and down"),
    GW_WORKED_OUT_OF("body_damping_ratio", PLAIN, named_damping, BODY, 0, "of the critical damping"),
    GW_WORKED_OUT_OF("wheel_vertical", HZ, named_hz, WHEEL_VERTICAL, 0, "up and down"),
    GW_WORKED_OUT_OF("wheel_vertical_damping_ratio", PLAIN, named_damping, WHEEL_VERTICAL, 0, "of the critical damping"),
    GW_WORKED_OUT_OF("wheel_fore_aft", HZ, named_hz, WHEEL_FORE_AFT, 0, "fore and aft"),
    GW_WORKED_OUT_OF("wheel_fore_aft_damping_ratio", PLAIN, named_damping, WHEEL_FORE_AFT, 0, "of the critical damping"),
    GW_INSIDE("obstacle", obstacle, &OBSTACLE_RECORD, 0, "after the bump"),
    GW_PART_FOUND(largest_path, &LARGEST_RECORD, 0),
    BANDS(BAND_FORCE)
    BANDS(BAND_OVER)
    GW_SAID("caution", caution, 0, "that belongs beside every figure"));

static void csv(const gw_case *c, const void *made, gw_buf *out)
{
    const gw_ride_study *study = &((const gw_ride_made *)made)->study;
    gw_records_csv(&LINE_RECORD, c, study->item, study->n, sizeof *study->item, out);
}

const gw_result GW_RIDE_RESULT = {
    .command = "ride", .record = &RESULT_RECORD, .rows = "results", .csv = csv
};
