# SPDX-License-Identifier: MIT
"""Axles and the whole car against what a textbook works out by hand.

usage: axle_by_hand.py GIVEWAY

Axles with joints as good as rigid: a twist beam turns about the line from its pivot to the beam's shear centre, a live
axle rolls about the place where its Panhard rod crosses the middle of the car, an anti-roll bar gives the rate of its
torsion over its lever. The car on the road: the forces of its four patches against M a and M g. Shares by bush: what
virtual work leaves over is of second order.
"""
import json
import math
import os
import subprocess
import sys
import tempfile

import validation

HERE = os.path.dirname(os.path.abspath(__file__))
G0 = 9.80665
STIFF = {"type": "ball_joint", "radial_N_per_mm": 1e6, "axial_N_per_mm": 1e6}
WELD = {"type": "rigid"}
HINGE = {"type": "rates", "radial_N_per_mm": 1e6, "axial_N_per_mm": 1e6, "conical_Nm_per_deg": 1e7,
         "torsional_Nm_per_deg": 0}
failed = 0


def close(source, basis, what, got, want, allowed):
    global failed
    validation.record("computed", basis, source, what, want, got, allowed)
    ok = abs(got - want) <= allowed
    failed += not ok
    print("%s - %s: %.6g, by hand %.6g, allowed %.2g" % ("ok" if ok else "not ok", what, got, want, allowed))


def run(giveway, verb, case, *options):
    with tempfile.TemporaryDirectory() as directory:
        path = os.path.join(directory, "case.json")
        json.dump(case, open(path, "w"))
        out = subprocess.run([giveway, verb, path, "--format", "json", "--quiet", *options], capture_output=True)
        if not out.stdout:
            raise RuntimeError(out.stderr.decode())
        return json.loads(out.stdout)["results"]


def wheel(half_track, radius, load=1.0):
    """Next to no load: a spring's own force stiffens or softens what it stands on, which no formula here knows."""
    return {"centre_mm": [0, half_track, radius], "loaded_radius_mm": radius, "static_load_N": load,
            "static_camber_deg": 0, "static_toe_deg": 0}


def axle_case(corner, shared, bushes):
    return {"format": "giveway-case-1", "title": "by hand (invented)", "corners": {"rear": corner},
            "axles": {"rear": shared}, "bushes": {"ball": STIFF, "weld": WELD, "hinge": HINGE, **bushes},
            "kits": [{"name": "only", "fits": {}}], "loads": []}


def joint(name, a, b, at, bush, axis=(0, 1, 0), **more):
    return {"name": name, "between": [a, b], "at": at, "axis": list(axis), "bush": bush, **more}


def trailing_arm(half_track, radius, pivot, bush):
    """A corner: an arm with its hub welded to it, on one joint."""
    return {"wheel": wheel(half_track, radius), "points_mm": {"seat": [-31, half_track - 190, radius - 40],
                                                              "top": [-31, half_track - 190, radius + 260]},
            "members": {"arm": {"mass_kg": 9}},
            "joints": [joint("pivot", "chassis", "arm", pivot, bush),
                       joint("hub", "arm", "upright", [0, half_track, radius], "weld")],
            "spring": {"on": "arm", "at": "seat", "to": "top", "rate_N_per_mm": 23.7}}


