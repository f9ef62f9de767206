/* SPDX-License-Identifier: MIT */
/* Jobs: work that is done once if any of some joints gets another bush. */
#include "casefile/nearest.h"
#include "casefile/shelf.h"
#include "giveway/casefile.h"

enum { MAX_JOBS = 1000 };

static const gw_number_key NUMBERS[] = {
    { "fit_minutes", GW_OPTIONAL, GW_FROM(0, 1e6), 1, 0, offsetof(gw_shop_job, minutes) },
    { "price", GW_OPTIONAL, GW_FROM(0, 1e9), 1, 0, offsetof(gw_shop_job, price) },
};

/* "front.upper_rear"; a joint that a case does not have is a fault in the case, and no matter on a shelf. */
static bool find_joint(gw_case_reader *cr, const gw_reader *rd, const gw_node *at, bool from_shelf,
                       gw_shop_joint *out)
{
    gw_axle axle;
    const char *name = gw_behind_axle(at->json->valuestring, &axle);
    if (!name) {
        gw_fault(rd, at, "expected a joint like \"front.upper_rear\": the corner, a dot, the joint");
        return false;
    }
    int joint = cr->c->has_corner[axle] ? gw_corner_find_joint(&cr->c->corners[axle], name) : -1;
    if (joint < 0 && !from_shelf) gw_fault(rd, at, "the case has no joint \"%s\"", at->json->valuestring);
    *out = (gw_shop_joint){ axle, joint };
    return joint >= 0;
}

static void read_joints(gw_case_reader *cr, const gw_reader *rd, const gw_node *node, bool from_shelf,
                        gw_shop_job *job)
{
    gw_node list;
    int index = 0;
    if (!gw_get_list(rd, node, "joints", GW_REQUIRED, &list)) return;
    if (!gw_is_within(rd, &list, GW_AXLES * GW_MAX_JOINTS, "joints")) return;
    if (gw_node_count(&list) == 0) gw_fault(rd, &list, "expected at least one joint");
    if (!(job->joints = gw_reader_make(rd, gw_node_count(&list) + 1, sizeof *job->joints))) return;
    for (const cJSON *e = gw_first(&list); e; e = gw_node_next(e)) {
        gw_node at = gw_node_entry(&list, e, index++);
        char found[80];
        if (!cJSON_IsString(e))
            gw_fault(rd, &at, "expected the name of a joint, found %s", gw_found(&at, found));
        else if (find_joint(cr, rd, &at, from_shelf, &job->joints[job->n_joints]))
            job->n_joints++;
    }
}

void gw_read_jobs(gw_case_reader *cr)
{
    static const char *const WORDS[] = { "label", "joints", NULL };
    gw_node list;
    int index = 0;
    gw_case *c = cr->c;
    if (!gw_get_list(&cr->rd, &cr->top, "jobs", GW_OPTIONAL, &list) ||
        !gw_is_within(&cr->rd, &list, MAX_JOBS, "jobs"))
        return;
    if (!(c->jobs = gw_reader_make(&cr->rd, gw_node_count(&list) + 1, sizeof *c->jobs))) return;
    for (const cJSON *e = gw_first(&list); e; e = gw_node_next(e)) {
        gw_node node = gw_node_entry(&list, e, index++);
        const char *shelf = gw_shelf_of(&cr->shelf, e);
        const gw_reader rd = { shelf ? shelf : cr->rd.file, cr->rd.faults, cr->rd.arena, cr->rd.again };
        gw_shop_job *job = &c->jobs[c->n_jobs++];
        if (!gw_is_object(&rd, &node, "an object { } that describes a job")) continue;
        gw_check_keys(&rd, &node, NUMBERS, GW_COUNT(NUMBERS), WORDS);
        gw_get_text(&rd, &node, "label", GW_REQUIRED, GW_MAX_TEXT_BYTES, &job->label);
        gw_get_numbers(&rd, &node, NUMBERS, GW_COUNT(NUMBERS), job);
        read_joints(cr, &rd, &node, shelf != NULL, job);
    }
}
