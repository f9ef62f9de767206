/* SPDX-License-Identifier: MIT */
/** What the files of the corner solver share. Everything here is private to src/corner. */
#ifndef GIVEWAY_CORNER_WORKSPACE_H
#define GIVEWAY_CORNER_WORKSPACE_H

#include "corner/spatial.h"
#include "giveway/arena.h"
#include "giveway/corner.h"

enum { GW_MAX_WARNINGS = 16 };

/** A joint made ready: bracket in series, points and axes relative to the datum. */
typedef struct gw_link {
    int a, b;                /**< bodies                                             */
    gw_mat3 frame;           /**< columns e1, e2, e3                                 */
    gw_vec3 at;              /**< design point, relative to the datum [m]            */
    gw_vec3 pa, pb;          /**< material points as fitted, relative to the datum [m] */
    gw_bush_law law;         /**< with the bracket in series                         */
    double rest;             /**< rotation about e3 that is free of torque [rad]     */
    double hand;             /**< 1, or -1 where the frame is left-handed             */
    double shut;             /**< share of the joint without its play in the law, while play is opened [-] */
    bool linear;             /**< translation law is a plain quadratic form          */
    bool curved_turn;        /**< a rotation was measured                            */
    gw_bush_tangent at_rest; /**< for small motions about S0; what was not measured at its rates   */
    bool turns_freely;       /**< no rotational rate at all                          */
} gw_link;

/** A joint at one state: its strain, and the wrench on body b (body a has the negative). */
typedef struct gw_link_state {
    double u[3], theta[3], f[3], m[3];
    gw_wrench wrench;
} gw_link_state;

/** Right sides that are carried along: minus the imbalance, then one border column a wheel. */
enum { GW_MAX_COLUMNS = 1 + GW_WHEELS };

/** The bordered system: one 6 x 6 block per coupled pair of bodies, one extra unknown a wheel. */
typedef struct gw_system {
    int n;                   /**< bodies, chassis counted; unknowns are bodies 1 to n-1 */
    int n_wheels, n_columns; /**< columns: 1 + n_wheels                                 */
    int upright[GW_WHEELS];  /**< bodies that come last                                 */
    short *slot;             /**< [row * n + column] block, -1: zero throughout        */
    int n_blocks;
    gw_block *block;
    double (*rhs)[6 * GW_MAX_COLUMNS]; /**< each body: 6 rows of n_columns                            */
    double border_row[GW_WHEELS][6];   /**< of its upright                                            */
    double border_diag[GW_WHEELS], border_rhs[GW_WHEELS];
    int *order; /**< [n_order] members in the order of elimination                       */
    int n_order;
    int *n_near;            /**< bodies still coupled when a member is eliminated                   */
    unsigned char *near;    /**< [member * n + i] which                                             */
    gw_lu6 *lu;             /**< factors of each member's block                                     */
    double (*coupling)[36]; /**< scratch: K_mm^-1 K_mj, one a neighbour                             */
    double (*step)[6];      /**< solution: the twist of each body                                   */
    double border_step[GW_WHEELS];
} gw_system;

/** Block of (row, column), which are coupled. */
static inline double *gw_block_at(const gw_system *s, int row, int column)
{
    return s->block[s->slot[row * s->n + column]];
}

/** An eliminated matrix, kept for corners that differ little from the one it is of. */
typedef struct gw_kept_system {
    int n, n_blocks;
    gw_block *block;
    gw_lu6 *lu;
    double (*rhs)[6 * GW_MAX_COLUMNS]; /**< the borders' columns, condensed */
    double border_row[GW_WHEELS][6], border_diag[GW_WHEELS];
} gw_kept_system;

/** What belongs to one wheel; places are relative to the datum. */
typedef struct gw_wheel_ws {
    int upright;
    gw_vec3 hub, patch; /**< as they stand: the right wheel's are with y < 0        */
    int spring_body;    /**< body the spring stands on                              */
    gw_vec3 spring_at, spring_to;
    gw_mat3 upright0;     /**< attitude of the upright at S0, in the wheel's own axes  */
    gw_vec3 axis_body;    /**< wheel axis in the upright's design frame, own axes      */
    double static_camber; /**< of this kit                                            */
    gw_corner_setting setting;
    gw_link_state *unit_toe, *unit_camber; /**< f, m of all joints under the unit moments          */
    double reaction_toe[GW_WHEELS], reaction_camber[GW_WHEELS]; /**< rho, at each wheel             */
} gw_wheel_ws;