def twist_beam(giveway):
    """W. Matschinsky, Road Vehicle Suspensions; Reimpell, Stoll, Betzler, The Automotive Chassis: the wheel of a twist
    beam turns, in roll, about the line from its pivot to the shear centre of the beam's section (from memory)."""
    source = "kinematics of a twist beam: Reimpell, Stoll, Betzler, The Automotive Chassis, 2001, from memory"
    y, r, pivot, centre = 731.0, 297.0, [417.0, 571.0, 283.0], [233.0, 0.0, 371.0]
    corner = trailing_arm(y, r, pivot, "ball")
    shared = {"joints": [joint("beam", "left.arm", "right.arm", centre, "beam")]}
    beam = {"type": "rates", "radial_N_per_mm": 1e6, "axial_N_per_mm": 1e6, "conical_Nm_per_deg": 1e7,
            "torsional_Nm_per_deg": 2.1}
    left = run(giveway, "travel", axle_case(corner, shared, {"beam": beam}), "--wheels", "opposite")[0]
    d = [c - p for c, p in zip(centre, pivot)]
    arm = [w - p for w, p in zip([0.0, y, r], pivot)]
    rise = d[0] * arm[1] - d[1] * arm[0]  # of the wheel centre as the arm turns about the line
    camber, toe = -d[0] / rise, -d[2] / rise  # rad per mm of it
    close(source, "memory", "roll steer of a twist beam", left["roll_steer_deg_per_deg"], toe * y, 1e-3 * abs(toe * y))
    close(source, "memory", "roll camber of a twist beam", left["roll_camber_deg_per_deg"], camber * y,
          1e-3 * abs(camber * y))
    own = 1e3 * math.pi / 180 * left["ride_height"]["toe_rate_deg_per_m"] / 1e3  # rad per m
    close(source, "memory", "toe by travel of a twist beam", own, 1e3 * toe, 1e-3 * abs(1e3 * toe))


def live_axle(giveway):
    source = "roll centre on a Panhard rod: Reimpell, Stoll, Betzler, The Automotive Chassis, 2001, from memory"
    y, r = 702.0, 308.0
    body, tube = [-133.0, 517.0, 343.0], [-133.0, -461.0, 297.0]
    points = {"low": [0, 519, 251], "low_body": [533, 519, 251], "high": [0, 377, 409], "high_body": [391, 377, 409],
              "seat": [-60, 480, 320], "top": [-60, 480, 640]}
    corner = {"wheel": wheel(y, r), "points_mm": points, "members": {"lower": {}, "upper": {}},
              "joints": [joint("hub", "tube", "upright", [0, y, r], "weld"),
                         joint("low", "tube", "lower", "low", "ball"),
                         joint("low_body", "lower", "chassis", "low_body", "ball"),
                         joint("high", "tube", "upper", "high", "ball"),
                         joint("high_body", "upper", "chassis", "high_body", "ball")],
              "spring": {"on": "tube", "at": "seat", "to": "top", "rate_N_per_mm": 27.3}}
    shared = {"members": {"tube": {"mass_kg": 60}, "rod": {"mass_kg": 2}},
              "points_mm": {"body": body, "tube_end": tube},
              "joints": [joint("rod_body", "chassis", "rod", "body", "ball", mirrored=False),
                         joint("rod_tube", "rod", "tube", "tube_end", "ball", mirrored=False)]}
    height = tube[2] + (body[2] - tube[2]) * (0 - tube[1]) / (body[1] - tube[1])
    results = run(giveway, "travel", axle_case(corner, shared, {}), "--wheels", "opposite")
    for found in results:
        close(source, "memory", "roll centre of a live axle, %s wheel" % found["side"], found["roll_centre_mm"], height,
              0.3)
        sign = 1 if found["side"] == "left" else -1
        close(source, "memory", "camber of a live axle in roll", found["roll_camber_deg_per_deg"], -sign, 1e-3)
    k, apart = 27.3, 2 * 480.0
    close("springs apart by their distance: K = k b^2 / 2, common practice", "formula", "roll stiffness of a live axle",
          results[0]["roll_stiffness_Nm_per_deg"], 0.5 * k * apart ** 2 * math.pi / 180 / 1e3,
          0.002 * k * apart ** 2 * math.pi / 360 / 1e3)


