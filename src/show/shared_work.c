/* SPDX-License-Identifier: MIT */
/* "Done once: front lower arm out and in, 35 min, for 2 joints saves 35 (poly, bearing)." */
#include "show/handling.h"

#include "format/number.h"
#include "giveway/casefile.h"

void gw_shared_joint_name(const gw_case *c, const gw_shop_joint *at, gw_buf *out)
{
    gw_buf_say(out, "%s.%s", gw_axle_name(at->axle), gw_joint_as_written(&c->corners[at->axle], at->joint));
}

static void put_joints(const gw_case *c, const gw_kit *kit, const gw_shop_job *job, int n, gw_buf *out)
{
    int at = 0;
    for (int j = 0; j < job->n_joints; j++) {
        if (!gw_job_joint_changes(c, kit, &job->joints[j])) continue;
        if (at) gw_buf_add(out, at == n - 1 ? " and " : ", ");
        gw_shared_joint_name(c, &job->joints[j], out);
        at++;
    }
}

static void put_job(const gw_case *c, const gw_kit *kit, const gw_shared_job *shared, gw_buf *out)
{
    const gw_shop_job *job = shared->job;
    gw_buf_say(out, "%s, %s min for ", job->label, gw_fixed(job->minutes, 0).s);
    put_joints(c, kit, job, shared->joints, out);
    if (shared->saved > 0.0) gw_buf_fmt(out, " (saves %s)", gw_fixed(shared->saved, 0).s);
}

static void put_kit(const gw_handling_page *p, int kit)
{
    const gw_case *c = p->cmp->c;
    gw_buf text = { 0 };
    int n = 0;
    for (int i = 0; i < c->n_jobs; i++) {
        const gw_shared_job shared = gw_shared_job_of(c, &c->jobs[i], &c->kits[kit]);
        if (!shared.joints) continue;
        gw_buf_add(&text, text.n ? "; " : "Done once in ");
        if (!n++) {
            gw_buf_say(&text, "%s: ", c->kits[kit].name);
        }
        put_job(c, &c->kits[kit], &shared, &text);
    }
    if (text.n) gw_buf_add(&text, ".");
    gw_paper_say_of(p->paper, 2, &text);
}

/* Kits in which a job serves as many joints: ", for 9 joints saves 480 (mixed, camber)". */
static void put_alike(const gw_comparison *cmp, const gw_shop_job *job, int kit, gw_buf *out)
{
    const gw_case *c = cmp->c;
    const gw_shared_job of = gw_shared_job_of(c, job, &c->kits[kit]);
    int told = 0;
    for (int k = 0; k < c->n_kits && of.joints; k++) {
        if (!gw_compare_shows(cmp, k) || gw_shared_job_of(c, job, &c->kits[k]).joints != of.joints) continue;
        if (k < kit) return;
        if (!told) gw_buf_fmt(out, ", for %d joint%s", of.joints, of.joints == 1 ? "" : "s");
        if (!told && of.saved > 0.0) gw_buf_fmt(out, " saves %s", gw_fixed(of.saved, 0).s);
        gw_buf_say(out, "%s%s", told++ ? ", " : " (", c->kits[k].name);
    }
    if (told) gw_buf_add(out, ")");
}

void gw_shared_work_brief(const gw_handling_page *p)
{
    const gw_comparison *cmp = p->cmp;
    gw_buf text = { 0 };
    for (int i = 0; i < cmp->c->n_jobs; i++) {
        const gw_shop_job *job = &cmp->c->jobs[i];
        gw_buf kits = { 0 };
        for (int k = 0; k < cmp->c->n_kits; k++)
            if (gw_compare_shows(cmp, k)) put_alike(cmp, job, k, &kits);
        if (kits.n) {
            gw_buf_say(&text, "%s%s, %s min%s", text.n ? "; " : "Done once: ", job->label,
                       gw_fixed(job->minutes, 0).s, gw_buf_str(&kits));
        }
        gw_buf_drop(&kits, &text);
    }
    if (text.n) gw_buf_add(&text, ".");
    gw_paper_say_of(p->paper, 2, &text);
}

void gw_shared_work_text(const gw_handling_page *p)
{
    for (int k = 0; k < p->cmp->c->n_kits; k++)
        if (gw_compare_shows(p->cmp, k)) put_kit(p, k);
}

void gw_sum_cell(gw_table *t, gw_cost_sum sum)
{
    if (!sum.known)
        gw_table_cell(t, GW_NO_NUMBER);
    else
        gw_table_cellf(t, "%s%s", gw_fixed(sum.value, 0).s, sum.more ? "+" : "");
}
