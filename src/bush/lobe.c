/* SPDX-License-Identifier: MIT */
/*
 * Rubber with two opposite openings, as one eighth in space: 0 <= theta <= 90 degrees from e1,
 * 0 <= z <= the free end. The opening takes up theta < void_angle; rubber below void_floor crosses it.
 *
 * Six loads, told apart by their symmetry (S) or antisymmetry (A) about the planes theta = 0,
 * theta = 90 degrees and z = 0. The eighth is cut in two, each half again, and so on down to single cells
 * (nested dissection: A. George, SIAM J. Numer. Anal. 10 (1973) 345-363). A piece away from a plane does not
 * know what holds there, so it is worked out once for all loads that it cannot tell apart.
 */
#include "bush/front.h"
#include "bush/layer.h"
#include "bush/lobe_cell.h"
#include "bush/lobe_mesh.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { U, V, W };
enum { LOADS = 6, ALONG = 0, ACROSS, AXIAL, TWIST, TILT_1, TILT_2 };

/* Antisymmetric about theta = 0, theta = 90 degrees, z = 0? */
static const bool ANTI[LOADS][3] = {
    [ALONG] = { false, true, false }, [ACROSS] = { true, false, false }, [AXIAL] = { false, false, true },
    [TWIST] = { true, true, false },  [TILT_1] = { true, false, true },  [TILT_2] = { false, true, true },
};

/* Unit motions of the inner sleeve: components U, V, W at (r, theta, z). */
static void sleeve_motion(int load, double r, double theta, double z, double m[3])
{
    double c = cos(theta), s = sin(theta);
    m[U] = m[V] = m[W] = 0.0;
    switch (load) {
    case ALONG:
        m[U] = c, m[V] = -s;
        break;
    case ACROSS:
        m[U] = s, m[V] = c;
        break;
    case AXIAL:
        m[W] = 1.0;
        break;
    case TWIST:
        m[V] = r;
        break;
    case TILT_1:
        m[U] = -z * s, m[V] = -z * c, m[W] = r * s;
        break;
    default:
        m[U] = z * c, m[V] = -z * s, m[W] = -r * c;
        break;
    }
}

/* Cells from `low` to before `high` in r, theta, z. */
typedef struct box {
    int low[3], high[3];
} box;

/* A box as the loads feel it: of[l] says which of the n fronts is load l's. */
typedef struct piece {
    int n, of[LOADS];
    gw_front front[LOADS];
} piece;

static void piece_free(piece *p)
{
    for (int v = 0; v < p->n; v++) gw_front_free(&p->front[v]);
    p->n = 0;
}

/* Loads that differ only at planes which the box does not touch share a front. */
static void tell_apart(const gw_lobe_mesh *s, const box *b, piece *p)
{
    bool touches[3] = { b->low[1] == 0 && s->theta[0] == 0.0, b->high[1] == s->nt, b->high[2] == s->nz };
    *p = (piece){ 0 };
    for (int l = 0; l < LOADS; l++) {
        p->of[l] = -1;
        for (int other = 0; other < l && p->of[l] < 0; other++) {
            bool same = true;
            for (int i = 0; i < 3; i++) same = same && (!touches[i] || ANTI[l][i] == ANTI[other][i]);
            if (same) p->of[l] = p->of[other];
        }
        if (p->of[l] < 0) p->of[l] = p->n++;
    }
}

static int first_load(const piece *p, int version)
{
    int l = 0;
    while (p->of[l] != version) l++;
    return l;
}

/* The degrees of freedom of a cell that are unknowns under a load; returns how many. */
static int unknowns_of(const gw_lobe_mesh *s, const int cell[3], int load, int dof[78], int id[78])
{
    int n = 0;
    for (int a = 0; a < 26; a++) {
        int node[3];
        gw_lobe_node(cell, a, node);
        for (int c = 0; c < 3; c++) {
            if (!gw_lobe_is_free(s, node, c, ANTI[load])) continue;
            dof[n] = 3 * a + c;
            id[n++] = gw_lobe_unknown(s, node, c);
        }
    }
    return n;
}

/* What the inner sleeve moves in a cell under a unit load: every degree of freedom on it that is no unknown.
 */
static void move_sleeve(const gw_lobe_mesh *s, const int cell[3], int load, double motion[78])
{
    memset(motion, 0, 78 * sizeof *motion);
    for (int a = 0; a < 26; a++) {
        int node[3];
        double m[3];
        gw_lobe_node(cell, a, node);
        if (node[0] > 0) continue;
        sleeve_motion(load, s->r[0], s->theta[node[1]], s->t[node[2]] * gw_layer_end(s->layer, s->r[0]), m);
        for (int c = 0; c < 3; c++)
            if (!gw_lobe_is_free(s, node, c, ANTI[load])) motion[3 * a + c] = m[c];
    }
}

/* The loads of a front after its n unknowns: forces on the unknowns, and energy between each two. */
static void add_loads(const gw_element *e, double motion[LOADS][78], const int dof[78], int n,
                      gw_front *front)
{
    for (int l = 0; l < front->n - n; l++) {
        double force[78] = { 0 }, *column = front->k + (size_t)(n + l) * (size_t)front->n;
        for (int i = 0; i < 78; i++)
            for (int j = 0; j < 78; j++) force[i] += e->k[81 * i + j] * motion[l][j];
        for (int c = 0; c < n; c++) front->k[(size_t)c * (size_t)front->n + (size_t)(n + l)] = force[dof[c]];
        for (int other = l; other < front->n - n; other++)
            for (int i = 0; i < 78; i++) column[n + other] += motion[other][i] * force[i];
    }
}

