/* SPDX-License-Identifier: MIT */
/**
 * The frame that every command stands in: the table of commands, the options they share and the
 * exit status. To add a command, write cmd_NAME.c with its gw_command and put its name into the list
 * below; help, usage and the parsing of options follow from that.
 */
#ifndef CLI_COMMAND_H
#define CLI_COMMAND_H

#include "chart/chart.h"
#include "giveway/casefile.h"
#include "giveway/status.h"
#include "giveway/study.h"
#include "record/paper.h"

#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>

/** Exit status of the program. */
enum {
    GW_EXIT_DONE = 0,
    GW_EXIT_INPUT = 1, /**< a case, a material or a name in it is wrong        */
    GW_EXIT_USAGE = 2, /**< the command line is wrong                          */
    GW_EXIT_MODEL = 3, /**< the model cannot carry the load or did not converge */
    GW_EXIT_OUTPUT = 4 /**< a file could not be written, or memory ran out      */
};

/** What an option takes. */
typedef enum gw_option_kind {
    GW_OPTION_FLAG,   /**< nothing                             */
    GW_OPTION_TEXT,   /**< any text, once                      */
    GW_OPTION_LIST,   /**< any text, as often as wanted        */
    GW_OPTION_CHOICE, /**< one of the words in `values`, once  */
    GW_OPTION_NUMBER, /**< a finite number above zero, once    */
    GW_OPTION_SIGNED  /**< any finite number, once             */
} gw_option_kind;

/** Every option of the program, in the order in which help shows them: id, name, kind, values, meaning. */
#define GW_OPTION_LIST_ALL(X)                                                                                \
    X(KIT, "kit", LIST, "NAME", "only this kit; may be repeated")                                            \
    X(LOAD, "load", LIST, "NAME", "only this load; may be repeated")                                         \
    X(CORNER, "corner", CHOICE, "front|rear", "only this corner")                                            \
    X(TYPE, "type", CHOICE, "bonded|unbonded", "a bush from the command line, of this type")                 \
    X(MATERIAL, "material", TEXT, "NAME", "its material")                                                    \
    X(INNER, "inner-mm", NUMBER, "D", "its inner diameter")                                                  \
    X(OUTER, "outer-mm", NUMBER, "D", "its outer diameter")                                                  \
    X(LENGTH, "length-mm", NUMBER, "L", "length of the rubber at the sleeves")                               \
    X(FREQUENCY, "frequency-Hz", NUMBER, "F", "dynamic stiffness at this frequency too")                     \
    X(AMPLITUDE, "amplitude-mm", NUMBER, "A", "amplitude of the dynamic stiffness (0.1)")                    \
    X(FROM, "from-mm", SIGNED, "MM", "lowest travel (-60)")                                                  \
    X(TO, "to-mm", SIGNED, "MM", "highest travel (60)")                                                      \
    X(STEP, "step-mm", NUMBER, "MM", "from one place of travel to the next (5)")                             \
    X(WHEELS, "wheels", CHOICE, "together|opposite|one", "what the other wheel does meanwhile (together)")   \
    X(METHOD, "method", CHOICE, "solved|handbook", "how rates of rubber are calculated (solved)")            \
    X(READINGS, "readings", TEXT, "FILE", "what was read on the ramp")                                       \
    X(CASE, "case", TEXT, "FILE", "write the case made of it here")                                          \
    X(DRAWS, "draws", NUMBER, "N", "cars that are drawn, 100 to 1000000 (1024)")                             \
    X(SEED, "seed", SIGNED, "S", "other draws of the same bands (1)")                                        \
    X(RIDE, "ride", FLAG, "", "harshness and road noise too")                                                \
    X(NO_BANDS, "no-bands", FLAG, "", "without the bands of how sure each figure is")                        \
    X(EXPLAIN, "explain", FLAG, "",                                                                          \
      "every figure with its formula, inputs and source; what is in the model")                              \
    X(MATERIALS, "materials", TEXT, "DIR", "add the materials in DIR, NAME.json each")                       \
    X(FORMAT, "format", CHOICE, "text|json|csv", "what is printed (text)")                                   \
    X(OUT, "out", TEXT, "DIR", "write charts to DIR as well")                                                \
    X(BUSH, "bush", TEXT, "FILE", "write the bush for a case to FILE")                                       \
    X(FRONT, "front", TEXT, "LAYOUT", "front suspension: strut, double_wishbone, five_link")                 \
    X(REAR, "rear", TEXT, "LAYOUT",                                                                          \
      "rear suspension: those, semi_trailing, trailing_arm, twist_beam, live_axle")                          \
    X(MASS, "mass-kg", NUMBER, "KG", "ready to drive, driver aboard")                                        \
    X(FRACTION, "front-mass-fraction", NUMBER, "SHARE", "of the mass on the front wheels")                   \
    X(WHEELBASE, "wheelbase-mm", NUMBER, "MM", "front to rear wheel centre")                                 \
    X(FRONT_TRACK, "front-track-mm", NUMBER, "MM", "middle to middle of the front tyres")                    \
    X(REAR_TRACK, "rear-track-mm", NUMBER, "MM", "middle to middle of the rear tyres")                       \
    X(RADIUS, "wheel-radius-mm", NUMBER, "MM", "floor to wheel centre")                                      \
    X(CG, "cg-height-mm", NUMBER, "MM", "height of the centre of mass")                                      \
    X(BRAKE, "brake-front-fraction", NUMBER, "SHARE", "of the braking in front")                             \
    X(DRIVEN, "driven", CHOICE, "front|rear|all", "driven wheels (front)")                                   \
    X(RACK, "rack", CHOICE, "ahead|behind|none", "the steering rack, of the front axle")                     \
    X(SUBFRAME, "subframe", CHOICE, "front|rear|both|none", "axles with a subframe on rubber bushes")        \
    X(FRONT_BAR, "front-bar-mm", SIGNED, "MM", "diameter of the front anti-roll bar, 0: none")               \
    X(REAR_BAR, "rear-bar-mm", SIGNED, "MM", "diameter of the rear anti-roll bar, 0: none")                  \
    X(TITLE, "title", TEXT, "WORDS", "title of the case")                                                    \
    X(SHEET, "sheet", TEXT, "FILE", "write a sheet to fill in instead, FILE.csv or .html")                   \
    X(SHEET_FROM, "from", TEXT, "FILE.csv", "read a filled sheet back")                                      \
    X(AS_READ, "as-read", FLAG, "", "take what looks like a slip as it is")                                  \
    X(FORMAT_CHARTS, "format-charts", CHOICE, "svg|png|both", "which pictures -o writes (both)")             \
    X(FOR, "for", CHOICE, "customer|workshop", "whom the page is for (customer)")                            \
    X(DATE, "date", TEXT, "YYYY-MM-DD", "the date on the page (the case file's)")                            \
    X(DETAIL, "detail", FLAG, "", "every figure, not only those that matter most")                           \
    X(QUIET, "quiet", FLAG, "", "no warnings and no progress")                                               \
    X(HELP, "help", FLAG, "", "this help")                                                                   \
    X(VERSION, "version", FLAG, "", "the version of giveway")

