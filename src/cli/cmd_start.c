/* SPDX-License-Identifier: MIT */
/* giveway start: a first case from a few measurements, and the sheet of what to measure. */
#include "cli/command.h"
#include "cli/output.h"
#include "cli/session.h"
#include "format/file.h"
#include "start/case.h"
#include "start/sheet.h"

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#define IN_CAR(member) offsetof(gw_start_car, member)

/** An option that is a number, and the words it is asked with. */
static const struct asked {
    gw_option option;
    size_t usual; /* of a gw_start_figure in gw_start_car */
    const char *words;
} NUMBERS[GW_START_NUMBERS] = {
    [GW_START_MASS] = { GW_OPT_MASS, IN_CAR(mass), "Mass ready to drive, driver aboard, kg" },
    [GW_START_FRONT_FRACTION] = { GW_OPT_FRACTION, IN_CAR(front_fraction),
                                  "Share of it on the front wheels, 0.35 to 0.65" },
    [GW_START_WHEELBASE] = { GW_OPT_WHEELBASE, IN_CAR(wheelbase), "Wheelbase, mm" },
    [GW_START_FRONT_TRACK] = { GW_OPT_FRONT_TRACK, IN_CAR(corner[GW_FRONT].track),
                               "Front track, middle to middle of the tyres, mm" },
    [GW_START_REAR_TRACK] = { GW_OPT_REAR_TRACK, IN_CAR(corner[GW_REAR].track), "Rear track, mm" },
    [GW_START_RADIUS] = { GW_OPT_RADIUS, IN_CAR(corner[GW_FRONT].radius), "Floor to wheel centre, mm" },
    [GW_START_CG_HEIGHT] = { GW_OPT_CG, IN_CAR(cg_height), "Height of the centre of mass, mm" },
    [GW_START_BRAKE_FRACTION] = { GW_OPT_BRAKE, IN_CAR(brake_fraction),
                                  "Share of the braking in front, 0.5 to 0.85" },
};

static const char FRONTS[] = "strut, double_wishbone or five_link";
static const char REARS[] =
    "strut, double_wishbone, five_link, semi_trailing, trailing_arm, twist_beam or live_axle";
static const char *const DRIVEN[] = { "front", "rear", "all" };

static gw_status set_layout(gw_start_wish *wish, gw_axle axle, const char *name, gw_error *err)
{
    const char *side = axle == GW_FRONT ? "front" : "rear";
    wish->layout[axle] = gw_start_find(name, axle);
    if (wish->layout[axle]) return GW_OK;
    if (axle == GW_FRONT && gw_start_find(name, GW_REAR))
        return gw_fail(err, GW_E_USAGE, "--front %s: it cannot steer; in front there is %s", name, FRONTS);
    return gw_fail(err, GW_E_USAGE, "--%s takes %s, not \"%s\"", side, axle == GW_FRONT ? FRONTS : REARS,
                   name);
}

static gw_status set_number(gw_start_wish *wish, int i, double v, const char *name, gw_error *err)
{
    const gw_start_range r = GW_START_RANGES[i];
    if (!(v >= r.low && v <= r.high))
        return gw_fail(err, GW_E_USAGE, "%s takes %g to %g, not %g", name, r.low, r.high, v);
    wish->number[i] = v;
    return GW_OK;
}

static const char *const RACKS[] = { "ahead", "behind", "none" };
static const char *const SUBFRAMES[] = { "front", "rear", "both", "none" };
static const double THINNEST = 8, THICKEST = 40; /* of a bar [mm] */

static int word_among(const char *word, const char *const *words, int n)
{
    int i = 0;
    while (i < n && strcmp(word, words[i]) != 0) i++;
    return i;
}

static void set_subframes(gw_start_wish *wish, const char *word)
{
    int i = word_among(word, SUBFRAMES, 4);
    wish->subframe[GW_FRONT] = i == 0 || i == 2 ? GW_START_YES : GW_START_NO;
    wish->subframe[GW_REAR] = i == 1 || i == 2 ? GW_START_YES : GW_START_NO;
}

static gw_status set_bar(gw_start_wish *wish, int axle, double mm, const char *name, gw_error *err)
{
    if (mm != 0 && !(mm >= THINNEST && mm <= THICKEST))
        return gw_fail(err, GW_E_USAGE, "%s takes 0, or %g to %g, not %g", name, THINNEST, THICKEST, mm);
    wish->bar[axle] = mm > 0 ? mm : -1;
    return GW_OK;
}

