/* SPDX-License-Identifier: MIT */
#include "giveway/ride.h"
#include "giveway/units.h"
#include "support/check.h"

#include <math.h>

/* ISO 8608:2016, Table C.1 (from memory): geometric means at n0 = 0.1 cycle/m, in 1e-6 m^3. */
static void classes_have_the_means_of_iso_8608(void **state)
{
    (void)state;
    check_copy_of("ISO 8608:2016, Table C.1 (from memory)");
    const double mean[8] = { 16, 64, 256, 1024, 4096, 16384, 65536, 262144 };
    for (int i = 0; i < 8; i++) {
        check_about("class %c", 'A' + i);
        check_rel(gw_road_class_roughness((char)('A' + i)), mean[i] * 1e-6, 1e-12, "geometric mean [m3]");
    }
    check_about("beyond H");
    check_abs(gw_road_class_roughness('I'), 0.0, 0.0, "no such class");
    check_abs(gw_road_class_roughness('a'), 0.0, 0.0, "no such class");
}

/* The velocity spectrum is white: (2 pi n0)^2 Gd(n0) v, so a class B road at 20 m/s has 5.05324e-4
 * (m/s)^2/Hz. */
static void road_velocity_is_white(void **state)
{
    (void)state;
    for (double hz = 0.5; hz < 300; hz *= 1.7) {
        double w = 2 * GW_PI * hz;
        check_rel(w * w * gw_road_spectrum(64e-6, 20.0, hz), 5.05324e-4, 2e-6, "velocity spectrum");
    }
}

/* Integrating n^-2 from 0.011 to 2.83 cycle/m by hand: class C has 15.226 mm rms height. */
static void class_c_height_over_the_standards_range(void **state)
{
    (void)state;
    check_from("ISO 8608:2016, class C from 0.011 to 2.83 cycles/m, integrated by hand");
    double v = 20.0, sum = 0.0;
    const int n = 200000;
    double low = log(GW_ROAD_N_MIN * v), high = log(GW_ROAD_N_MAX * v);
    for (int i = 0; i < n; i++) {
        double hz = exp(low + (high - low) * (i + 0.5) / n);
        sum += gw_road_spectrum(256e-6, v, hz) * hz * (high - low) / n;
    }
    check_abs(sqrt(sum), 15.226e-3, 0.5e-6, "rms height [m]");
}

static void contact_averages_over_whole_waves_to_nothing(void **state)
{
    (void)state;
    check_rel(gw_road_contact_filter(0.12, 20.0, 1e-9), 1.0, 1e-12, "long waves");
    check_abs(gw_road_contact_filter(0.12, 20.0, 20.0 / 0.12), 0.0, 1e-12, "one wave in the contact");
    check_rel(gw_road_contact_filter(0.12, 20.0, 10.0 / 0.12), 2.0 / GW_PI, 1e-12, "half a wave");
    check_rel(gw_road_contact_filter(0.0, 20.0, 300.0), 1.0, 1e-12, "point contact");
    /* The series for small arguments meets the quotient. */
    double hz = 1.0001e-4 * 20.0 / (0.12 * GW_PI);
    check_rel(gw_road_contact_filter(0.12, 20.0, hz), 1.0 - 1.0002e-8 / 6.0, 1e-12, "join");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(classes_have_the_means_of_iso_8608),
        cmocka_unit_test(road_velocity_is_white),
        cmocka_unit_test(class_c_height_over_the_standards_range),
        cmocka_unit_test(contact_averages_over_whole_waves_to_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