struct gw_corner_ws {
    gw_arena arena;
    const gw_corner *corner;
    gw_vec3 datum;
    int n_links; /**< joints of the corner, then the holds of free spins */
    gw_link *link;
    int n_wheels;
    gw_wheel_ws wheel[GW_WHEELS];
    gw_system system;
    gw_state reference;     /**< S0                                                */
    gw_state unmoved;       /**< S0 without the parts that move points             */
    gw_kept_system *lent;   /**< the matrix at S0, for corners near this one; NULL: none */
    bool bare;              /**< opened for the wheel's movement alone: no shares   */
    bool once;              /**< one step of Newton's iteration is all: to first order in what differs */
    gw_link_state *strain0; /**< joints at S0                                      */
    gw_link_state *strain;  /**< links where forces were last asked for: scratch   */
    gw_state work, resume;  /**< scratch of the Newton iteration                   */
    int n_warnings;
    gw_error warning[GW_MAX_WARNINGS];
};

/** What one wheel of a state has; the load of the right one in mirrored axes. */
static inline gw_corner_load *gw_load_on(gw_state *state, int wheel)
{
    return wheel == GW_LEFT_WHEEL ? &state->load : &state->right_load;
}
static inline double *gw_spring_force_of(gw_state *state, int wheel)
{
    return wheel == GW_LEFT_WHEEL ? &state->spring_force : &state->right_spring_force;
}
static inline double *gw_spring_length_of(gw_state *state, int wheel)
{
    return wheel == GW_LEFT_WHEEL ? &state->spring_length : &state->right_spring_length;
}

/** A vector, or an axial vector, of the left wheel's axes in those of the wheel, and back: the same thing. */
static inline gw_vec3 gw_mirror(int wheel, gw_vec3 v)
{
    return wheel == GW_LEFT_WHEEL ? v : gw_v3(v.x, -v.y, v.z);
}
static inline gw_vec3 gw_mirror_axial(int wheel, gw_vec3 v)
{
    return wheel == GW_LEFT_WHEEL ? v : gw_v3(-v.x, v.y, -v.z);
}
static inline gw_mat3 gw_mirror_turn(int wheel, const gw_mat3 *r)
{
    gw_mat3 m = *r;
    if (wheel == GW_LEFT_WHEEL) return m;
    m.m[0][1] = -m.m[0][1];
    m.m[1][0] = -m.m[1][0];
    m.m[1][2] = -m.m[1][2];
    m.m[2][1] = -m.m[2][1];
    return m;
}
/** What an error calls it, after its name. */
static inline const char *gw_corner_or_axle(const gw_corner_ws *ws)
{
    return ws->n_wheels == 2 ? "axle" : "corner";
}
/** True for the upright of a wheel. */
static inline bool gw_is_upright(const gw_corner_ws *ws, int body)
{
    return body == GW_UPRIGHT || (ws->n_wheels == 2 && body == ws->wheel[GW_RIGHT_WHEEL].upright);
}

/* link.c: one joint */
static inline bool gw_link_is_on(const gw_link *link, int body)
{
    return link->a == body || link->b == body;
}
void gw_link_strain(const gw_link *link, const gw_pose *pose, gw_link_state *out);
/** The same for what pushes the bodies: where nothing resists a rotation, it is left out with its moment. */
void gw_link_push(const gw_link *link, const gw_pose *pose, gw_link_state *out);
/** Derivative of the wrench on body b with the twist of b and of a. `linear`: about the design position. */
void gw_link_tangent(const gw_link *link, const gw_pose *pose, const gw_link_state *strain, bool linear,
                     gw_block to_b, gw_block to_a);

/* system.c: the structure of the matrix and its elimination; as that of `like`, where the joints are alike */
gw_status gw_system_build(gw_corner_ws *ws, const gw_corner_ws *like, gw_error *err);
/** The same pairs of bodies are joined, in the same order: the matrix has the same structure. */
bool gw_joins_alike(const gw_corner_ws *a, const gw_corner_ws *b);
/** Room for the structure of a matrix of `n` bodies, then for its numbers; false when memory is out. */
bool gw_system_make_structure(gw_system *system, int n, gw_arena *arena);
bool gw_system_make_room(gw_system *system, int n_blocks, gw_arena *arena);
/** The structure of another matrix of as many bodies; memory stays its own. */
void gw_system_structure(gw_system *to, const gw_system *from);
/** False where the matrix is singular. */
bool gw_system_solve(gw_system *system);
/** The same matrix for another imbalance, once it was solved. */
bool gw_system_solve_again(gw_system *system);
/** Every member eliminated: what is left couples the uprights alone. False where a member's block is
 * singular. */