def bar(giveway):
    source = "torsion of a round bar G J / L over its lever: Roark's Formulas for Stress and Strain, from memory"
    y, r, pivot = 727.0, 301.0, [431.0, 590.0, 301.0]
    diameter, length, lever, shear = 21.5, 934.0, 213.0, 79300.0
    torsion = shear * math.pi * diameter ** 4 / 32 / length  # N mm/rad between the ends
    corner = trailing_arm(y, r, pivot, "hinge")
    eye = 149.0  # where the drop link stands on the arm
    corner["points_mm"].update({"bar_bush": [eye + lever, 467, 420], "bar_end": [eye, 540, 420],
                                "link": [eye, 540, 301]})
    corner["members"].update({"bar": {}, "drop_link": {}})
    without = run(giveway, "travel", axle_case({**corner, "members": {"arm": {}}}, {"members": {}, "joints": [
        joint("idle", "left.arm", "right.arm", [431, 0, 301], "idle")]}, {"idle": {
            "type": "rates", "radial_N_per_mm": 0, "axial_N_per_mm": 0, "conical_Nm_per_deg": 0,
            "torsional_Nm_per_deg": 0}}), "--wheels", "opposite")
    corner["joints"] = corner["joints"] + [
        joint("bar_bush", "chassis", "bar", "bar_bush", "hinge"),
        joint("bar_end", "bar", "drop_link", "bar_end", "ball"), joint("link", "drop_link", "arm", "link", "ball")]
    middle = {"type": "rates", "radial_N_per_mm": 0, "axial_N_per_mm": 0, "conical_Nm_per_deg": 0,
              "torsional_Nm_per_deg": torsion / 1e3 * math.pi / 180}
    case = axle_case(corner, {"points_mm": {"middle": [eye + lever, 0, 420]}, "joints": [
        joint("middle", "left.bar", "right.bar", "middle", "middle")]}, {"middle": middle})
    ratio = (pivot[0] - eye) / pivot[0]  # of the drop link's travel to the wheel's
    added = (2 * y) ** 2 * torsion * (ratio / lever) ** 2 / 1e3 * math.pi / 180
    got = run(giveway, "travel", case, "--wheels", "opposite")[0]["roll_stiffness_Nm_per_deg"]
    got -= without[0]["roll_stiffness_Nm_per_deg"]
    close(source, "memory", "roll stiffness that a bar adds", got, added, 2e-3 * added)
    points = run(giveway, "travel", case, "--wheels", "together")[0]["points"]
    still = min(points, key=lambda p: abs(p["travel_mm"]))
    alone = 23.7 * ((pivot[0] + 31) / pivot[0]) ** 2
    close("a bar that both wheels turn alike is slack: no torsion, common practice", "formula", "wheel rate in bump",
          still["wheel_rate_N_per_mm"], alone, 2e-3 * alone)


