# SPDX-License-Identifier: MIT
"""Compares the program with the independent reading of ride (used only for tests).

    compare_ride.py GIVEWAY_BINARY [--cases N] [--seed FIRST] [CASE.json ...]

Runs `ride --format json` on the cases of the checkout (or on those named), on variations of them and on
random corners, and compares comfort, harshness, road noise, bands, crackle, the share of every attachment, the natural
frequencies, the state that friction and amplitudes settle to (it must make itself again), and of some the range over
eight draws: figures to 1e-4 of their value (decibels to 1e-3, shares to
1e-4; peaks after a bump to 2e-3: the program inverts along a line beside the imaginary axis, where it takes the
law of a rubber bush by the size of p and not by its analytic continuation; with the same done here both agree
to 1e-12, so the rest, 1.2e-3 at worst, is that choice). Prints the worst differences and a closing line; the exit status is 1 if anything failed.

Bushes that are described by shape are compared with the program's own static rates for them, and with the
dynamic law of their compound read here from materials/: the road, the corner and the people are on trial.
"""
import argparse
import copy
import json
import math
import os
import sys
import tempfile
import time

for _v in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
    os.environ.setdefault(_v, "1")
sys.dont_write_bytecode = True

import numpy as np  # noqa: E402

import random_cases  # noqa: E402
from compare_corner import Tally, run  # noqa: E402
from reference.case import read  # noqa: E402
from ride_depth import LEVELS, Depth, rates_of, spread  # noqa: E402

HERE = os.path.dirname(os.path.abspath(__file__))
FIGURE, DECIBEL, SHARE, PEAK, STATE, RANGE = 1e-4, 1e-3, 1e-4, 2e-3, 1e-4, 1e-2


def decibels(a, b):
    """a over b."""
    return 20 * math.log10(a / b)


class Wanted:
    """What the independent reading makes of one kit and corner, in the state that the program tells."""

    def __init__(self, case, rates, friction_rates, got, draws):
        self.depth = Depth(case, got["kit"], got["corner"], rates, friction_rates, got)
        self.model = self.depth.model
        self.figures = self.depth.figures()
        self.natural = self.model.natural()
        self.draws = [self.depth.draw(u) for u in LEVELS] if draws else None

    def range(self, base, key, nominal):
        """Range of decibels over the draws."""
        return spread([d[key] for d in self.draws], [d[key] for d in base.draws], nominal)


def state_pairs(got, depth):
    """The state of sliders and bushes is what it makes of itself; the one that sticks tells so."""
    told = {s["joint"]: s for s in got["sliders"]}
    yield "sliders", 0.0 if set(told) == set(depth.friction.strength) else math.inf, STATE
    for name, c in depth.dash.items():
        yield "slider", abs(c / depth.state.dash[name] - 1), STATE
        yield "sticks", 0.0 if told[name]["sticks"] == (name in depth.state.sticks) else math.inf, STATE
    told = {a["joint"]: a["amplitude_mm"] for a in got["amplitudes"]}
    yield "amplitudes", 0.0 if set(told) == set(depth.moved) else math.inf, STATE
    for name, x in depth.moved.items():
        meant = x * 1e3 if depth.own else depth.args[0]["ride"]["amplitude_mm"]
        yield "amplitude", abs(told[name] / meant - 1), STATE


def pairs(got, want, base):
    """(key, difference, allowed) of every number of one result."""
    for key in ("comfort_ms2", "harshness_N", "road_noise_N"):
        yield key, abs(got[key] / want.figures[key] - 1), FIGURE
    for key in ("harshness", "road_noise"):
        dB = decibels(want.figures[key + "_N"], base.figures[key + "_N"])
        yield key + "_dB", abs(got[key + "_dB"] - dB), DECIBEL
        if want.draws:
            found, meant = got[key + "_range_dB"], want.range(base, key + "_N", dB)
            yield key + "_range_dB", max(abs(a - b) for a, b in zip(found, meant)), RANGE
    yield from state_pairs(got, want.depth)
    for a, b in zip(got["crackle_N"], want.figures["crackle_N"]):
        yield "crackle_N", abs(a - b) / max(b, 1e-3 * want.figures["harshness_N"]), FIGURE
    for i, band in enumerate(got["third_octave"]):
        yield "body_force_N", abs(band["body_force_N"] / want.figures["bands"][i] - 1), FIGURE
        dB = decibels(want.figures["bands"][i], base.figures["bands"][i])
        yield "dB_from_baseline", abs(band["dB_from_baseline"] - dB), DECIBEL
    for key, hz in want.natural.items():
        yield f"natural_Hz.{key}", abs(got["natural_Hz"][key] / hz - 1), FIGURE
    shares = {p["attachment"]: p["share"] for p in got["paths"]}
    yield "paths", 0.0 if set(shares) == set(want.figures["paths"]) else math.inf, SHARE
    for name, share in want.figures["paths"].items():
        yield "share", abs(shares.get(name, math.inf) - share), SHARE
    if "obstacle" in want.model.ride:
        for key, force in zip(("peak_fore_aft_N", "peak_vertical_N"), want.model.bump()):
            yield f"obstacle.{key}", abs(got["obstacle"][key] / np.abs(force).max() - 1), PEAK


