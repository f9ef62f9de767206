# SPDX-License-Identifier: MIT
"""Compares `align` with the independent reading of the corner (used only for tests).

    compare_align.py GIVEWAY_BINARY [--cases N] [--seed FIRST] [--all] [CASE.json ...]

Of the first and the last kit (with --all of every kit) in every corner: the sensitivities against fourth-order differences of corners solved by the
second reading, to 1e-5 of the largest of the same adjuster; and the angles before and after, with
the program's own settings really moved in the second reading's corner, to 1e-6 degree. Besides, what
the settings must be by definition: within their limits, shims whole, the target met where nothing
holds it. Prints the worst differences; the exit status is 1 if anything failed.
"""
import argparse
import json
import os
import sys
import tempfile

for _v in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
    os.environ.setdefault(_v, "1")
sys.dont_write_bytecode = True

import numpy as np  # noqa: E402

import compare_corner  # noqa: E402
import random_cases  # noqa: E402
from reference.case import DEG, read  # noqa: E402
from reference.corner import Corner  # noqa: E402
from reference.study import Fitted, Study  # noqa: E402

HERE = os.path.dirname(os.path.abspath(__file__))
ANGLE, SLOPE = 1e-6, 1e-5
ANGLES = ("camber_deg", "toe_deg", "caster_change_deg")


def with_align(case, rng):
    """A random case with random adjusters and a target that may or may not be in reach."""
    case["align"] = {}
    for name, spec in case["corners"].items():
        count = {m: 0 for m in spec["members"]}
        for joint in spec["joints"]:
            for body in joint["between"]:
                if body in count:
                    count[body] += 1
        links = [m for m, n in count.items() if n == 2 and m != "rack"]
        housed = [j["name"] for j in spec["joints"] if "housing" in j]
        inner = [j["name"] for j in spec["joints"] if "chassis" in j["between"]]
        adjusters = []
        if housed:
            adjusters.append({"kind": "offset", "joint": str(rng.choice(housed)),
                              "max_mm": round(float(rng.uniform(1, 5)), 2)})
        for link in rng.permutation(links)[:2]:
            adjusters.append({"kind": "length", "member": str(link), "min_mm": -5, "max_mm": 6,
                              "thread_pitch_mm": 1.5,
                              "threads": str(rng.choice(["single", "opposite"]))})
        along = [round(float(x), 3) for x in rng.uniform(0.2, 1, 3)]
        adjusters.append({"kind": "shim", "joint": str(rng.choice(inner)), "along": along,
                          "step_mm": 0.75, "min_mm": -2, "max_mm": 4})
        wheel = spec["wheel"]
        target = {"camber_deg": round(wheel["static_camber_deg"] + float(rng.uniform(-1.2, 0.4)), 3),
                  "toe_deg": round(wheel["static_toe_deg"] + float(rng.uniform(-0.1, 0.1)), 3)}
        case["align"][name] = {"target": target, "adjusters": adjusters}
    return case


def movements(adjusters):
    """(adjuster, axis) in the order of the program's sensitivities."""
    return [(a, axis) for a in adjusters for axis in range(2 if a["kind"] == "offset" else 1)]


def apply(corner, adjuster, axis, mm):
    """One movement on the second reading's corner."""
    if adjuster["kind"] == "offset":
        corner.add_offset(adjuster["joint"], mm if axis == 0 else 0.0, mm if axis == 1 else 0.0)
    elif adjuster["kind"] == "length":
        corner.add_length(adjuster["member"], mm)
    else:
        corner.add_shim(adjuster["joint"], adjuster["along"], mm)


def check_slopes(study, result, adjusters, tally, where):
    """Sensitivities; returns what is wrong."""
    bad = []
    for (adjuster, axis), got in zip(movements(adjusters), result["sensitivity"], strict=True):
        want = study.sensitivity(result["corner"], result["kit"],
                                 lambda c, mm, a=adjuster, x=axis: apply(c, a, x, mm))
        have = [got[k] for k in ("camber_deg_per_mm", "toe_deg_per_mm", "caster_deg_per_mm")]
        size = max(np.abs(want).max(), 1e-3)
        diff = np.abs(np.array(have) - want).max() / size
        tally.see("sensitivity", diff / SLOPE, diff, where)
        if not diff <= SLOPE:
            bad.append(f"sensitivity to {adjuster} axis {axis}: {have} for {want}")
    return bad