bool gw_system_condense(gw_system *system);
/** The same members for another imbalance, once they were eliminated. */
void gw_system_condense_again(gw_system *system);
/** Copies it into the arena; false: out of memory. */
bool gw_system_keep(const gw_system *system, gw_arena *arena, gw_kept_system *out);
/** Is it of the same bodies and joints? */
bool gw_system_can_borrow(const gw_system *system, const gw_kept_system *kept);
/** In place of the system's own, which is put into `own`, until it is given back; only read. */
void gw_system_borrow(gw_system *system, const gw_kept_system *kept, gw_kept_system *own);
void gw_system_give_back(gw_system *system, const gw_kept_system *own);
/** The members' steps, once those of the uprights and of the borders are known. */
bool gw_system_spread(gw_system *system);

/* assemble.c: imbalance and tangent at a state */
typedef struct gw_imbalance {
    double force;  /**< largest on any body [N]              */
    double moment; /**< largest on any body, about the datum [N m] */
    double border; /**< of the constraint [m]                */
} gw_imbalance;

/** The larger of the two, or NaN where the second is: fmax would hide it. */
static inline double gw_larger(double a, double b)
{
    return b <= a ? a : b;
}
/** The imbalance that the right sides hold; what stands in `out` counts too. */
void gw_measure(const gw_system *system, bool borders, gw_imbalance *out);

/** How near to a balance will do, of a corner or of the whole car. */
typedef struct gw_balance_goal {
    double tolerance, floor; /**< of forces, and what rounding leaves of them [N] */
} gw_balance_goal;
gw_balance_goal gw_balance_goal_make(double largest_load, double floor);
/** Balanced, or as near as rounding lets it after a step of `last_step` [m], [rad]. */
bool gw_balance_is_met(const gw_balance_goal *goal, const gw_imbalance *left, double last_step);

gw_imbalance gw_assemble(gw_corner_ws *ws, const gw_state *state, gw_drive drive, bool linear);
/** The imbalance alone; the matrix, and its border, stay as they were solved last. */
gw_imbalance gw_assemble_forces(gw_corner_ws *ws, const gw_state *state, gw_drive drive);
gw_vec3 gw_point_now(const gw_pose *pose, gw_vec3 point);
/** Forces of joints and springs alone, without any load; what stood there is cleared. */
void gw_assemble_part_forces(gw_corner_ws *ws, const gw_state *state);
/** Their tangents, at the state of the forces last asked for, and borders without columns. */
void gw_assemble_part_tangents(gw_corner_ws *ws, const gw_state *state, gw_drive drive);

/* stability.c: whether a balance can be trusted */
/** Just after the system of this state was solved: no direction in which the bodies would run away. */
bool gw_balance_stands(const gw_corner_ws *ws, const gw_state *state, gw_drive drive);
/** GW_E_NUMERIC where the rounding of the stiffest joints' forces moves the wheel at S0. */
gw_status gw_check_rounding(gw_corner_ws *ws, gw_error *err);

/* motion.c: a movement of all bodies, six numbers each: along x, y, z [m], then the turns times
 * GW_MOTION_LENGTH */
static const double GW_MOTION_LENGTH = 0.3; /**< makes turns comparable with movements [m] */
/** How much of it is the body's, at the middle of its joints. */
double gw_motion_share(const gw_corner_ws *ws, const double *motion, int body);
/** The body that an error is about: what both wheels share, where it takes part, else the upright. */
int gw_motion_mover(const gw_corner_ws *ws, const double *motion);
/** How a body moves there, at the middle of its joints: "moves sideways (y)". */
const char *gw_motion_way(const gw_corner_ws *ws, const double *motion, int body);
/** What stands before its name: an axle's uprights have a side in theirs. */
const char *gw_motion_article(const gw_corner_ws *ws, int body);

/* softest.c: what gives way first */
/** The softest way in which uprights can move at a balance, with the wheels held at their height: how far a
 * newton takes it [m/N]; HUGE_VAL where it runs away, 0 where there is no memory. `motion`: of all bodies. */
double gw_softest_motion(gw_corner_ws *ws, const gw_state *state, double *motion);
/** How many times softer that is at `to` than at `from`, but many where it is very soft and 0 where it is
 * stiff. `motion`: at `to`. */
double gw_softened(gw_corner_ws *ws, const gw_state *from, const gw_state *to, double *motion);
static const double GW_SOFTENED = 1.1; /**< by less, it is not that way that the corner goes [-] */
/** What moves in it, after the message; `axle`: "rear ", where the message is about the whole car, else "".
 */