/* What the layouts cannot have is not passed over in silence. */
static gw_status check_shared(const gw_start_wish *wish, gw_error *err)
{
    for (int a = 0; a < GW_AXLES; a++) {
        const gw_start_layout *l = wish->layout[a];
        if (wish->subframe[a] == GW_START_YES && l->frameless)
            return gw_fail(err, GW_E_USAGE, "--subframe: a %s is joined to the body: it has none", l->name);
        if (wish->bar[a] > 0 && !l->bar)
            return gw_fail(err, GW_E_USAGE, "--rear-bar-mm: the beam of a %s is its bar: leave it out",
                           l->name);
    }
    return GW_OK;
}

static gw_status wish_shared(const gw_args *args, gw_start_wish *wish, gw_error *err)
{
    static const gw_option BARS[GW_AXLES] = { GW_OPT_FRONT_BAR, GW_OPT_REAR_BAR };
    const char *rack = gw_args_text(args, GW_OPT_RACK, 0), *frames = gw_args_text(args, GW_OPT_SUBFRAME, 0);
    gw_status st = GW_OK;
    if (rack) wish->rack = (gw_start_rack)(GW_START_AHEAD + word_among(rack, RACKS, 2));
    if (frames) set_subframes(wish, frames);
    for (int a = 0; a < GW_AXLES && st == GW_OK; a++)
        if (gw_args_has(args, BARS[a]))
            st = set_bar(wish, a, gw_args_number(args, BARS[a]), GW_OPTIONS[BARS[a]].dashed, err);
    return st == GW_OK ? check_shared(wish, err) : st;
}

static gw_status wish_of(const gw_args *args, gw_start_wish *wish, gw_error *err)
{
    const char *front = gw_args_text(args, GW_OPT_FRONT, 0), *rear = gw_args_text(args, GW_OPT_REAR, 0);
    *wish = (gw_start_wish){ .driven = gw_args_text(args, GW_OPT_DRIVEN, 0),
                             .title = gw_args_text(args, GW_OPT_TITLE, 0) };
    if (!front || !rear)
        return gw_fail(err, GW_E_USAGE, "say what is fitted: --front %s; --rear %s", FRONTS, REARS);
    gw_status st = set_layout(wish, GW_FRONT, front, err);
    if (st == GW_OK) st = set_layout(wish, GW_REAR, rear, err);
    for (int i = 0; i < GW_START_NUMBERS && st == GW_OK; i++)
        if (gw_args_has(args, NUMBERS[i].option))
            st = set_number(wish, i, gw_args_number(args, NUMBERS[i].option),
                            GW_OPTIONS[NUMBERS[i].option].dashed, err);
    if (st == GW_OK) st = wish_shared(args, wish, err);
    if (st == GW_OK && wish->title && strlen(wish->title) > 190)
        st = gw_fail(err, GW_E_USAGE, "--title takes at most 190 bytes");
    return st;
}

/* A line from the terminal without its end; false where there is no more. */
static bool answer(const char *question, const char *usual, char *line, int size)
{
    fprintf(stderr, "%s [%s]: ", question, usual);
    fflush(stderr);
    if (!fgets(line, size, stdin)) return false;
    line[strcspn(line, "\r\n")] = '\0';
    if (!*line) snprintf(line, (size_t)size, "%s", usual);
    return true;
}

static bool ask_layout(gw_start_wish *wish, gw_axle axle)
{
    char line[80], question[120];
    snprintf(question, sizeof question, "%s suspension (%s)", axle == GW_FRONT ? "Front" : "Rear",
             axle == GW_FRONT ? FRONTS : REARS);
    while (answer(question, axle == GW_FRONT ? "strut" : "five_link", line, sizeof line)) {
        gw_error err = { 0 };
        if (set_layout(wish, axle, line, &err) == GW_OK) return true;
        fprintf(stderr, "%s\n", err.msg);
    }
    return false;
}

static bool ask_driven(gw_start_wish *wish)
{
    char line[80];
    while (answer("Driven wheels (front, rear or all)", "front", line, sizeof line))
        for (int i = 0; i < 3; i++)
            if (strcmp(line, DRIVEN[i]) == 0) {
                wish->driven = DRIVEN[i];
                return true;
            }
    return false;
}

static double usual_number(const gw_start_car *car, int i)
{
    return ((const gw_start_figure *)(const void *)((const char *)car + NUMBERS[i].usual))->v;
}

typedef gw_status (*setter)(gw_start_wish *wish, int which, double v, const char *name, gw_error *err);

