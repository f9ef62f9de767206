/* SPDX-License-Identifier: MIT */
/* Which sliders a corner has, where they stand in its model, and the dashpots that they are taken for. */
#include "ride/slider.h"

#include "giveway/corner_friction.h"
#include "giveway/units.h"

#include <math.h>
#include <string.h>

static double winds_up(const gw_ride_model *model, const gw_friction_part *part)
{
    return part->joint < 0 ? model->corner->damper.top_mount : model->fit[part->joint].law.slider.winds_up;
}

static void add_slider(gw_ride_model *model, const gw_friction_part *part)
{
    gw_ride_slider *slider = &model->sliders[model->n_sliders++];
    *slider = (gw_ride_slider){ .joint = part->joint,
                                .strength = part->strength,
                                .way = part->way,
                                .winds_up = winds_up(model, part),
                                .element = -1 };
    memcpy(slider->turn, part->turn, sizeof slider->turn);
}

static void add_damper(gw_ride_model *model, const gw_friction_part *part, int wheel)
{
    gw_friction_part own = *part;
    own.turn[0] = part->turn[wheel];
    own.way = fabs(own.turn[0]);
    add_slider(model, &own);
    model->sliders[model->n_sliders - 1].wheel = wheel;
}

gw_status gw_sliders_find(gw_ride_model *model, const gw_corner_ws *ws, gw_arena *arena, gw_error *err)
{
    gw_friction friction;
    gw_status st = gw_corner_friction(ws, &friction, err);
    if (st != GW_OK) return st;
    model->sliders = gw_arena_alloc(arena, (size_t)friction.n + 2, sizeof *model->sliders);
    if (!model->sliders) return gw_fail(err, GW_E_NOMEM, "out of memory while building the ride model");
    model->friction = friction.wheel;
    for (int i = 0; i < friction.n; i++) {
        const gw_friction_part *part = &friction.part[i];
        if (!(part->strength > GW_SLIDER_WEAKEST)) continue;
        if (part->joint >= 0) add_slider(model, part);
        for (int w = 0; part->joint < 0 && w < model->n_wheels; w++) add_damper(model, part, w);
    }
    return GW_OK;
}

/* The first of its kind on that joint, or the one after `skip` of them. */
static int element_of(const gw_ride_model *model, gw_element_kind kind, int joint, int skip)
{
    for (int k = 0; k < model->n_elements; k++)
        if (model->elements[k].kind == kind && model->elements[k].joint == joint && skip-- == 0) return k;
    return -1;
}

static void place_damper(gw_ride_model *model, gw_ride_slider *slider)
{
    slider->element = element_of(model, GW_ELEMENT_DAMPER, -1, slider->wheel);
    slider->n_rows = 1;
    slider->row[0] = model->elements[slider->element];
}

static void place_joint(gw_ride_model *model, gw_ride_slider *slider)
{
    gw_ride_element row[6] = { 0 };
    gw_ride_joint_rows(model, slider->joint, row);
    slider->element = element_of(model, GW_ELEMENT_WOUND, slider->joint, 0);
    for (int i = 0; i < 3; i++)
        if (i == 2 || model->fit[slider->joint].law.slider.all_axes)
            slider->row[slider->n_rows++] = row[3 + i];
    if (slider->n_rows == 1) slider->turn[0] = slider->turn[2];
}

void gw_sliders_place(gw_ride_model *model)
{
    for (int i = 0; i < model->n_sliders; i++) {
        gw_ride_slider *slider = &model->sliders[i];
        slider->n_rows = 0;
        if (slider->joint < 0)
            place_damper(model, slider);
        else
            place_joint(model, slider);
    }
}

void gw_slider_set(gw_ride_slider *slider, double speed)
{
    double slowest = slider->joint < 0 ? GW_DAMPER_SLOWEST : GW_SLIDER_SLOWEST;
    slider->sticks = !(speed > slowest);
    slider->speed = fmax(speed, slowest);
    slider->c = sqrt(2.0 / GW_PI) * slider->strength / slider->speed;
}

static void add_dash(gw_ride_model *model, const gw_ride_element *row, double c)
{
    for (int i = 0; i < row->n; i++)
        for (int j = 0; j < row->n; j++)
            if (row->dof[i] >= row->dof[j])
                model->dash[model->base[row->dof[i]] + row->dof[j]] += c * row->row[i] * row->row[j];
}

void gw_sliders_apply(gw_ride_model *model)
{
    memset(model->dash, 0, (size_t)model->n_entries * sizeof *model->dash);
    for (int s = 0; s < model->n_sliders; s++) {
        const gw_ride_slider *slider = &model->sliders[s];
        if (slider->element >= 0) {
            model->elements[slider->element].slip = slider->c;
            continue;
        }
        for (int i = 0; i < slider->n_rows; i++) add_dash(model, &slider->row[i], slider->c);
    }
}
