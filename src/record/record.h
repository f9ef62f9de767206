/* SPDX-License-Identifier: MIT */
/**
 * A figure is one row of data. A record is a list of rows that tell what a struct of a study is shown as: the
 * key of each figure, its unit, where it stands or how it is worked out, and what it means. JSON, CSV, text,
 * charts, the schema and the manual of keys are read from the rows; nobody writes a figure a second time.
 *
 *     static GW_RECORD(POINT_RECORD, gw_travel_point,
 *         GW_MEMBER("toe_change", DEG, gw_travel_point, toe_change, 0, "since standing still; toe-in
 * positive"), GW_WORKED_OUT("brake_angle", DEG, brake_angle, 0, "slope of the patch's path; forward
 * positive"));
 *
 * A row's key has no unit: the unit ends it, so that name and factor cannot differ. Functions of rows return
 * SI.
 */
#ifndef RECORD_RECORD_H
#define RECORD_RECORD_H

#include "giveway/case.h"
#include "giveway/names.h"
#include "record/unit.h"

#include <stdbool.h>
#include <stddef.h>

struct gw_record;

/** A struct where it stands: in `up`, as element `index` of a list there (0 outside lists). */
typedef struct gw_place {
    const gw_case *c;
    const struct gw_place *up;
    const struct gw_record *record;
    const void *it;
    int index;
    int which; /**< for a function that serves several rows: which of them asks */
} gw_place;

typedef enum gw_kind {
    GW_NUMBER,
    GW_WHOLE,
    GW_FLAG,
    GW_PAIR,    /**< two numbers, e1 and e2                                                    */
    GW_THREE,   /**< x, y, z; with GW_BUSH_AXES e1, e2, e3                                     */
    GW_NUMBERS, /**< as many as there are                                                      */
    GW_BAND,    /**< six numbers: nominal, mean, sd, low, median, high                         */
    GW_FITTED,  /**< two numbers: value, and within what it is known; CSV: two columns         */
    GW_POINTS,  /**< points of a curve, two numbers each; the row's unit is that of the first  */
    GW_TEXT,
    GW_KIT_NAME,   /**< of an index into the kits of the case                                     */
    GW_LOAD_NAME,  /**< of an index into the loads; -1: none                                      */
    GW_JOINT_NAME, /**< of an index into the joints of a corner                                  */
    GW_ONE_OF,     /**< an enumeration and its words                                              */
    GW_LINES,      /**< a list of texts                                                           */
    GW_NAMED,      /**< texts by names that the case decides: an object                           */
    GW_OBJECT,     /**< a record inside                                                           */
    GW_PART,       /**< the members of a record in this one's place                               */
    GW_LIST        /**< records, one an element                                                   */
} gw_kind;

enum {
    GW_NO_JSON = 1 << 0,
    GW_NO_CSV = 1 << 1,
    GW_NO_UNIT = 1 << 2,     /**< the key does not tell the unit (another key above does)          */
    GW_NO_PREFIX = 1 << 3,   /**< CSV: the key of the object does not stand before those in it     */
    GW_ON_LINE = 1 << 4,     /**< JSON: the object, or each element, on one line                   */
    GW_AS_ASKED = 1 << 5,    /**< six decimals: whole millimetres stay whole on their way          */
    GW_MAY_LACK = 1 << 6,    /**< null where it is not known                                       */
    GW_SOMETIMES = 1 << 7,   /**< the key is left out where it is not known                        */
    GW_BUSH_AXES = 1 << 8,   /**< components e1, e2, e3                                            */
    GW_AS_MINUTES = 1 << 12, /**< an angle as a text in degrees and minutes, its key without unit     */
    GW_ALWAYS = 1 << 13,     /**< set by GW_PRESENT: what the function finds is never absent           */
    GW_MINUS_PLUS = 1 << 14, /**< CSV: components minus, plus                                     */
    GW_LOW_HIGH = 1 << 17,   /**< CSV: components low, high                                        */
    GW_ONLY_IF = 1 << 15,    /**< set by GW_PART_IF and the like: there where a bool is set          */
    GW_BY_POINTER = 1 << 16, /**< set by GW_BEHIND and the like: the struct points to what is inside */
    GW_WHERE = 1 << 18,      /**< set by GW_MEMBER_IF: known where a bool is set                   */
    GW_INLINE = 1 << 11      /**< set by GW_ARRAY: the elements stand in the struct itself         */
};