/* Until there is a number that can be set. */
static bool ask_value(gw_start_wish *wish, const char *question, double usual, setter set, int which)
{
    char line[80], default_text[32], *end;
    snprintf(default_text, sizeof default_text, "%g", usual);
    while (answer(question, default_text, line, sizeof line)) {
        gw_error err = { 0 };
        double v = strtod(line, &end);
        if (end == line || *end)
            fprintf(stderr, "a number, please\n");
        else if (set(wish, which, v, "this", &err) == GW_OK)
            return true;
        else
            fprintf(stderr, "%s\n", err.msg);
    }
    return false;
}

/* The default follows from what was answered before. */
static bool ask_number(gw_start_wish *wish, int i)
{
    gw_start_car car;
    gw_start_make(wish, &car);
    return ask_value(wish, NUMBERS[i].words, usual_number(&car, i), set_number, i);
}

/* One of the words, the first of which is number 0; -1: no more answers. */
static int ask_word(const char *question, const char *usual, const char *const *words, int n)
{
    char line[80];
    while (answer(question, usual, line, sizeof line)) {
        int i = word_among(line, words, n);
        if (i < n) return i;
        fprintf(stderr, "one of the words in brackets, please\n");
    }
    return -1;
}

static bool ask_rack(gw_start_wish *wish)
{
    int i = ask_word("Steering rack (ahead of the axle, behind it, or none: ahead, behind or none)", RACKS[0],
                     RACKS, 3);
    wish->rack = (gw_start_rack)(GW_START_AHEAD + i);
    return i >= 0;
}

static bool ask_subframe(gw_start_wish *wish, int axle)
{
    static const char *const WORDS[] = { "yes", "no" };
    const gw_start_layout *l = wish->layout[axle];
    if (l->frameless) return true;
    int i = ask_word(axle == GW_FRONT ? "Front subframe on rubber bushes (yes or no)"
                                      : "Rear subframe on rubber bushes (yes or no)",
                     WORDS[l->framed ? 0 : 1], WORDS, 2);
    wish->subframe[axle] = i == 0 ? GW_START_YES : GW_START_NO;
    return i >= 0;
}

static bool ask_bar(gw_start_wish *wish, int axle)
{
    gw_start_car car;
    if (!wish->layout[axle]->bar) return true;
    gw_start_make(wish, &car);
    return ask_value(wish,
                     axle == GW_FRONT ? "Front anti-roll bar, diameter in mm, 0 for none"
                                      : "Rear anti-roll bar, diameter in mm, 0 for none",
                     car.corner[axle].bar, set_bar, axle);
}

/* What both wheels of an axle share. */
static bool ask_shared(gw_start_wish *wish)
{
    bool ok = ask_rack(wish);
    for (int a = 0; a < GW_AXLES && ok; a++) ok = ask_subframe(wish, a) && ask_bar(wish, a);
    return ok;
}

static int write_new(const char *path, const gw_buf *text)
{
    gw_error err = { 0 };
    gw_status status = gw_refuse_existing(path, &err);
    if (status == GW_OK) status = gw_file_write_text(path, text, &err);
    return status == GW_OK ? GW_EXIT_DONE : gw_complain("start", &err);
}

static int no_more(void)
{
    fprintf(stderr, "\ngiveway start: the answers ended before the last question: nothing is written\n");
    return GW_EXIT_USAGE;
}

/* One question at a time; return takes the default shown. */
static int talk(gw_session *session)
{
    gw_start_wish wish = { 0 };
    gw_start_car car;
    char path[400];
    gw_buf out = { 0 };
    bool ok = ask_layout(&wish, GW_FRONT) && ask_layout(&wish, GW_REAR) && ask_driven(&wish);
    for (int i = 0; i < GW_START_NUMBERS && ok; i++) ok = ask_number(&wish, i);
    ok = ok && ask_shared(&wish);
    if (!ok || !answer("File for the case", "my-car.json", path, sizeof path)) return no_more();
    gw_start_make(&wish, &car);
    gw_start_case(&car, &session->materials, &out);
    int status = write_new(path, &out);
    gw_buf_free(&out);
    return status;
}

/* What check would refuse is refused here, before anything is printed. */
static int check_made(const char *from, const gw_session *session, const gw_buf *text)
{
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    gw_status st = gw_case_read(from, gw_buf_str(text), text->n, &session->materials, &c, &faults);
    gw_print_faults(&faults, true);
    gw_case_free(&c);
    gw_faults_free(&faults);
    return st == GW_OK ? GW_EXIT_DONE : st == GW_E_NOMEM ? GW_EXIT_OUTPUT : GW_EXIT_INPUT;
}

static bool ends_in(const char *path, const char *ending)
{
    size_t n = strlen(path), m = strlen(ending);
    return n >= m && strcmp(path + n - m, ending) == 0;
}

