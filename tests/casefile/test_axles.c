/* SPDX-License-Identifier: MIT */
/* What both wheels share, as it is read: bodies, doubled joints, mirrored frames, kits by side; and its
 * faults. */
#include "support/case_sample.h"
#include "support/check.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static char SAMPLE[1 << 14];

static int read_sample(void **state)
{
    (void)state;
    const char *root = getenv("SOURCE");
    char path[1024];
    snprintf(path, sizeof path, "%s/tests/casefile/samples/shared-parts.json", root ? root : ".");
    FILE *file = fopen(path, "rb");
    if (!file) return -1;
    size_t n = fread(SAMPLE, 1, sizeof SAMPLE - 1, file);
    SAMPLE[n] = 0;
    return fclose(file);
}

static int joint(const gw_corner *corner, const char *name)
{
    for (int j = 0; j < corner->n_joints; j++)
        if (strcmp(corner->joints[j].name, name) == 0) return j;
    fail_msg("no joint %s", name);
    return -1;
}

static int body(const gw_corner *corner, const char *name)
{
    for (int b = 0; b < corner->n_bodies; b++)
        if (strcmp(corner->bodies[b].name, name) == 0) return b;
    fail_msg("no body %s", name);
    return -1;
}

static void an_axle_holds_both_corners_and_what_they_share(void **state)
{
    gw_case c;
    gw_faults faults = { 0 };
    (void)state;
    assert_int_equal(sample_read(SAMPLE, &c, &faults), GW_OK);
    const gw_corner *axle = &c.corners[GW_REAR];
    assert_true(axle->shared && axle->lopsided && axle->has_bar);
    assert_int_equal(axle->n_joints, 9); /* two of each corner, mount_front twice, three alone */
    assert_int_equal(axle->n_bodies, 6);
    assert_int_equal(axle->final_drive, body(axle, "subframe"));
    assert_int_equal(axle->right_upright, body(axle, "right.upright"));
    check_abs(axle->bodies[axle->final_drive].mass, 14.0, 1e-12, "mass of the subframe");
    assert_int_equal(axle->right_spring.body, body(axle, "right.arm"));
    check_abs(axle->right_spring.at.y, -0.560, 1e-12, "right seat");
    gw_case_free(&c);
    gw_faults_free(&faults);
}

static void a_joint_off_the_centre_line_stands_for_two(void **state)
{
    gw_case c;
    gw_faults faults = { 0 };
    (void)state;
    assert_int_equal(sample_read(SAMPLE, &c, &faults), GW_OK);
    const gw_corner *axle = &c.corners[GW_REAR];
    int left = joint(axle, "left.mount_front"), right = joint(axle, "right.mount_front");
    const gw_joint *l = &axle->joints[left], *r = &axle->joints[right];
    assert_int_equal(l->twin, right);
    assert_int_equal(r->twin, left);
    assert_true(r->mirrored && !l->mirrored);
    check_abs(r->at.y, -0.520, 1e-12, "y");
    check_abs(r->at.x, 0.420, 1e-12, "x");
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
            check_abs(r->frame.m[i][j], (i == 1 ? -1.0 : 1.0) * l->frame.m[i][j], 1e-15, "frame");
    int strap = joint(axle, "strap"), beam = joint(axle, "beam");
    assert_int_equal(axle->joints[strap].twin, strap);
    check_abs(axle->joints[strap].at.y, -0.180, 1e-12, "strap");
    assert_int_equal(axle->joints[beam].body_a, body(axle, "left.arm"));
    assert_int_equal(axle->joints[beam].body_b, body(axle, "right.arm"));
    assert_int_equal(axle->joints[joint(axle, "right.pivot")].body_b, body(axle, "right.arm"));
    assert_int_equal(axle->joints[joint(axle, "right.pivot")].body_a, body(axle, "subframe"));
    gw_case_free(&c);
    gw_faults_free(&faults);
}

static void the_narrower_name_of_a_kit_wins(void **state)
{
    gw_case c;
    gw_faults faults = { 0 };
    (void)state;
    assert_int_equal(sample_read(SAMPLE, &c, &faults), GW_OK);
    const gw_corner *axle = &c.pairs[GW_REAR];
    const int *poly = c.kits[1].fits[GW_REAR];
    assert_string_equal(c.bushes[poly[joint(axle, "left.pivot")]].name, "pivot_rubber");
    assert_string_equal(c.bushes[poly[joint(axle, "right.pivot")]].name, "pivot_poly");
    assert_string_equal(c.bushes[poly[joint(axle, "left.mount_front")]].name, "mount_rubber");
    assert_string_equal(c.bushes[poly[joint(axle, "right.mount_front")]].name, "beam");
    gw_case_free(&c);
    gw_faults_free(&faults);
}

typedef struct spoilt {
    const char *from, *to, *path, *says;
} spoilt;

