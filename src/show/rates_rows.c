/* SPDX-License-Identifier: MIT */
/* The rows of `rates`: every figure that it shows to other programs. */
#include "show/rates.h"
#include "show/results.h"

#include <math.h>

static GW_RECORD(SIX_RECORD, gw_given_rates,
    GW_MEMBER("radial", N_PER_MM, gw_given_rates, radial, 0, "along e1, along e2"),
    GW_MEMBER("axial", N_PER_MM, gw_given_rates, axial, 0, "along the axis, e3"),
    GW_MEMBER("conical", NM_PER_DEG, gw_given_rates, conical, 0, "about e1, about e2"),
    GW_MEMBER("torsional", NM_PER_DEG, gw_given_rates, torsional, 0, "about the axis, e3"));

/* -- what else is in the law -- */

static GW_RECORD(STOP_RECORD, gw_stop,
    GW_MEMBER("gap", MM, gw_stop, gap, 0, "until it touches"),
    GW_MEMBER("rate", N_PER_MM, gw_stop, rate, 0, "by which the radial rate rises from there"));

GW_READS(const void *, stop_of, gw_rates_row, it->report.law.stop.rate > 0.0 ? &it->report.law.stop : NULL)
GW_READS(const void *, void_stop_of, gw_rates_row,
         it->report.law.void_stop.rate > 0.0 ? &it->report.law.void_stop : NULL)

static double if_any(double value)
{
    return value > 0.0 ? value : (double)NAN;
}

GW_READS(double, play, gw_rates_row, if_any(it->report.law.clearance))
GW_READS(double, breakaway, gw_rates_row, if_any(it->report.law.breakaway))
GW_READS(double, stiffening, gw_rates_row, if_any(it->report.law.stiffening))

/* -- its band, and the handbook beside it -- */

static GW_RECORD(BAND_RECORD, gw_rates_row,
    GW_MEMBER("low", PLAIN, gw_rates_row, report.low, 0, "of these rates, by the tolerance of the modulus"),
    GW_MEMBER("high", PLAIN, gw_rates_row, report.high, 0, "likewise"),
    GW_MEMBER("source", PLAIN, gw_rates_row, report.band_source, 0, "of the tolerance"),
    GW_WITHIN("lowest", gw_rates_row, lowest, &SIX_RECORD, 0, "the rates at low"),
    GW_WITHIN("highest", gw_rates_row, highest, &SIX_RECORD, 0, "the rates at high"));

/* One number radially, which across voids is that along e1. */
static GW_RECORD(DIFFERENCE_RECORD, gw_rates_row,
    GW_MEMBER("radial", PERCENT, gw_rates_row, difference.radial[0], GW_NO_UNIT | GW_MAY_LACK, "along e1"),
    GW_MEMBER("axial", PERCENT, gw_rates_row, difference.axial, GW_NO_UNIT | GW_MAY_LACK, "along the axis"),
    GW_MEMBER("torsional", PERCENT, gw_rates_row, difference.torsional, GW_NO_UNIT | GW_MAY_LACK, "about the axis"),
    GW_MEMBER("conical", PERCENT, gw_rates_row, difference.conical, GW_NO_UNIT | GW_MAY_LACK, "about e1, about e2"));

GW_READS(const char *, handbook_source, gw_rates_row, gw_rates_handbook(it->bush->type))

static GW_RECORD(HANDBOOK_RECORD, gw_rates_row,
    GW_MEMBER("radial", N_PER_MM, gw_rates_row, beside.radial[0], 0, "by the closed form; across voids along e1"),
    GW_MEMBER("axial", N_PER_MM, gw_rates_row, beside.axial, 0, "by the closed form"),
    GW_MEMBER("torsional", NM_PER_DEG, gw_rates_row, beside.torsional, 0, "by the closed form"),
    GW_MEMBER("conical", NM_PER_DEG, gw_rates_row, beside.conical, GW_NO_CSV, "by the closed form"),
    { .key = "difference",
      .kind = GW_OBJECT,
      .unit = GW_UNIT_PERCENT,
      .flags = GW_NO_CSV | GW_ON_LINE,
      .record = &DIFFERENCE_RECORD,
      .doc = "closed form less solution, of the solution" },
    GW_SAID("source", handbook_source, GW_NO_CSV, "of the closed forms"));

/* -- at a frequency -- */