typedef struct gw_field {
    const char *key; /**< without the unit */
    gw_kind kind;
    gw_unit unit;
    int flags;
    const char *type;  /**< of the struct that holds the member, the nearest at the place or above it, the
                            case (gw_case) above all; NULL: worked out                       */
    size_t at;         /**< of a member; of a list: of its count (an int); of GW_ONLY_IF: of the bool */
    size_t list;       /**< of a list: of the pointer to its elements                        */
    size_t size;       /**< of an element, of what a bool tells to be there                  */
    const char *other; /**< of the struct that tells which element of `list`, or whose axle `list` is */
    double constant;   /**< in SI, where nothing else is read; of a list: how many it always has */
    int which;         /**< what the place of a function says of the row that asks          */
    double (*number)(const gw_place *);        /**< worked out, in SI                          */
    const char *(*text)(const gw_place *);     /**< NULL: none                                 */
    const char *(*name)(const gw_place *);     /**< of GW_NAMED: the key of an element         */
    void (*fill)(const gw_place *, double *x); /**< several numbers worked out, in SI           */
    gw_unit (*unit_of)(const gw_place *);      /**< where it differs from place to place       */
    int (*count)(const gw_place *);            /**< elements of a list                         */
    const void *(*enter)(
        const gw_place *); /**< the struct inside; NULL: absent. For an element of a list the
                                place is that of the element, with its index and without `it` */
    const char *const *words;
    const struct gw_record *record; /**< of what is inside */
    const char *doc;
} gw_field;

typedef struct gw_record {
    const char *type; /**< name of the struct */
    const gw_field *field;
    int n;
} gw_record;

struct gw_buf;

/** What a command prints: `record` describes the struct that its study fills. */
typedef struct gw_result {
    const char *command;
    const gw_record *record;
    /** CSV: the list with a row each, as "results.points"; what stands above is in every row. */
    const char *rows;
    /** CSV that no walk writes; NULL: one does. */
    void (*csv)(const gw_case *c, const void *made, struct gw_buf *out);
    bool caseless; /**< may be of no case: the key "case" is left out then */
} gw_result;

/** A record with its rows, static or not: a struct's type, and what is shown of it. */
#define GW_RECORD(name, struct_type, ...)                                                                    \
    const gw_record name = { #struct_type, (const gw_field[]){ __VA_ARGS__ },                                \
                             (int)(sizeof((const gw_field[]){ __VA_ARGS__ }) / sizeof(gw_field)) }

/* The member of a type, for _Generic and sizeof alone. */
#define GW_MEMBER_OF(struct_type, member) (((struct_type *)0)->member)

#define GW_KIND_OF(m)                                                                                        \
    _Generic((m), double: GW_NUMBER, int: GW_WHOLE, bool: GW_FLAG, const char *: GW_TEXT, char *: GW_TEXT,   \
             gw_vec3: GW_THREE, double *: sizeof(m) == 2 * sizeof(double) ? GW_PAIR : GW_THREE)

/* A text that stands in the struct itself, not behind a pointer. */
#define GW_TEXT_IN(m)                                                                                        \
    (GW_KIND_OF(m) == GW_TEXT ? _Generic(&(m), char ** : 0, const char ** : 0, default : GW_INLINE) : 0)