static gw_status cell_front(const gw_lobe_mesh *s, const int cell[3], const gw_element *e, const piece *p,
                            int version, gw_front *front, gw_error *err)
{
    double motion[LOADS][78];
    int dof[78], id[78 + LOADS], loads = 0, n = unknowns_of(s, cell, first_load(p, version), dof, id);
    for (int l = 0; l < LOADS; l++) {
        if (p->of[l] != version) continue;
        move_sleeve(s, cell, l, motion[loads]);
        id[n + loads++] = gw_lobe_unknowns(s) + l;
    }
    gw_status status = gw_front_alloc(front, n + loads, err);
    if (status != GW_OK) return status;
    memcpy(front->id, id, (size_t)front->n * sizeof *id);
    for (int c = 0; c < n; c++)
        for (int r = c; r < n; r++)
            front->k[(size_t)c * (size_t)front->n + (size_t)r] = e->k[81 * dof[c] + dof[r]];
    add_loads(e, motion, dof, n, front);
    return GW_OK;
}

static gw_status cell_piece(const gw_lobe_mesh *s, const int cell[3], piece *p, gw_error *err)
{
    gw_element *e = malloc(sizeof *e);
    gw_status status = GW_OK;
    if (!e) return gw_fail(err, GW_E_NOMEM, "no memory for an element");
    status = gw_lobe_cell_matrix(s, cell, e, err);
    for (int v = 0; v < p->n && status == GW_OK; v++)
        status = cell_front(s, cell, e, p, v, &p->front[v], err);
    free(e);
    return status;
}

/* What becomes of an unknown when the two halves of a box are joined for one version. */
typedef struct joining {
    const gw_lobe_mesh *mesh;
    const box *box;
    const piece *piece;
    int version;
} joining;

static gw_front_role role_of(const void *context, int id)
{
    const joining *j = context;
    int load = id - gw_lobe_unknowns(j->mesh);
    if (load >= 0) return j->piece->of[load] == j->version ? GW_FRONT_KEEP : GW_FRONT_DROP;
    return gw_lobe_is_inside(j->mesh, id, j->box->low, j->box->high) ? GW_FRONT_ELIMINATE : GW_FRONT_KEEP;
}

static gw_status join(const gw_lobe_mesh *s, const box *b, const piece *x, const piece *y, piece *out,
                      gw_error *err)
{
    gw_status status = GW_OK;
    for (int v = 0; v < out->n && status == GW_OK; v++) {
        int load = first_load(out, v);
        joining context = { s, b, out, v };
        status = gw_front_join(&x->front[x->of[load]], &y->front[y->of[load]], role_of, &context,
                               &out->front[v], err);
    }
    return status;
}

/* Cuts a box across its longest direction; false where it is a single cell. */
static bool cut(const box *whole, box *x, box *y)
{
    int way = 0;
    for (int i = 1; i < 3; i++)
        if (whole->high[i] - whole->low[i] >= whole->high[way] - whole->low[way]) way = i;
    *x = *y = *whole;
    x->high[way] = y->low[way] = (whole->low[way] + whole->high[way] + 1) / 2;
    return whole->high[way] - whole->low[way] > 1;
}

/* On failure nothing is left to free. */
static gw_status dissect(const gw_lobe_mesh *s, const box *b, piece *out, gw_error *err)
{
    gw_status status = GW_OK;
    box low, high;
    tell_apart(s, b, out);
    if (!cut(b, &low, &high)) {
        if (gw_lobe_has_cell(s, b->low[0], b->low[1])) status = cell_piece(s, b->low, out, err);
    } else {
        piece x, y = { 0 };
        status = dissect(s, &low, &x, err);
        if (status == GW_OK) status = dissect(s, &high, &y, err);
        if (status == GW_OK) status = join(s, b, &x, &y, out, err);
        piece_free(&x);
        piece_free(&y);
    }
    if (status != GW_OK) piece_free(out);
    return status;
}

/* All is eliminated but the load itself; what remains on the diagonal is its energy. */
static double energy_of(const gw_lobe_mesh *s, const piece *p, int load)
{
    const gw_front *front = &p->front[p->of[load]];
    int at = 0;
    while (front->id[at] != gw_lobe_unknowns(s) + load) at++;
    return front->k[(size_t)at * (size_t)(front->n + 1)];
}

gw_status gw_lobe_rates(const gw_layer *layer, int refine, gw_given_rates *rates, gw_error *err)
{
    double e[LOADS];
    gw_lobe_mesh mesh;
    piece whole;
    gw_status status = gw_lobe_mesh_make(&mesh, layer, refine, err);
    if (status != GW_OK) return status;
    if ((status = dissect(&mesh, &(box){ .high = { mesh.nr, mesh.nt, mesh.nz } }, &whole, err)) != GW_OK)
        goto done;
    for (int l = 0; l < LOADS; l++) e[l] = 8.0 * energy_of(&mesh, &whole, l);
    piece_free(&whole);
    bool bonded = layer->inner == GW_INNER_BONDED;
    *rates = (gw_given_rates){ .radial = { e[ALONG], e[ACROSS] },
                               .axial = bonded ? e[AXIAL] : 0.0,
                               .conical = { e[TILT_1], e[TILT_2] },
                               .torsional = bonded ? e[TWIST] : 0.0 };
done:
    gw_lobe_mesh_free(&mesh);
    return status;
}