def car(giveway):
    """The whole saloon in every manoeuvre: sums of forces, then of moments about the road's x and y."""
    case = json.load(open(os.path.join(HERE, "..", "..", "cases", "fast-saloon.json")))
    case["loads"] = [{**l, "wheel": "both"} for l in case["loads"] if "corner" not in l]
    for key in ("choose", "jobs"):
        case.pop(key, None)
    v = case["vehicle"]
    m, base, h = v["mass_kg"], v["wheelbase_mm"], v["cg_height_mm"]
    source = "static balance of the car: forces of the four patches against M a and M g"
    results = run(giveway, "deflect", case, "--kit", "rubber")
    for load in case["loads"]:
        four = [r for r in results if r["load"] == load["name"]]
        assert len(four) == 4
        ax = (load.get("drive_g", 0) - load.get("brake_g", 0)) * G0
        ay = -load.get("lateral_g", 0) * G0
        roll, pitch = -math.radians(four[0]["roll_deg"]), math.radians(four[0]["pitch_deg"])
        weights = [case["corners"][a]["wheel"]["mass_kg"] for a in ("front", "rear")]
        force, moment, wheels = [0.0] * 3, [0.0, 0.0], []
        for r in four:
            side = 1 if r["wheel"] == "outer" else -1
            w, x0 = case["corners"][r["corner"]]["wheel"], 0.0 if r["corner"] == "front" else -base
            f, hub = r["patch_force_N"], r["hub_force_N"]
            force = [force[0] + f[0] + hub[0], force[1] + side * f[1], force[2] + f[2]]
            d = r["wheel_centre_mm"]
            c = [x0 + d[0], side * (w["centre_mm"][1] + d[1]), w["centre_mm"][2] + d[2]]
            y = math.cos(roll) * c[1] - math.sin(roll) * c[2]
            z = math.sin(roll) * c[1] + math.cos(roll) * c[2]
            x = math.cos(pitch) * c[0] + math.sin(pitch) * z
            share = v["front_mass_fraction"] if r["corner"] == "front" else 1 - v["front_mass_fraction"]
            length = w["loaded_radius_mm"] + (m * G0 * share / 2 - f[2]) / w["tyre_vertical_N_per_mm"]
            up = length * math.cos(math.radians(r["camber_to_road_deg"]))
            wheels.append((w["mass_kg"], x, y, up))
            moment[0] += (y - side * length * math.sin(math.radians(r["camber_to_road_deg"]))) * f[2]
            moment[1] += -x * f[2]
        body = m - 2 * sum(weights)
        at = [(-m * (1 - v["front_mass_fraction"]) * base + 2 * weights[1] * base) / body, 0.0,
              (m * h - 2 * sum(k * case["corners"][a]["wheel"]["centre_mm"][2]
                               for k, a in zip(weights, ("front", "rear")))) / body]
        sway = -math.sin(roll) * at[2]
        along = math.cos(pitch) * at[0] + math.sin(pitch) * at[2]
        masses = wheels + [(body, along, sway, at[2] + four[0]["heave_mm"])]
        for mass, x, y, z in masses:
            moment[0] += -mass * G0 * y + mass * ay * z
            moment[1] += -mass * ax * z + mass * G0 * x
        name, weight = load["name"], m * G0
        for i, (axis, want) in enumerate((("along", m * ax), ("across", m * ay), ("up", weight))):
            close(source, "formula", "%s: forces %s [N]" % (name, axis), force[i], want, 1e-6 * weight)
        # The arms of the forces are those of the design position, but for the wheels' sag: 1 mm of it.
        close(source, "formula", "%s: moment along the car [N m]" % name, moment[0] / 1e3, 0.0, 1e-3 * weight)
        close(source, "formula", "%s: moment across the car [N m]" % name, moment[1] / 1e3, 0.0, 2e-3 * weight)


def virtual_work(giveway):
    """Toe and camber of an axle shared out by bush: in the small what is left over is of second order."""
    case = json.load(open(os.path.join(HERE, "..", "..", "cases", "fast-saloon.json")))
    for key in ("choose", "jobs", "uncertain"):
        case.pop(key, None)
    case.pop("vehicle")
    for corner in case["corners"].values():
        corner["wheel"]["static_load_N"] = 1e-3
    case["loads"] = [{"name": "x%g" % s, "corner": "front", "patch_force_N": [-40 * s, -15 * s, None], "travel_mm": 0}
                     for s in (1, 0.1)]
    results = run(giveway, "deflect", case, "--kit", "rubber")
    for what in ("toe", "camber"):
        whole = [r["%s_change_deg" % what] for r in results]
        left = [w - sum(b["%s_share_deg" % what] for b in r["bushes"]) for r, w in zip(results, whole)]
        first = (100 * left[1] - left[0]) / 9  # of what grows with the load and with its square
        close("principle of virtual work, unit load method", "formula",
              "part of first order of %s that no bush accounts for" % what, first / whole[0], 0.0, 1e-5)
        close("principle of virtual work, unit load method", "formula",
              "order of what is left of %s" % what, math.log10(left[0] / left[1]), 2.0, 0.01)


def main():
    giveway = os.path.abspath(sys.argv[1])
    for check in (twist_beam, live_axle, bar, car, virtual_work):
        check(giveway)
    return failed != 0


if __name__ == "__main__":
    sys.exit(main())