void gw_add_what_gives(const gw_corner_ws *ws, const double *motion, const char *axle, gw_error *err);
/** After a GW_E_NUMERIC: names the body that gives way first at the last balance, ws->resume, if one did
 * since the state `from`. */
void gw_name_the_softest(gw_corner_ws *ws, const gw_state *from, gw_error *err);

/* freedom.c: mechanisms and harmless spins */
gw_status gw_freedom_settle(gw_corner_ws *ws, gw_error *err);
/** The first half of it: spins of links with two free joints held; looks for nothing else. */
void gw_freedom_hold_links(gw_corner_ws *ws);

/* linear.c: small displacements about the design position */
struct gw_dense;
/** Adds the static rates of all joints and holds to a matrix of six rows a moving body; returns the stiffest
 * [N/m]. */
double gw_linear_stiffness(const gw_corner_ws *ws, struct gw_dense *d);
gw_status gw_linear_shares(gw_corner_ws *ws, gw_error *err);

/* jacobian.c */
/** A left-handed frame is that of a mirrored bush: its rotations count the other way. */
void gw_link_jacobian(const gw_mat3 *frame, gw_vec3 at, double b[6][6]);
double gw_hand(const gw_mat3 *frame); /**< 1, or -1 where it is left-handed */

/* play.c */
bool gw_has_play(const gw_corner_ws *ws);
/** `share` of the law of joints with play is that of the joint without it: 1 shut, 0 as it is. */
void gw_shut_play(gw_corner_ws *ws, double share);
/** From every play shut to none, in steps that take the balance to a share of the way; the last is 0. A step
 * that fails leaves things as they were, and a smaller one is tried. */
typedef gw_status gw_share_step(void *of, double share, gw_error *err);
gw_status gw_open_by_shares(gw_share_step *step, void *of, gw_error *err);
/** From a balance with every play shut, in ws->work, to the one with play; opens it in any case. */
gw_status gw_open_play(gw_corner_ws *ws, gw_drive drive, gw_error *err);

/* report.c */
/** Every joint and its shares, against the strains at S0; travel's shares are in `out` already. */
void gw_share_out(const gw_corner_ws *ws, const gw_state *state, const gw_link_state *strain0,
                  const gw_wheel_ws *wheel, gw_corner_result *out);

/* newton.c, solve.c */
/** Forces come out of differences of positions of about a metre, each rounded, so stiff joints cannot balance
 * better than this: 32 times the rounding of one times the largest rate, of translation or rotation [N]. */
double gw_rounding_floor(const gw_corner_ws *ws);
gw_status gw_newton(gw_corner_ws *ws, gw_state *state, gw_drive drive, bool linear_first, gw_error *err);
/** One step of it from `state`, whatever is left over; GW_E_NUMERIC where the matrix is singular. With the
 * matrix that is lent, where there is one that fits. */
gw_status gw_newton_once(gw_corner_ws *ws, gw_state *state, gw_drive drive, const gw_kept_system *lent);
/** Lengths of the springs where the bodies are, and but for GW_AT_TRAVEL their forces by their law, from
 * those of the state `from`. */
void gw_springs_follow(const gw_corner_ws *ws, gw_state *state, const gw_state *from, gw_drive drive);
/** The largest movement and turn of a step; what stands there counts too. */
typedef struct gw_largest_step {
    double move, turn; /**< [m], [rad] */
} gw_largest_step;
void gw_look_for_largest(const gw_system *system, gw_largest_step *out);
double gw_step_factor(const gw_largest_step *of); /**< bounds it: see newton.c */
/** Newton went from one state to the other as it does where a corner works: few steps, no great turn. */
bool gw_step_is_usual(const gw_corner_ws *ws, const gw_state *from, const gw_state *to);
bool gw_turn_is_usual(const gw_corner_ws *ws, const gw_state *from,
                      const gw_state *to); /**< the second half of it */
/** Along the screw of `s` times a twist about the datum. */
void gw_move_body(gw_pose *pose, const double twist[6], double s);
double gw_spring_length(const gw_corner_ws *ws, const gw_state *state, int wheel);
void gw_state_copy(gw_state *to, const gw_state *from, int n_bodies);
void gw_state_at_design(gw_corner_ws *ws, gw_state *state);
gw_status gw_state_in_arena(gw_corner_ws *ws, gw_state *state);

/** Where gw_fail may write the next warning; NULL, which it allows, once all slots are full. */
gw_error *gw_next_warning(gw_corner_ws *ws);

#endif