static GW_RECORD(DYNAMIC_RECORD, gw_rates_dynamic,
    GW_MEMBER("frequency", HZ, gw_rates_dynamic, hz, 0, "as asked"),
    GW_MEMBER("amplitude", MM, gw_rates_dynamic, amplitude, 0, "as asked"),
    GW_MEMBER("ratio", PLAIN, gw_rates_dynamic, band.ratio, 0, "size of the complex stiffness over the static rate"),
    GW_MEMBER("complex_ratio", PLAIN, gw_rates_dynamic, complex_ratio, 0, "its real and imaginary part"),
    GW_MEMBER("loss_factor", PLAIN, gw_rates_dynamic, band.loss, 0, "imaginary over real part"),
    GW_MEMBER("loss_angle", DEG, gw_rates_dynamic, loss_angle, 0, "its arc tangent"),
    GW_PART_OF(gw_rates_dynamic, rates, &SIX_RECORD),
    GW_MEMBER("ratio_range", PLAIN, gw_rates_dynamic, ratio_range, 0, "by the tolerances of the compound's dynamic values"),
    GW_MEMBER("loss_factor_range", PLAIN, gw_rates_dynamic, loss_range, 0, "likewise"));

static GW_RECORD(DYNAMIC_COLUMNS_RECORD, gw_rates_row,
    GW_MEMBER("frequency", HZ, gw_rates_row, dynamic.hz, GW_NO_JSON, "as asked"),
    GW_MEMBER("amplitude", MM, gw_rates_row, dynamic.amplitude, GW_NO_JSON, "as asked"),
    GW_MEMBER("dynamic_ratio", PLAIN, gw_rates_row, dynamic.band.ratio, GW_NO_JSON, "size of the complex stiffness over the static rate"),
    GW_MEMBER("loss_factor", PLAIN, gw_rates_row, dynamic.band.loss, GW_NO_JSON, "imaginary over real part"));

GW_READS(const void *, dynamic_of, gw_rates_row, it->dynamic.hz > 0.0 ? &it->dynamic : NULL)
GW_READS(const void *, if_dynamic, gw_rates_row, dynamic_of(p) ? it : NULL)

/* -- how every figure came about -- */

GW_READS(gw_unit, input_unit, gw_explain_input, gw_rates_unit(it->quantity))
GW_READS(const char *, input_word, gw_explain_input, gw_unit_word(input_unit(p)))

static GW_RECORD(INPUT_RECORD, gw_explain_input,
    GW_MEMBER("symbol", PLAIN, gw_explain_input, symbol, 0, "as in the formula"),
    GW_MEMBER_IN("value", input_unit, gw_explain_input, value, GW_NO_UNIT | GW_MAY_LACK, "in the unit beside it"),
    GW_SAID("unit", input_word, 0, "of the value"));

GW_READS(gw_unit, line_unit, gw_explain_line, gw_rates_unit(it->quantity))
GW_READS(const char *, line_word, gw_explain_line, gw_unit_word(line_unit(p)))

static GW_RECORD(LINE_RECORD, gw_explain_line,
    GW_MEMBER("figure", PLAIN, gw_explain_line, figure, 0, "what was worked out"),
    GW_MEMBER_IN("value", line_unit, gw_explain_line, value, GW_NO_UNIT | GW_MAY_LACK, "in the unit beside it"),
    GW_SAID("unit", line_word, 0, "of the value"),
    GW_MEMBER("formula", PLAIN, gw_explain_line, formula, 0, "by which"),
    GW_ARRAY("inputs", gw_explain_line, n_inputs, inputs, &INPUT_RECORD, GW_ON_LINE, "of the formula"),
    GW_MEMBER("source", PLAIN, gw_explain_line, source, 0, "whose formula it is"));

static GW_RECORD(EXPLAINED_RECORD, gw_rates_row,
    GW_ARRAY("explain", gw_rates_row, report.n_lines, report.lines, &LINE_RECORD, 0, "with --explain: every figure on the way"));

GW_READS(const void *, if_explained, gw_rates_made, it->plan.explain ? GW_IT(p, gw_rates_row) : NULL)

/* -- the compound -- */

GW_READS(const gw_material_figure *, value_of, gw_value, gw_material_figure_at(GW_INDEX(p, gw_value)))
GW_READS(const char *, value_name, gw_value, value_of(p)->name)
GW_READS(gw_unit, value_unit, gw_value, value_of(p)->unit)
GW_READS(double, value_shown, gw_value, it->v - value_of(p)->zero)
GW_READS(const char *, value_word, gw_value, value_of(p)->word)

static GW_RECORD(VALUE_RECORD, gw_value,
    GW_SAID("what", value_name, 0, "of the compound"),
    GW_WORKED_OUT_IN("value", value_unit, value_shown, GW_NO_UNIT, "in the unit beside it"),
    GW_SAID("unit", value_word, 0, "of the value"),
    GW_MEMBER("tolerance", PLAIN, gw_value, tolerance, 0, "plus and minus, of the value"),
    GW_WORD("trust", gw_value, trust, GW_TRUST_WORDS, 0, "how far it can be trusted"),
    GW_MEMBER("source", PLAIN, gw_value, source, 0, "who says so"));