typedef enum gw_option {
#define GW_AS_ENUM(id, name, kind, values, text) GW_OPT_##id,
    GW_OPTION_LIST_ALL(GW_AS_ENUM)
#undef GW_AS_ENUM
        GW_OPTION_COUNT
} gw_option;

/** The bit of an option in gw_command.options, which says which options a command takes. */
#define GW_TAKES(id) (UINT64_C(1) << GW_OPT_##id)

/** What every command takes. */
#define GW_TAKES_ALWAYS (GW_TAKES(HELP) | GW_TAKES(VERSION))

/** What every command that draws charts takes. */
#define GW_TAKES_CHARTS (GW_TAKES(OUT) | GW_TAKES(FORMAT_CHARTS))

/** What every command that reads a case takes. */
#define GW_TAKES_COMMON (GW_TAKES(MATERIALS) | GW_TAKES(FORMAT) | GW_TAKES(QUIET) | GW_TAKES_ALWAYS)

/** The command line of one run, taken apart. Strings are those of argv. */
typedef struct gw_args {
    const struct gw_command *command;
    const char **words; /**< what is no option, in order */
    int n_words;
    struct gw_given {
        gw_option option;
        const char *value; /**< NULL for a flag */
        double number;     /**< of a number     */
    } * given;             /**< options in the order given */
    int n_given;
} gw_args;

/** What the functions of a command are given. */
typedef struct gw_job {
    const gw_args *args;
    const gw_case *c;           /**< NULL where the command reads none */
    const gw_selection *wanted; /**< kits, loads, corner and bushes worked out; NULL without a case */
    const gw_material_set *materials;
    const struct gw_readings *readings; /**< of --readings; NULL: not given */
} gw_job;