def compare_case(binary, path, label, tally, draws):
    """All kits and corners of one case; the range of those in `draws`, (kit, corner) by their place."""
    case = read(path)
    rates, why = run(binary, "rates", path)
    result, why_not = run(binary, "ride", path)
    if rates is None or result is None:
        tally.result(False, label, why or why_not)
        return
    rates, friction_rates = {b["name"]: b for b in rates["bushes"]}, rates_of(binary, path)
    base, with_draws = {}, set(draws)
    found = [(r["kit"], r["corner"]) for r in result["results"]]
    meant = [(k["name"], c) for k in case["kits"] for c in ("front", "rear") if c in case["corners"]]
    if found != meant:
        tally.result(False, label, f"results are of {found}, not of {meant}")
    for got in result["results"]:
        place = ([k["name"] for k in case["kits"]].index(got["kit"]), got["corner"])
        want = Wanted(case, rates, friction_rates, got, place in with_draws)
        base.setdefault(got["corner"], want)
        where = f"{label} {got['kit']}/{got['corner']}"
        bad = []
        for key, difference, allowed in pairs(got, want, base[got["corner"]]):
            tally.see(key, difference / allowed, difference, where)
            if not difference <= allowed:
                bad.append(f"{key} off by {difference:.2e}")
        tally.result(not bad, where, ", ".join(bad))


# --- cases that nobody drew by hand -----------------------------------------------------------------------

def varied_wheel(wheel, u):
    """Another wheel and tyre; one in three without what makes the tyre push back fore and aft."""
    for key in ("mass_kg", "tilt_inertia_kgm2", "pitch_inertia_kgm2", "tyre_vertical_N_per_mm",
                "tyre_damping_Ns_per_mm"):
        wheel[key] *= u(0.7, 1.4)
    if u(0, 1) < 0.67:
        wheel.update(tyre_slip_stiffness_N=u(3e4, 1.2e5), tyre_relaxation_mm=u(150, 500),
                     spin_inertia_kgm2=u(0.5, 2.0))
    else:
        for key in ("tyre_slip_stiffness_N", "tyre_relaxation_mm", "spin_inertia_kgm2"):
            wheel.pop(key, None)
    if u(0, 1) < 0.6:  # a belt on sidewalls that are stiffer than the tyre
        mass = u(0.1, 0.4) * wheel["mass_kg"]
        least = math.sqrt(wheel["tyre_vertical_N_per_mm"] * 1e3 / (0.75 * mass)) / (2 * math.pi)
        wheel.update(tyre_mass_kg=mass, tyre_belt_Hz=least * u(1.1, 2.5))
        if u(0, 1) < 0.5:
            wheel["tyre_belt_loss_factor"] = u(0.02, 0.3)


def varied_ride(u):
    """Another road, speed and body."""
    ride = {"speed_km_h": u(30, 160)}
    if u(0, 1) < 0.5:
        ride["road_class"] = "ABCDE"[int(u(0, 5))]
    else:
        ride["roughness_m3"] = u(1e-6, 1e-3)
    for key, low, high in (("contact_length_mm", 0, 220), ("bracket_loss_factor", 0.02, 0.2),
                           ("amplitude_mm", 0.01, 1), ("damper_friction_Ns_per_mm", 0, 1)):
        if u(0, 1) < 0.5:
            ride[key] = u(low, high)
    if u(0, 1) < 0.3:
        ride["obstacle"] = {"height_mm": u(5, 40), "length_mm": u(100, 600)}
    chance = u(0, 1)
    if chance < 0.7:
        ride["default_bracket_N_per_mm"] = None if chance < 0.2 else u(4e3, 1e5)
    return ride


def varied_bush(bush, u):
    """Other dynamic factors, and rates of which one in eight is none in one direction."""
    if bush["type"] == "bearing":
        return
    if bush["type"] in ("rates", "ball_joint"):
        bush["loss_factor"] = u(0.01, 0.25)
        bush["dynamic_ratio"] = u(1, 1.8)
    for key in ("radial_N_per_mm", "axial_N_per_mm", "conical_Nm_per_deg", "torsional_Nm_per_deg"):
        if isinstance(bush.get(key), (int, float)):
            bush[key] *= u(0.6, 1.6)


def as_measured(bush, u):
    """The same bush from a press, its curves straight so that any tangent of them is its rate; now and then with a rig's test."""
    out = {k: v for k, v in bush.items() if k not in ("type", "radial_N_per_mm", "axial_N_per_mm")} | {"type": "measured"}
    radial = bush["radial_N_per_mm"] if isinstance(bush["radial_N_per_mm"], list) else [bush["radial_N_per_mm"]]
    for key, rate in zip(("radial",) if len(radial) == 1 else ("radial_e1", "radial_e2"), radial):
        out[key] = {"points": [[x, rate * x] for x in (-3.0, -1.5, 1.0, 4.0)]}
    out["axial"] = {"points": [[x, bush["axial_N_per_mm"] * x] for x in (2.0, 5.0)]}
    if u(0, 1) < 0.7:
        out.pop("dynamic_ratio", None), out.pop("loss_factor", None)
        out["dynamic"] = {"rate_N_per_mm": sum(radial) / len(radial) * u(0.8, 1.25), "zener_gain": u(0.5, 4), "zener_tau_s": 1e-6,
                          "zener_alpha": u(0.1, 0.4), "payne_gain": 0.0}
        if u(0, 1) < 0.6:
            out["dynamic"] |= {"payne_gain": u(0.1, 0.6), "payne_amplitude_mm": u(0.05, 0.5), "payne_exponent": u(0.4, 0.7)}
    return out