/* The car with what a filled sheet says, if there is one. */
static int fill(const gw_args *args, gw_session *session, const char *from, gw_start_car *car,
                gw_start_filled *rows)
{
    gw_status st =
        from ? gw_start_read(from, gw_args_has(args, GW_OPT_AS_READ), car, rows, &session->faults) : GW_OK;
    gw_print_faults(&session->faults, gw_args_has(args, GW_OPT_QUIET));
    if (st == GW_OK) return GW_EXIT_DONE;
    return session->faults.out_of_memory ? GW_EXIT_OUTPUT : GW_EXIT_INPUT;
}

static int write_sheet(const char *sheet, const gw_start_car *assumed, gw_start_filled *rows,
                       const gw_start_car *car)
{
    gw_buf out = { 0 };
    if (ends_in(sheet, ".html"))
        gw_start_page(car, &out);
    else
        gw_start_sheet(assumed, rows, &out);
    int status = write_new(sheet, &out);
    gw_buf_free(&out);
    return status;
}

static int print_case(gw_session *session, const char *from, const gw_start_car *car)
{
    gw_buf out = { 0 };
    gw_start_case(car, &session->materials, &out);
    int status = from ? check_made(from, session, &out) : GW_EXIT_DONE;
    if (status == GW_EXIT_DONE) status = gw_emit(&out);
    gw_buf_free(&out);
    return status;
}

static int print(const gw_args *args, gw_session *session, const gw_start_wish *wish)
{
    const char *from = gw_args_text(args, GW_OPT_SHEET_FROM, 0), *sheet = gw_args_text(args, GW_OPT_SHEET, 0);
    gw_start_car car, assumed;
    gw_start_filled rows = { 0 };
    gw_start_make(wish, &car);
    assumed = car;
    int status = fill(args, session, from, &car, sheet ? &rows : NULL);
    if (status == GW_EXIT_DONE)
        status = sheet ? write_sheet(sheet, &assumed, &rows, &car) : print_case(session, from, &car);
    gw_arena_free(&rows.arena);
    return status;
}

static int run(const gw_args *args)
{
    gw_session session;
    gw_start_wish wish;
    gw_error err = { 0 };
    bool bare = args->n_given == 0;
    if (bare && !isatty(STDIN_FILENO)) {
        fprintf(stderr,
                "giveway start: without a terminal to ask at, say what is fitted: --front %s; --rear %s\n",
                FRONTS, REARS);
        return GW_EXIT_USAGE;
    }
    if (!bare && wish_of(args, &wish, &err) != GW_OK) return gw_complain("start", &err);
    int status = gw_session_open(args, NULL, &session);
    if (status == GW_EXIT_DONE) status = bare ? talk(&session) : print(args, &session, &wish);
    gw_session_close(&session);
    return status;
}

const gw_command GW_COMMAND_START = {
    .name = "start",
    .args = "",
    .summary = "a first case from a few figures, and a sheet of what to measure",
    .options = GW_TAKES(FRONT) | GW_TAKES(REAR) | GW_TAKES(MASS) | GW_TAKES(FRACTION) | GW_TAKES(WHEELBASE) |
               GW_TAKES(FRONT_TRACK) | GW_TAKES(REAR_TRACK) | GW_TAKES(RADIUS) | GW_TAKES(CG) |
               GW_TAKES(BRAKE) | GW_TAKES(RACK) | GW_TAKES(SUBFRAME) | GW_TAKES(FRONT_BAR) |
               GW_TAKES(REAR_BAR) | GW_TAKES(DRIVEN) | GW_TAKES(TITLE) | GW_TAKES(SHEET) |
               GW_TAKES(SHEET_FROM) | GW_TAKES(AS_READ) | GW_TAKES(MATERIALS) | GW_TAKES(QUIET) |
               GW_TAKES_ALWAYS,
    .words = { 0, 0 },
    .run = run,
    .details =
        "Prints a case of usual proportions around what is given, free of faults and ready for every "
        "command; each figure that was not measured is assumed and carries its band. In front strut, "
        "double_wishbone or five_link; behind those and semi_trailing, trailing_arm, twist_beam or "
        "live_axle. What both wheels share is in it as usual for the layout: rack, subframe, anti-roll bar "
        "with its drop links; --rack, --subframe, --front-bar-mm and --rear-bar-mm say otherwise. Without "
        "options it asks, one question at a time. --sheet writes what to measure, --from reads the filled "
        "sheet back; both together write it again as it is filled.",
    .examples = { "giveway start --front strut --rear five_link --rack behind --subframe both --front-bar-mm "
                  "22",
                  "giveway start --front strut --rear semi_trailing --sheet ramp.csv" },
};