static void expect(const spoilt *s)
{
    gw_case c;
    gw_faults faults = { 0 };
    char *text = sample_change(SAMPLE, s->from, s->to);
    if (sample_read(text, &c, &faults) == GW_OK) fail_msg("%s: sound", s->to);
    bool found = false;
    for (int i = 0; i < gw_faults_count(&faults); i++) {
        const char *line = gw_faults_text(&faults, i);
        found = found || (strstr(line, s->path) && strstr(line, s->says));
    }
    if (!found)
        fail_msg("\"%s: %s\" is not among the faults, of which the first is \"%s\"", s->path, s->says,
                 gw_faults_text(&faults, 0));
    gw_faults_free(&faults);
    free(text);
}

static void faults_of_axles(void **state)
{
    static const spoilt LIST[] = {
        { "\"axles\": {", "\"axles\": { \"front\": {},", "axles.front:", "an axle needs its corner" },
        { "\"axles\": {", "\"axles\": { \"middle\": {},", "axles.middle", "unknown key" },
        { "[\"left.arm\", \"right.arm\"]", "[\"left.arm\", \"middle.arm\"]",
          "axles.rear.joints[3].between[1]", "with its side" },
        { "[\"left.arm\", \"right.arm\"]", "[\"left.arm\", \"arm\"]", "axles.rear.joints[3].between[1]",
          "say of which side: \"left.arm\" or \"right.arm\"" },
        { "[\"left.arm\", \"right.arm\"]", "[\"left.bar\", \"right.arm\"]", "axles.rear.joints[3].between[0]",
          "a member of the rear corner after \"left.\"" },
        { "[\"left.arm\", \"right.arm\"]", "[\"left.arm\", \"right.ram\"]", "axles.rear.joints[3].between[1]",
          "did you mean \"arm\"?" },
        { "[\"left.arm\", \"right.arm\"]", "[\"lefft.arm\", \"right.arm\"]",
          "axles.rear.joints[3].between[0]", "did you mean \"left.arm\"?" },
        { "[\"left.arm\", \"right.arm\"]", "[\"left.arm\", \"Right.amr\"]", "axles.rear.joints[3].between[1]",
          "did you mean \"right.arm\"?" },
        { "[\"left.arm\", \"right.arm\"]", "[\"left.arm\", \"chasis\"]", "axles.rear.joints[3].between[1]",
          "did you mean \"chassis\"?" },
        { "[\"left.arm\", \"right.arm\"]", "[\"left.chassis\", \"right.arm\"]",
          "axles.rear.joints[3].between[0]",
          "both wheels share chassis, so it has no side: write \"chassis\"" },
        { "[\"left.arm\", \"right.arm\"]", "[\"left.arm\", \"right.subframe\"]",
          "axles.rear.joints[3].between[1]", "has no side: write \"subframe\"" },
        { "[\"subframe\", \"arm\"]", "[\"subfrane\", \"arm\"]", "corners.rear.joints[0].between[0]",
          "did you mean \"subframe\"?" },
        { "\"mount\": [420, 520, 340]", "\"mount\": [420, -520, 340]", "axles.rear.joints[0].at",
          "y is below 0" },
        { "\"name\": \"strap\"", "\"name\": \"pivot\"", "axles.rear.joints[2].name",
          "unique within a corner" },
        { "\"name\": \"strap\"", "\"name\": \"beam\"", "axles.rear.joints[3].name", "another joint" },
        { "\"subframe\": { \"mass_kg\": 14 }", "\"arm\": { \"mass_kg\": 14 }", "corners.rear.members.arm",
          "the axle has a member of this name too" },
        { "\"subframe\": { \"mass_kg\": 14 }", "\"subframe\": {}, \"spare\": {}", "axles.rear.members.spare",
          "no joint names this member" },
        { "\"final_drive_on\": \"subframe\"", "\"final_drive_on\": \"arm\"", "axles.rear.final_drive_on",
          "a member of this axle" },
        { "\"rear.left.pivot\"", "\"rear.left.pivto\"", "kits[1].fits[\"rear.left.pivto\"]",
          "did you mean \"pivot\"?" },
        { "\"rear.left.pivot\"", "\"rear.left.beam\"", "kits[1].fits[\"rear.left.beam\"]",
          "is one joint, not one of each side: name it \"rear.beam\"" },
        { "\"other_wheel\": \"still\"", "\"other_wheel\": \"moves\"", "loads[1].other_wheel",
          "\"opposite\"" },
        { "\"load_transfer\": \"rule\"", "\"load_transfer\": \"table\"", "vehicle.load_transfer",
          "\"rule\"" },
        { "\"roll_stiffness_Nm_per_deg\": { \"front\": 800, \"rear\": 700 },", "",
          "vehicle.roll_stiffness_Nm_per_deg", "share the load by it" },
    };
    (void)state;
    for (size_t i = 0; i < sizeof LIST / sizeof *LIST; i++) expect(&LIST[i]);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_axle_holds_both_corners_and_what_they_share),
        cmocka_unit_test(a_joint_off_the_centre_line_stands_for_two),
        cmocka_unit_test(the_narrower_name_of_a_kit_wins),
        cmocka_unit_test(faults_of_axles),
    };
    return cmocka_run_group_tests(tests, read_sample, NULL);
}
