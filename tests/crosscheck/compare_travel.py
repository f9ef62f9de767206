# SPDX-License-Identifier: MIT
"""Compares `travel` with the independent reading of the corner (used only for tests).

    compare_travel.py GIVEWAY_BINARY [--cases N] [--seed FIRST] [CASE.json ...]

Runs `travel --format json` on N random cases and on the cases of the checkout (or on those named),
and compares along the path: camber, toe and caster to 1e-6 degree, movements to 1e-6 mm, the load
to 1e-8 of the static load, wheel rate and parasitic rate to 1e-5 of the wheel rate, the
roll-centre height to 1e-5 mm, and the tilt of every joint to 1e-6 degree.

Every joint is given a limit of tilt first. The tilt of a link that spins freely is found here by
trying spins over the whole turn, finer and finer, not by the program's way.

Left out: the parasitic rate where the link that carries the spring has an off-centre bush and,
without rotational rates, would roll. Its spin is then held; the program holds it about the line
between the joints as fitted, the second reading about the line as drawn, and the contract names no
further than "that line". That moves the rate by some parts in ten thousand.
"""
import argparse
import json
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
from reference.case import DEG, Unsupported, read  # noqa: E402
from reference.study import Study  # noqa: E402

HERE = os.path.dirname(os.path.abspath(__file__))
PLACES = (-60.0, -25.0, 0.0, 40.0)      # mm, of those that the program goes to
ANGLES = ("camber_change_deg", "toe_change_deg", "caster_change_deg")


def turned(axis, line, spin):
    """The axis after a spin about the unit line (Rodrigues)."""
    return (axis * np.cos(spin) + np.cross(line, axis) * np.sin(spin)
            + line * (line @ axis) * (1 - np.cos(spin)))


def angle(a, b):
    """Angle between two unit vectors, rad."""
    return np.arctan2(np.linalg.norm(np.cross(a, b)), a @ b)


def rotation(c, z, body):
    """Rotation of a body, the chassis being number -1."""
    return np.eye(3) if body < 0 else c.rotation_of(z, body)


def spins(c, body):
    """The two joints of a member that spins about the line between them, or None."""
    joints = [j for j in range(len(c.joints)) if body in c.side[j]]
    if len(joints) != 2 or np.any(c.c[joints]):
        return None
    line = c.at[joints[1]] - c.at[joints[0]]
    line = line / np.linalg.norm(line)
    for part in ("spring", "damper"):
        spec = c.case["corners"][c.name].get(part)
        if spec and spec["on"] == c.bodies[body]:
            at = np.array(c.points[spec["at"]])
            if np.linalg.norm(np.cross(at - c.at[joints[0]], line)) > 0.1:
                return None
    return joints


def ends(c, z, body, joints):
    """Line of a link now, and at each end the axis in the link and in the body beside it."""
    axes = []
    where = [c.at[j] + c.misfit[list(c.side[j]).index(body), j] for j in joints]
    line = rotation(c, z, body) @ (where[1] - where[0])
    for j in joints:
        other = c.side[j][1 - list(c.side[j]).index(body)]
        e3 = c.frame[j][:, 2]
        axes.append((rotation(c, z, body) @ e3, rotation(c, z, other) @ e3))
    return line / np.linalg.norm(line), axes


def easiest(line, axes, limits):
    """Tilts of both ends at the spin whose larger share of the limits is smallest."""
    def tilts(spin):
        return np.array([angle(beside, turned(own, line, spin)) for own, beside in axes])
    centre, width = 0.0, np.pi
    for _ in range(16):
        trial = centre + width * np.linspace(-1, 1, 81)
        worst = [np.max(tilts(s) / limits) for s in trial]
        centre, width = trial[int(np.argmin(worst))], width / 10
    return tilts(centre)


def tilts_of(c, z, limits):
    """Tilt of every joint, rad."""
    out = np.array([angle(rotation(c, z, a) @ c.frame[j][:, 2], rotation(c, z, b) @ c.frame[j][:, 2])
                    for j, (a, b) in enumerate(c.side)])
    for body in range(1, len(c.bodies)):
        joints = spins(c, body)
        if joints:
            line, axes = ends(c, z, body, joints)
            out[joints] = easiest(line, axes, limits[joints])
    return out


def holds_spring_link(c):
    """Whether the spring stands on a link of two joints, one of them with an off-centre bush."""
    body = c.bodies.index(c.spring["on"])
    joints = [j for j in range(len(c.joints)) if body in c.side[j]]
    return body > 0 and len(joints) == 2 and bool(np.any(c.misfit[:, joints]))