/**
 * A command that shows a result fills in the second half and is run by gw_run_command: what is made is a
 * zeroed block of `size` bytes, which `plan` and `study` fill and `release` empties, whatever came of it.
 */
typedef struct gw_command {
    const char *name;
    const char *args;                /**< as in the usage line, e.g. "CASE [BUSH]"            */
    const char *summary;             /**< one line for the list of commands                   */
    uint64_t options;                /**< GW_TAKES of each                                    */
    int words[2];                    /**< beside the options: the fewest, the most          */
    int (*run)(const gw_args *args); /**< returns the exit status; gw_run_command, or its own  */
    const char *details;             /**< paragraph for help, may be NULL                     */
    const char *out;                 /**< what -o is for in help; NULL: charts                */
    const char *examples[2];         /**< two real command lines                           */

    size_t size;             /**< of what is made                                     */
    const gw_result *result; /**< its rows                                            */
    bool no_case;            /**< the words are no case, and no material is asked for  */
    bool wide;               /**< without --detail the text is wide by nature         */
    gw_status (*plan)(const gw_args *args, void *made, gw_error *err); /**< words alone; may be NULL */
    /** A failure that leaves `err` as it was has been told already. */
    gw_status (*study)(const gw_job *job, void *made, gw_error *err);
    bool (*nothing)(const void *made); /**< there is nothing to show, files alone; may be NULL */
    void (*text)(const gw_case *c, const void *made, gw_paper *paper);
    void (*charts)(const gw_case *c, const void *made, gw_charts *charts);  /**< may be NULL */
    gw_status (*write)(const gw_job *job, const void *made, gw_error *err); /**< other files; may be NULL */
    int (*finish)(const gw_job *job, const void *made,
                  int status); /**< the last word on the exit status; may be NULL */
    void (*release)(void *made);
} gw_command;

/** The table of commands, ended by NULL. */
extern const gw_command *const GW_COMMANDS[];

/** The command of that name; NULL: none. */
const gw_command *gw_command_find(const char *name);

/**
 * Takes the command line after the command's name apart.
 * @retval GW_OK       `out` is filled; free it with gw_args_free.
 * @retval GW_E_USAGE  one line that names the mistake and, where one is near, what was meant.
 * @retval GW_E_NOMEM
 */
gw_status gw_args_parse(const gw_command *command, int argc, char **argv, gw_args *out, gw_error *err);
void gw_args_free(gw_args *args);

bool gw_args_has(const gw_args *args, gw_option option);
int gw_args_count(const gw_args *args, gw_option option);
const char *gw_args_text(const gw_args *args, gw_option option, int index); /**< NULL: not so many    */
double gw_args_number(const gw_args *args, gw_option option);               /**< 0 where not given    */
bool gw_args_is(const gw_args *args, gw_option option, const char *value);  /**< given with that value */

/** Help: to standard output when asked for, to standard error after a mistake. */
void gw_help_program(FILE *to);
void gw_help_command(const gw_command *command, FILE *to);

/** The one place where a status becomes an exit status. */
int gw_exit_of(gw_status status);

typedef struct gw_option_spec {
    const char *name;   /**< without the dashes                                  */
    const char *dashed; /**< with them                                          */
    gw_option_kind kind;
    const char *values; /**< what it takes, as help shows it; choices with '|'  */
    const char *text;
} gw_option_spec;

extern const gw_option_spec GW_OPTIONS[GW_OPTION_COUNT];

/** One line a command, in the order in which help shows them. */
#define GW_COMMAND_LIST(X)                                                                                   \
    X(CHECK)                                                                                                 \
    X(RATES)                                                                                                 \
    X(DEFLECT)                                                                                               \
    X(COMPARE)                                                                                               \
    X(TRAVEL)                                                                                                \
    X(RIDE)                                                                                                  \
    X(ALIGN)                                                                                                 \
    X(MATCH)                                                                                                 \
    X(SPREAD)                                                                                                \
    X(CHOOSE)                                                                                                \
    X(REPORT)                                                                                                \
    X(BENCH)                                                                                                 \
    X(START)

#define GW_AS_DECLARATION(id) extern const gw_command GW_COMMAND_##id;
GW_COMMAND_LIST(GW_AS_DECLARATION)
#undef GW_AS_DECLARATION

#endif