def carried(study, result, adjusters, settings):
    """Camber, toe, caster change (deg) with settings really moved."""
    c = Corner(study.case, result["corner"], result["kit"], study.extra)
    for a, s in zip(adjusters, settings, strict=True):
        if a["kind"] == "offset":
            clock = s["clock_deg"] * DEG
            c.add_offset(a["joint"], s["offset_mm"] * np.cos(clock), s["offset_mm"] * np.sin(clock))
        elif a["kind"] == "length":
            c.add_length(a["member"], s["length_change_mm"])
        else:
            c.add_shim(a["joint"], a["along"], s["shim_mm"])
    return np.array(Fitted(c).carried) / DEG


def check_angles(study, result, adjusters, tally, where):
    """Angles before, as set, and of the alternatives."""
    bad, still = [], [dict(offset_mm=0, clock_deg=0, length_change_mm=0, shim_mm=0)] * len(adjusters)
    looks = [("before", still, result["before"]),
             ("reached", result["adjusters"], result["reached"])]
    looks += [("alternative", a["adjusters"], a["reached"]) for a in result["alternative"]]
    for key, settings, angles in looks:
        want = carried(study, result, adjusters, settings)
        diff = np.abs(np.array([angles[k] for k in ANGLES]) - want).max()
        tally.see(key, diff / ANGLE, diff, where)
        if not diff <= ANGLE:
            bad.append(f"{key} {diff:.2e}")
    return bad


def check_settings(result, adjusters, target):
    """Limits, whole shims, and a target that is met or held."""
    bad, free = [], False
    for a, s in zip(adjusters, result["adjusters"], strict=True):
        value = s.get("offset_mm", s.get("length_change_mm", s.get("shim_mm")))
        low = 0.0 if a["kind"] == "offset" else a.get("min_mm", 0.0)
        if not low - 1e-9 <= value <= a["max_mm"] + 1e-9:
            bad.append(f"{a} is set to {value}")
        if a["kind"] == "shim" and abs(value / a["step_mm"] - round(value / a["step_mm"])) > 1e-9:
            bad.append(f"{a} is set to {value}, no whole step")
        free = free or (a["kind"] != "shim" and not s["at_limit"])
    for key in ("toe_deg", "camber_deg"):
        miss = abs(result["reached"][key] - target[key]) if key in target else 0.0
        if miss > 1e-6 and key == "toe_deg" and free and not any(
                s["holds_target"] for s in result["adjusters"]):
            bad.append(f"{key} is missed by {miss:.2e} and nothing holds it")
    return bad


def compare_case(binary, path, label, tally, every):
    """The results of one case."""
    case = read(path)
    wanted = [case["kits"][0]["name"], case["kits"][-1]["name"]]
    rates, _ = compare_corner.run(binary, "rates", path)
    study = Study(case, {b["name"]: b for b in rates["bushes"]} if rates else None)
    result, why = compare_corner.run(binary, "align", path)
    if result is None:
        tally.result(False, label, why)
        return
    for r in result["results"]:
        if not every and r["kit"] not in wanted:
            continue
        section = case["align"][r["corner"]]
        where = f"{label} {r['kit']}/{r['corner']}"
        adjusters = section["adjusters"]
        try:
            bad = (check_slopes(study, r, adjusters, tally, where)
                   + check_angles(study, r, adjusters, tally, where)
                   + check_settings(r, adjusters, section["target"]))
        except RuntimeError as e:
            tally.skipped.append(f"{where}: {e}")
            continue
        tally.result(not bad, where, "; ".join(bad))


def main():
    """Compare, and say how it went."""
    p = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    p.add_argument("binary")
    p.add_argument("case", nargs="*")
    p.add_argument("--cases", type=int, default=3, help="how many random cases (3)")
    p.add_argument("--all", action="store_true", help="every kit")
    p.add_argument("--seed", type=int, default=100, help="the first one's seed (100)")
    a = p.parse_args()
    tally = compare_corner.Tally()
    for path in a.case or random_cases.demonstration():
        with open(path, encoding="utf-8") as f:
            if json.load(f).get("align"):
                compare_case(a.binary, path, os.path.basename(path), tally, a.all)
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(a.seed, a.seed + (0 if a.case else a.cases)):
            path = os.path.join(folder, f"align-{seed}.json")
            with open(path, "w", encoding="utf-8") as f:
                json.dump(with_align(random_cases.make(seed), np.random.default_rng(seed)), f)
            compare_case(a.binary, path, f"random {seed}", tally, a.all)
    for key, (ratio, diff, where) in sorted(tally.worst.items()):
        print(f"{key:14} {ratio:10.2e} of allowed, difference {diff:.2e}, at {where}")
    tally.keep("settings in a second reading, written apart (tests/crosscheck/reference)")
    for line in tally.skipped:
        print(f"left out: {line}")
    print(f"{tally.passed} passed, {tally.failed} failed")
    return 1 if tally.failed or not tally.passed else 0


if __name__ == "__main__":
    sys.exit(main())