class Comparison:
    """One case: what it says and what the program says."""

    def __init__(self, path, label, tally, extra):
        self.case, self.label, self.tally = read(path), label, tally
        self.study = Study(self.case, extra)

    def see(self, bad, key, got, want, allow, where):
        """One number; no number must stand where there is none."""
        none = want is None or not np.all(np.isfinite(np.array(want, float)))
        if none or got is None:
            diff = 0.0 if none and got is None else np.inf
        else:
            diff = float(np.max(np.abs(np.array(got, float) - np.array(want, float))))
        self.tally.see(key, diff / allow, diff, where)
        if not diff <= allow:
            bad.append(f"{key} {diff:.2e}")

    def half_track(self, corner):
        """Half the vehicle's track, or the wheel as drawn."""
        if "vehicle" in self.case:
            return self.case["vehicle"]["track_mm"][corner] / 2
        return self.case["corners"][corner]["wheel"]["centre_mm"][1]

    def point(self, bad, got, row, fit, where):
        """One place of the path."""
        c = fit.c
        z = fit.path_point(row["travel_mm"])[0]
        rate = row["wheel_rate_N_per_mm"]
        for key in ANGLES:
            self.see(bad, key, got[key], row[key], 1e-6, where)
        self.see(bad, "wheel_centre_mm", got["wheel_centre_mm"], z[:3] - fit.z0[:3], 1e-6, where)
        patch = c.patch_of(z) - c.patch_of(fit.z0)
        self.see(bad, "contact_patch_mm", got["contact_patch_mm"], patch, 1e-6, where)
        self.see(bad, "vertical_load_N", got["vertical_load_N"], row["patch_load_N"],
                 1e-8 * c.static, where)
        self.see(bad, "wheel_rate_N_per_mm", got["wheel_rate_N_per_mm"], rate, 1e-5 * rate, where)
        if not holds_spring_link(c):
            self.see(bad, "parasitic_rate_N_per_mm", got["parasitic_rate_N_per_mm"],
                     row["parasitic_N_per_mm"], 1e-5 * rate, where)
        limits = np.array([j["tilt_limit_deg"] for j in c.joints]) * DEG
        want = tilts_of(c, z, limits) / DEG
        found = {b["joint"]: b["tilt_deg"] for b in got["bearings"]}
        for j, joint in enumerate(c.joints):
            self.see(bad, "tilt_deg", found.get(joint["name"]), want[j], 1e-6, where)

    def result(self, got):
        """One kit in one corner."""
        corner, kit = got["corner"], got["kit"]
        where = f"{self.label} {kit}/{corner}"
        fit, bad = self.study.fitted(corner, kit), []
        by_travel = {p["travel_mm"]: p for p in got["points"]}
        for row in self.study.travel(corner, kit, PLACES):
            point = by_travel.get(row["travel_mm"])
            if point is None:
                bad.append(f"no travel {row['travel_mm']}")
            else:
                self.point(bad, point, row, fit, f"{where} {row['travel_mm']:+.0f}")
        for key, along in (("roll_centre_mm", True), ("roll_centre_load_held_mm", False)):
            height = self.half_track(corner) * fit.roll_centre_slope(along_path=along)
            self.see(bad, key, got["ride_height"][key], height, 1e-5, where)
        self.tally.result(not bad, where, ", ".join(bad))


def with_limits(path, folder, seed):
    """A copy of a case in which every joint has a limit of tilt; its path."""
    with open(path, encoding="utf-8") as f:
        case = json.load(f)
    rng = np.random.default_rng(seed)
    for corner in case["corners"].values():
        for joint in corner.get("joints", []) if isinstance(corner, dict) else []:
            joint["tilt_limit_deg"] = round(float(rng.uniform(5, 30)), 1)
    for bush in case["bushes"].values():
        if isinstance(bush, dict):
            bush.pop("tilt_limit_deg", None)
    out = os.path.join(folder, "limits.json")
    with open(out, "w", encoding="utf-8") as f:
        json.dump(case, f)
    return out


def compare_case(binary, path, label, tally):
    """All results of one case."""
    extra = None
    if any(b["type"] not in ("rates", "ball_joint") for b in read(path)["bushes"].values()):
        rates, why = run(binary, "rates", path)
        extra = {b["name"]: b for b in rates["bushes"]} if rates else None
    found, why = run(binary, "travel", path)
    if found is None:
        tally.result(False, label, why)
        return
    comparison = Comparison(path, label, tally, extra)
    try:
        for got in found["results"]:
            comparison.result(got)
    except (Unsupported, RuntimeError) as e:
        tally.skipped.append(f"{label}: {e}")


def arguments():
    """Command line."""
    p = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    p.add_argument("binary")
    p.add_argument("case", nargs="*")
    p.add_argument("--cases", type=int, default=8, help="how many random cases (8)")
    p.add_argument("--seed", type=int, default=0, help="the first one's seed (0)")
    return p.parse_args()


def main():
    """Compare, and say how it went."""
    a = arguments()
    tally, start = Tally(), time.time()
    named = a.case or random_cases.demonstration()
    with tempfile.TemporaryDirectory() as folder:
        for i, path in enumerate(named):
            compare_case(a.binary, with_limits(path, folder, i), os.path.basename(path), tally)
        for seed in range(a.seed, a.seed + (0 if a.case else a.cases)):
            path = os.path.join(folder, "random.json")
            with open(path, "w", encoding="utf-8") as f:
                json.dump(random_cases.make(seed), f)
            compare_case(a.binary, with_limits(path, folder, seed), f"random {seed}", tally)
    print(f"{'number':34} {'of allowed':>10} {'difference':>11}  where")
    for key, (ratio, diff, where) in sorted(tally.worst.items()):
        print(f"{key:34} {ratio:10.2e} {diff:11.2e}  {where}")
    tally.keep("bump and rebound in a second reading, written apart (tests/crosscheck/reference)")
    for line in tally.skipped:
        print(f"left out: {line}")
    print(f"{tally.numbers} vectors and numbers in {time.time() - start:.0f} s")
    print(f"{tally.passed} passed, {tally.failed} failed")
    return 1 if tally.failed or not tally.passed else 0


if __name__ == "__main__":
    sys.exit(main())