def some_measured(case, u):
    """Half of the bushes of plain rates that have no stop."""
    for name, bush in case["bushes"].items():
        if not isinstance(bush, dict) or bush["type"] != "rates" or "stop" in bush or "breakaway_Nm" in bush:
            continue
        radial = bush["radial_N_per_mm"]
        if u(0, 1) < 0.5 and bush["axial_N_per_mm"] > 0 and min(radial if isinstance(radial, list) else [radial]) > 0:
            case["bushes"][name] = as_measured(bush, u)


def varied_friction(case, u):
    """Half of the joints that may, and the dampers, rub."""
    for bush in case["bushes"].values():
        if not isinstance(bush, dict) or u(0, 1) < 0.5:
            continue
        if bush["type"] in ("rates", "ball_joint", "unbonded"):
            bush["breakaway_Nm"] = 10 ** u(-1.5, 1)
        if bush["type"] in ("bearing", "unbonded"):
            bush["friction_coefficient"] = u(0.02, 0.3)
    for corner in case["corners"].values():
        if u(0, 1) < 0.7:
            corner["damper"]["friction_N"] = 10 ** u(0.5, 2)


def varied(case, seed):
    """A case with every number of its ride changed."""
    rng = np.random.default_rng(seed)

    def u(a, b):
        return float(rng.uniform(a, b))
    case = copy.deepcopy(case)
    case["ride"] = varied_ride(u)
    for bush in case["bushes"].values():
        varied_bush(bush, u)
    varied_friction(case, u)
    for corner in case["corners"].values():
        varied_wheel(corner["wheel"], u)
        corner["damper"]["rate_Ns_per_mm"] *= u(0.4, 2.0)
        if u(0, 1) < 0.3:
            corner["damper"].pop("top_mount_N_per_mm", None)
        else:
            corner["damper"]["top_mount_N_per_mm"] = u(200, 2000)
        for joint in corner["joints"]:
            if "chassis" not in joint["between"]:
                joint.pop("bracket_N_per_mm", None)
            elif u(0, 1) < 0.3:
                joint["bracket_N_per_mm"] = u(5e3, 5e4)
    return case


def cases(folder, named, seeds):
    """(label, path) of everything to compare."""
    paths = named or random_cases.demonstration()
    for path in paths:
        yield os.path.basename(path), path
    if named:
        return
    for seed in seeds:
        kind = seed % 3
        source = random_cases.make(seed) if kind < 2 else read(paths[seed // 3 % len(paths)])
        path = os.path.join(folder, f"random-{seed}.json")
        with open(path, "w", encoding="utf-8") as f:
            json.dump(varied(source, seed), f)
        yield f"random {seed}", path
        if seed % 4:
            continue
        rng = np.random.default_rng(1000 + seed)
        pressed = read(path)
        some_measured(pressed, lambda a, b: float(rng.uniform(a, b)))
        path = os.path.join(folder, f"measured-{seed}.json")
        with open(path, "w", encoding="utf-8") as f:
            json.dump(pressed, f)
        yield f"random {seed}, measured", path


def main():
    """Compare, and say how it went."""
    p = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    p.add_argument("binary")
    p.add_argument("case", nargs="*")
    p.add_argument("--cases", type=int, default=9, help="how many random cases (9)")
    p.add_argument("--draws", type=lambda t: [(int(x[0]), x[1:]) for x in t.split(",")], default=[(0, "front"), (1, "front")],
                   help="kits and corners whose range is worked out, as 0front,1front")
    p.add_argument("--seed", type=int, default=0, help="the first one's seed (0)")
    a = p.parse_args()
    tally, start = Tally(), time.time()
    with tempfile.TemporaryDirectory() as folder:
        for i, (label, path) in enumerate(cases(folder, a.case, range(a.seed, a.seed + a.cases))):
            compare_case(a.binary, path, label, tally, a.draws if i in (0, 3) or a.case else [])
    tally.keep("ride in a second reading, written apart (tests/crosscheck/ride_reference.py)")
    print(f"{'number':28} {'of allowed':>10} {'difference':>11}  where")
    for key, (ratio, difference, where) in sorted(tally.worst.items()):
        print(f"{key:28} {ratio:10.2e} {difference:11.2e}  {where}")
    print(f"{tally.numbers} numbers in {time.time() - start:.0f} s")
    print(f"{tally.passed} passed, {tally.failed} failed")
    return 1 if tally.failed or not tally.passed else 0


if __name__ == "__main__":
    sys.exit(main())