/* clang-format off */
/** A plain member; its type tells the kind (double, int, bool, text, vector, double[2], double[3]). */
#define GW_MEMBER(name, u, struct_type, member, f, what) \
    { .key = name, .kind = GW_KIND_OF(GW_MEMBER_OF(struct_type, member)), .unit = GW_UNIT_##u, \
      .flags = (f) | GW_TEXT_IN(GW_MEMBER_OF(struct_type, member)), .type = #struct_type, .at = offsetof(struct_type, member), .doc = what }
/** A number that is known where a bool is set, of the same struct or of another. */
#define GW_MEMBER_IF(name, u, set_type, set, struct_type, member, f, what) \
    { .key = name, .kind = GW_NUMBER, .unit = GW_UNIT_##u, .flags = (f) | GW_WHERE, .type = #struct_type, \
      .at = offsetof(struct_type, member), .other = #set_type, .list = offsetof(set_type, set), .doc = what }
/** A figure with its band: a member of six numbers, nominal, mean, sd, low, median, high. */
#define GW_BANDED(name, u, struct_type, member, f, what) \
    { .key = name, .kind = GW_BAND, .unit = GW_UNIT_##u, .flags = f, .type = #struct_type, \
      .at = offsetof(struct_type, member), .doc = what }
/** The same in a unit that a function tells. */
#define GW_MEMBER_IN(name, which_unit, struct_type, member, f, what) \
    { .key = name, .kind = GW_KIND_OF(GW_MEMBER_OF(struct_type, member)), .unit_of = which_unit, .flags = f, \
      .type = #struct_type, .at = offsetof(struct_type, member), .doc = what }
/** A number of an array, or behind a pointer: that of the index at which `index_type` stands in its list. */
#define GW_ENTRY(name, u, struct_type, array, index_type, f, what) \
    { .key = name, .kind = GW_NUMBER, .unit = GW_UNIT_##u, .type = #struct_type, .list = offsetof(struct_type, array), \
      .flags = (f) | _Generic(&GW_MEMBER_OF(struct_type, array), double **: 0, default: GW_INLINE), \
      .other = #index_type, .doc = what }
#define GW_ENTRY_IN(name, which_unit, struct_type, array, index_type, f, what) \
    { .key = name, .kind = GW_NUMBER, .unit_of = which_unit, .type = #struct_type, .list = offsetof(struct_type, array), \
      .flags = (f) | _Generic(&GW_MEMBER_OF(struct_type, array), double **: 0, default: GW_INLINE), \
      .other = #index_type, .doc = what }
/** The same number wherever it stands, in SI. */
#define GW_CONSTANT(name, u, value, f, what) \
    { .key = name, .kind = GW_NUMBER, .unit = GW_UNIT_##u, .flags = f, .constant = value, .doc = what }
/** Worked out from the place: a number in SI, a whole number, a flag (0 or 1), a text. */
#define GW_WORKED_OUT(name, u, function, f, what) \
    { .key = name, .kind = GW_NUMBER, .unit = GW_UNIT_##u, .flags = f, .number = function, .doc = what }
/** By a function that serves several rows: GW_WHICH of its place is the number that each gives. */
#define GW_WORKED_OUT_OF(name, u, function, of, f, what) \
    { .key = name, .kind = GW_NUMBER, .unit = GW_UNIT_##u, .flags = f, .number = function, .which = of, .doc = what }
#define GW_FILLED_OF(name, u, what_kind, function, of, f, what) \
    { .key = name, .kind = what_kind, .unit = GW_UNIT_##u, .flags = f, .fill = function, .which = of, .doc = what }
#define GW_INSIDE_OF(name, function, of, inner, f, what) \
    { .key = name, .kind = GW_OBJECT, .flags = f, .enter = function, .which = of, .record = inner, .doc = what }
#define GW_WORKED_OUT_IN(name, which_unit, function, f, what) \
    { .key = name, .kind = GW_NUMBER, .unit_of = which_unit, .flags = f, .number = function, .doc = what }
/** A pair, three numbers or a band worked out. */
#define GW_FILLED(name, u, what_kind, function, f, what) \
    { .key = name, .kind = what_kind, .unit = GW_UNIT_##u, .flags = f, .fill = function, .doc = what }
/** Points of a curve: how many, and a function that fills one, whose place has its index. */
#define GW_CURVE(name, which_unit, how_many, function, f, what) \
    { .key = name, .kind = GW_POINTS, .unit_of = which_unit, .flags = (f) | GW_NO_CSV, .count = how_many, \
      .fill = function, .doc = what }
#define GW_COUNTED(name, function, f, what) \
    { .key = name, .kind = GW_WHOLE, .flags = f, .number = function, .doc = what }
#define GW_ASKED(name, function, f, what) { .key = name, .kind = GW_FLAG, .flags = f, .number = function, .doc = what }
#define GW_ASKED_OF(name, function, of, f, what) \
    { .key = name, .kind = GW_FLAG, .flags = f, .number = function, .which = of, .doc = what }
#define GW_SAID(name, function, f, what) { .key = name, .kind = GW_TEXT, .flags = f, .text = function, .doc = what }
/** A member that is an enumeration: its word, from an array in the order of the values, ended by NULL. */
#define GW_WORD(name, struct_type, member, list_of_words, f, what) \
    { .key = name, .kind = GW_ONE_OF, .flags = f, .type = #struct_type, .at = offsetof(struct_type, member), \
      .words = list_of_words, .doc = what }
/** One of some words, found by a function (NULL: none). */
#define GW_CHOSEN(name, function, list_of_words, f, what) \
    { .key = name, .kind = GW_ONE_OF, .flags = f, .text = function, .words = list_of_words, .doc = what }
/** Members that are indices into the case. */
#define GW_KIT(name, struct_type, member, f, what) \
    { .key = name, .kind = GW_KIT_NAME, .flags = f, .type = #struct_type, .at = offsetof(struct_type, member), .doc = what }
#define GW_LOADED(name, struct_type, member, f, what) \
    { .key = name, .kind = GW_LOAD_NAME, .flags = f, .type = #struct_type, .at = offsetof(struct_type, member), .doc = what }
/** The name of a joint: a member is its index, and the member `axle` of another struct whose corner it is of. */
#define GW_JOINT(name, struct_type, member, axle_type, f, what) \
    { .key = name, .kind = GW_JOINT_NAME, .flags = f, .type = #struct_type, .at = offsetof(struct_type, member), \
      .other = #axle_type, .list = offsetof(axle_type, axle), .doc = what }
/** A list of texts, or of numbers: a count and a pointer. */
#define GW_TEXTS(name, struct_type, n_member, pointer, f, what) \
    { .key = name, .kind = GW_LINES, .flags = f, .type = #struct_type, .at = offsetof(struct_type, n_member), \
      .list = offsetof(struct_type, pointer), .doc = what }
#define GW_SAYINGS(name, how_many, function, f, what) \
    { .key = name, .kind = GW_LINES, .flags = f, .count = how_many, .text = function, .doc = what }
#define GW_SAYINGS_OF(name, how_many, function, of, f, what) \
    { .key = name, .kind = GW_LINES, .flags = f, .count = how_many, .text = function, .which = of, .doc = what }
#define GW_TEXTS_BY_NAME(key_of_all, how_many, name_function, function, f, what) \
    { .key = key_of_all, .kind = GW_NAMED, .flags = f, .count = how_many, .name = name_function, .text = function, \
      .doc = what }
#define GW_SERIES(name, u, struct_type, n_member, pointer, f, what) \
    { .key = name, .kind = GW_NUMBERS, .unit = GW_UNIT_##u, .flags = f, .type = #struct_type, \
      .at = offsetof(struct_type, n_member), .list = offsetof(struct_type, pointer), .doc = what }
/** A record inside: a struct member; what a function finds (NULL: absent). */
#define GW_WITHIN(name, struct_type, member, inner, f, what) \
    { .key = name, .kind = GW_OBJECT, .flags = f, .type = #struct_type, .at = offsetof(struct_type, member), \
      .record = inner, .doc = what }
#define GW_INSIDE(name, function, inner, f, what) \
    { .key = name, .kind = GW_OBJECT, .flags = f, .enter = function, .record = inner, .doc = what }
#define GW_PRESENT(name, function, inner, f, what) \
    { .key = name, .kind = GW_OBJECT, .flags = (f) | GW_ALWAYS, .enter = function, .record = inner, .doc = what }
/** More of the same struct as an object; where a bool of a struct is set; a member of it where that is set. */
#define GW_HERE(name, inner, f, what) { .key = name, .kind = GW_OBJECT, .flags = f, .record = inner, .doc = what }
#define GW_HERE_IF(name, struct_type, set, inner, f, what) \
    { .key = name, .kind = GW_OBJECT, .flags = (f) | GW_ONLY_IF, .type = #struct_type, \
      .at = offsetof(struct_type, set), .record = inner, .doc = what }
#define GW_WITHIN_IF(name, struct_type, set, member, inner, f, what) \
    { .key = name, .kind = GW_OBJECT, .flags = (f) | GW_ONLY_IF, .type = #struct_type, \
      .at = offsetof(struct_type, set), .list = offsetof(struct_type, member), \
      .size = sizeof GW_MEMBER_OF(struct_type, member), .record = inner, .doc = what }
/** What a struct points to; NULL: absent. */
#define GW_BEHIND(name, struct_type, pointer, inner, f, what) \
    { .key = name, .kind = GW_OBJECT, .flags = (f) | GW_BY_POINTER, .type = #struct_type, \
      .at = offsetof(struct_type, pointer), .record = inner, .doc = what }
#define GW_PART_BEHIND(struct_type, pointer, inner, f) \
    { .kind = GW_PART, .flags = (f) | GW_BY_POINTER, .type = #struct_type, .at = offsetof(struct_type, pointer), \
      .record = inner }
/** The rows of another record here, about the same struct, where a bool is set. */
#define GW_PART_IF(struct_type, set, inner) \
    { .kind = GW_PART, .flags = GW_ONLY_IF, .type = #struct_type, .at = offsetof(struct_type, set), .record = inner }
/** The rows of another record here: of a struct member; of the same struct; of what a function finds. */
#define GW_PART_OF(struct_type, member, inner) \
    { .kind = GW_PART, .type = #struct_type, .at = offsetof(struct_type, member), .record = inner }
#define GW_PART_SAME(inner) { .kind = GW_PART, .record = inner }
#define GW_PART_FOUND(function, inner, f) { .kind = GW_PART, .flags = f, .enter = function, .record = inner }
/** A list of records: a count and a pointer; a count and an array; what functions find. */
#define GW_ROWS(name, struct_type, n_member, pointer, inner, f, what) \
    { .key = name, .kind = GW_LIST, .flags = f, .type = #struct_type, .at = offsetof(struct_type, n_member), \
      .list = offsetof(struct_type, pointer), .size = sizeof *GW_MEMBER_OF(struct_type, pointer), .record = inner, \
      .doc = what }
#define GW_ARRAY(name, struct_type, n_member, array, inner, f, what) \
    { .key = name, .kind = GW_LIST, .flags = (f) | GW_INLINE, .type = #struct_type, \
      .at = offsetof(struct_type, n_member), .list = offsetof(struct_type, array), \
      .size = sizeof *GW_MEMBER_OF(struct_type, array), .record = inner, .doc = what }
/** A list whose figures stand in arrays of the struct itself (GW_ENTRY), as many as it counts. */
#define GW_ALONG(name, struct_type, n_member, inner, f, what) \
    { .key = name, .kind = GW_LIST, .flags = (f) | GW_INLINE, .type = #struct_type, \
      .at = offsetof(struct_type, n_member), .record = inner, .doc = what }
#define GW_EACH(name, how_many, function, inner, f, what) \
    { .key = name, .kind = GW_LIST, .flags = f, .count = how_many, .enter = function, .record = inner, .doc = what }
/** The same of a list that always has as many. */
#define GW_EVERY(name, how_many, function, inner, f, what) \
    { .key = name, .kind = GW_LIST, .flags = f, .constant = how_many, .enter = function, .record = inner, .doc = what }
#define GW_ALL_SAYINGS(name, how_many, function, f, what) \
    { .key = name, .kind = GW_LINES, .flags = f, .constant = how_many, .text = function, .doc = what }
/* clang-format on */

/** The nearest struct of a type at this place or above it, the case above all; there must be one. */
#define GW_IT(place, struct_type) ((const struct_type *)gw_place_struct(place, #struct_type))
/** Which of the rows that a function serves asks. */
#define GW_WHICH(place) ((place)->which)
/** Which element of its list it is. */
#define GW_INDEX(place, struct_type) (gw_place_find(place, #struct_type)->index)

const gw_place *gw_place_find(const gw_place *place, const char *type);
const void *gw_place_struct(const gw_place *place, const char *type);

/**
 * The function of a row in one line: its name, and what it returns of `it`, the nearest struct of a type, or
 * of its place `p`: GW_READS(double, margin, gw_align_tilt, it->limit - it->after)
 */
#define GW_READS(returned, name, struct_type, what)                                                          \
    static returned name(const gw_place *p)                                                                  \
    {                                                                                                        \
        const struct_type *it = GW_IT(p, struct_type);                                                       \
        (void)it;                                                                                            \
        return (what);                                                                                       \
    }

/** The place of a whole result. */
gw_place gw_place_top(const gw_result *result, const gw_case *c, const void *made);

enum { GW_COMPONENTS = 6 };

/** What a row says at a place, in SI. Numbers in `x`; a text, a word or a name in `text` (NULL: none). */
typedef struct gw_shown {
    gw_kind kind;
    gw_unit unit;
    int n; /**< numbers; 0: a text */
    double x[GW_COMPONENTS];
    const char *text;
} gw_shown;

/** Not for objects, parts and lists. */
gw_shown gw_field_read(const gw_field *field, const gw_place *place);

/** Nothing is known there: no text, or no finite number. */
bool gw_shown_lacks(const gw_shown *value);

/** A number as it is shown: in the unit, and as it was asked for where the row says so. */
double gw_shown_out(const gw_field *field, const gw_shown *value, int component);

/** The whole key: name and unit. */
enum { GW_KEY_MAX = 96 };
const char *gw_field_key(const gw_field *field, gw_unit unit, char key[GW_KEY_MAX]);

/** The end of a key for a component: "", "_x", "_e1", "_low" ...; and the name alone. */
const char *gw_component_name(const gw_field *field, int component);

/** Whether what is inside may be absent: found, behind a pointer, or told by a bool. */
bool gw_field_may_be_absent(const gw_field *field);

/** Goes into an object or a part; false where it is absent. */
bool gw_place_enter(const gw_field *field, const gw_place *up, gw_place *out);
int gw_place_count(const gw_field *field, const gw_place *up);

/** Goes to an element of a list; false where there is nothing. */
bool gw_place_element(const gw_field *field, const gw_place *up, int index, gw_place *out);

/** A point of GW_POINTS as it is shown. */
void gw_point_out(const gw_field *field, const gw_place *place, int index, double point[2]);

/** An element of a GW_NUMBERS, in SI; of GW_LINES and GW_NAMED. */
double gw_series_at(const gw_field *field, const gw_place *place, int index);
const char *gw_line_at(const gw_field *field, const gw_place *place, int index);

/** The key of an element of GW_NAMED; its text is gw_line_at. */
const char *gw_name_at(const gw_field *field, const gw_place *place, int index);

enum { GW_DEEPEST = 8 };

/** A row found by its dotted key ("clamped.wheel_rate", "wheel_centre.x"), with the places on the way. */
typedef struct gw_found_row {
    const gw_field *field;
    int component; /**< -1: all of it */
    bool absent;   /**< an object on the way is not there */
    int depth;
    gw_place at[GW_DEEPEST]; /**< its place is at[depth - 1]; do not copy */
} gw_found_row;

/** Asserts that there is such a key: keys are constants of the program. */
void gw_find(const gw_place *place, const char *key, gw_found_row *out);

/** The figure in SI; NAN where it is absent or not known. `unit` may be NULL. */
double gw_number_at(const gw_place *place, const char *key, gw_unit *unit);

/** The record of the list or object that a dotted key names. */
const gw_record *gw_record_of(const gw_place *place, const char *key);

/** The row of a place by its key, not among its parts: a list, an object. */
const gw_field *gw_row_of(const gw_place *place, const char *key);
const gw_field *gw_row_if(const gw_place *place, const char *key); /**< NULL: there is none */

#endif