GW_READS(const gw_material *, compound, gw_rates_row, gw_rates_material(it->bush))
GW_READS(const char *, compound_name, gw_rates_row, compound(p)->name)
GW_READS(int, values, gw_rates_row, gw_material_figures())

/* NULL, and so left out, where the compound's file does not give it. */
GW_READS(const void *, value_at, gw_rates_row, gw_material_given(compound(p), p->index))

static GW_RECORD(MATERIAL_RECORD, gw_rates_row,
    GW_SAID("name", compound_name, 0, "of the compound"),
    GW_EACH("values", values, value_at, &VALUE_RECORD, GW_ON_LINE, "those that its file gives"));

GW_READS(const void *, material_of, gw_rates_made,
         compound(p) && it->plan.explain ? GW_IT(p, gw_rates_row) : NULL)

/* -- a bush -- */

static const char *const METHODS[] = { "given", "solved", "handbook", "contact", NULL };

static const char *method_of(const gw_place *p)
{
    const gw_rates_row *row = GW_IT(p, gw_rates_row);
    if (row->bush->type == GW_BUSH_BEARING) return METHODS[row->bush->bearing.radial > 0.0 ? 0 : 3];
    if (!gw_rates_material(row->bush)) return METHODS[0];
    return METHODS[row->report.method == GW_METHOD_HANDBOOK ? 2 : 1];
}

static GW_RECORD(NAMED_RECORD, gw_bush,
    GW_MEMBER("name", PLAIN, gw_bush, name, 0, "in the case"),
    GW_MEMBER("label", PLAIN, gw_bush, label, GW_SOMETIMES | GW_NO_CSV, "for people"),
    GW_WORD("type", gw_bush, type, GW_BUSH_TYPE_WORDS, 0, "of the case"));

static GW_RECORD(BUSH_RECORD, gw_rates_row,
    GW_PART_BEHIND(gw_rates_row, bush, &NAMED_RECORD, GW_ALWAYS),
    GW_CHOSEN("method", method_of, METHODS, 0, "how the rates come about"),
    GW_PART_OF(gw_rates_row, own, &SIX_RECORD),
    GW_INSIDE("stop", stop_of, &STOP_RECORD, GW_ON_LINE | GW_NO_CSV, "where the bush meets its stop"),
    GW_INSIDE("void_stop", void_stop_of, &STOP_RECORD, GW_ON_LINE | GW_NO_CSV, "where its voids close, along e1"),
    GW_WORKED_OUT("play_each_side", MM, play, GW_SOMETIMES | GW_NO_CSV, "radially"),
    GW_WORKED_OUT("breakaway", NM, breakaway, GW_SOMETIMES | GW_NO_CSV, "torque below which it does not turn"),
    GW_WORKED_OUT("stiffening", PER_MM2, stiffening, GW_SOMETIMES | GW_NO_CSV, "of the radial rate with the deflection squared"),
    GW_HERE_IF("band", gw_rates_row, has_band, &BAND_RECORD, GW_NO_CSV, "by the tolerance of the modulus"),
    GW_HERE_IF("handbook", gw_rates_row, has_beside, &HANDBOOK_RECORD, 0, "closed forms beside the solution"),
    GW_MEMBER("low", PLAIN, gw_rates_row, report.low, GW_NO_JSON, "of these rates, by the tolerance of the modulus"),
    GW_MEMBER("high", PLAIN, gw_rates_row, report.high, GW_NO_JSON, "likewise"));

static GW_RECORD(HOW_RECORD, gw_rates_row,
    GW_PART_FOUND(if_explained, &EXPLAINED_RECORD, 0),
    GW_INSIDE("material", material_of, &MATERIAL_RECORD, GW_NO_CSV, "with --explain: the compound's values"));

static GW_RECORD(WHOLE_RECORD, gw_rates_row,
    GW_PART_SAME(&BUSH_RECORD),
    GW_INSIDE("dynamic", dynamic_of, &DYNAMIC_RECORD, GW_NO_CSV, "with --frequency-Hz: the complex stiffness"),
    GW_PART_FOUND(if_dynamic, &DYNAMIC_COLUMNS_RECORD, 0),
    GW_PART_SAME(&HOW_RECORD));

static GW_RECORD(ALL, gw_rates_made,
    GW_ROWS("bushes", gw_rates_made, n, row, &WHOLE_RECORD, 0, "of the case, or the one named"));

const gw_result GW_RATES_RESULT = { "rates", &ALL, .rows = "bushes", .caseless = true };
