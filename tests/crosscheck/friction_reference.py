# SPDX-License-Identifier: MIT
"""Friction at the wheel, a second reading of its definition: friction_reference.py PROGRAM

Small displacements about the design position: K q = f by dense matrices, every bracket a spring in series, free spins
found by least squares over the sliders instead of being held. Rates of shaped bushes are asked of the program; friction
torques come from the case and the material files.
"""
import json
import math
import subprocess
import sys
from pathlib import Path

import numpy as np
from scipy.optimize import minimize

from reference.case import bush_frame, kit_fits, read, static_load
from validation import record

SOURCE = Path(__file__).resolve().parents[2]
DEG = math.pi / 180


def rates_of(program, path):
    """The six rates of every bush of a case [N/m, N m/rad]."""
    return rates_in(json.loads(subprocess.run([program, "rates", path, "--format", "json"], check=True, capture_output=True,
                                              text=True).stdout))


def rates_in(told):
    """The same of what `rates` said."""
    out = {}
    for b in told["bushes"]:
        turn = b["conical_Nm_per_deg"] + [b["torsional_Nm_per_deg"]]
        out[b["name"]] = (np.array(b["radial_N_per_mm"] + [b["axial_N_per_mm"]]) * 1e3, np.array(turn) / DEG)
    return out


def value(material, key):
    entry = material[key]
    return (entry["value"] if isinstance(entry, dict) else entry) * 1e6


def slider_of(spec):
    """Torque without load, more of it per newton, whether only the radial force counts, axes."""
    kind = spec["type"]
    if kind == "bearing":
        mu = spec.get("friction_coefficient", {"ptfe": 0.05, "steel": 0.15}[spec["liner"]])
        return spec["breakaway_Nm"], mu * spec["ball_diameter_mm"] * 1e-3 / 2, False, [0, 1, 2]
    if kind == "unbonded" and "breakaway_Nm" not in spec:
        material = spec["material"]
        if isinstance(material, str):
            material = json.loads((SOURCE / "materials" / f"{material}.json").read_text())
        g, k = value(material, "shear_modulus_MPa"), value(material, "bulk_modulus_MPa")
        a, b, length = (spec[x] * 1e-3 for x in ("inner_diameter_mm", "outer_diameter_mm", "length_mm"))
        a, b, mu = a / 2, b / 2, spec["friction_coefficient"]
        h = length / (2 * (b - a)) * math.sqrt(3 * g / k)
        fit = 0.01 * k * (1 - math.tanh(h) / h)
        return mu * a * 2 * math.pi * a * length * fit, mu * a * 4 / math.pi, True, [2]
    if kind in ("rates", "unbonded", "ball_joint"):
        return spec.get("breakaway_Nm", 0.0), 0.0, False, [0, 1, 2] if kind == "ball_joint" else [2]
    return 0.0, 0.0, False, []


class Corner:
    def __init__(self, case, kit, corner, rates):
        spec = case["corners"][corner]
        self.points = {k: np.array(p, float) * 1e-3 for k, p in spec.get("points_mm", {}).items()}
        bodies = ["upright", *spec.get("members", {})]
        self.n = 6 * len(bodies)
        self.first = {b: 6 * i for i, b in enumerate(bodies)}
        self.centre = np.array(spec["wheel"]["centre_mm"], float) * 1e-3
        self.joints, self.k = [], np.zeros((self.n, self.n))
        fits = kit_fits(case, kit)
        for j in spec["joints"]:
            name = fits.get(f"{corner}.{j['name']}", j["bush"])
            k, c = rates[name]
            bracket = j.get("bracket_N_per_mm")
            k = k.copy()
            if bracket:
                k[k > 0] = 1 / (1 / k[k > 0] + 1 / (bracket * 1e3))
            rows = self.rows(j)
            self.k += rows.T @ np.diag(np.concatenate([k, c])) @ rows
            self.joints.append((j["name"], rows, k, slider_of(case["bushes"][name])))
        self.spring = self.line(spec["spring"])
        self.rate = spec["spring"]["rate_N_per_mm"] * 1e3
        self.damper = self.line(spec["damper"]) if "damper" in spec else None
        self.damper_force = spec.get("damper", {}).get("friction_N", 0.0)
        self.up = self.move("upright", self.centre)[2]
        self.load = static_load(case, corner)

    def place(self, at):
        return self.points[at] if isinstance(at, str) else np.array(at, float) * 1e-3

    def move(self, body, p):
        t = np.zeros((3, self.n))
        if body != "chassis":
            i, r = self.first[body], p - self.centre
            t[:, i:i + 3] = np.eye(3)
            t[:, i + 3:i + 6] = [[0, r[2], -r[1]], [-r[2], 0, r[0]], [r[1], -r[0], 0]]
        return t

    def turn(self, body):
        t = np.zeros((3, self.n))
        if body != "chassis":
            t[:, self.first[body] + 3:self.first[body] + 6] = np.eye(3)
        return t

    def rows(self, j):
        frame, (a, b), p = bush_frame(j), j["between"], self.place(j["at"])
        return np.vstack([frame.T @ (self.move(b, p) - self.move(a, p)), frame.T @ (self.turn(b) - self.turn(a))])

    def line(self, part):
        p, q = self.place(part["at"]), self.place(part["to"])
        return (p - q) / np.linalg.norm(p - q) @ self.move(part["on"], p)

    def solve(self, k, columns, rows, loads, travel):
        """K q + columns x = loads, rows q = travel, of least size where spins are free; and those spins."""
        scale, columns, rows = 1e7, np.atleast_2d(columns), np.atleast_2d(rows)
        m = len(rows)
        a = np.block([[k, scale * columns.T], [scale * rows, np.zeros((m, m))]])
        rhs = np.append(loads, np.full(m, scale * travel))
        q = np.linalg.lstsq(a, rhs, rcond=1e-13)[0]
        for _ in range(3):  # the residual of a system of such different sizes
            q += np.linalg.lstsq(a, rhs - a @ q, rcond=1e-13)[0]
        u, s, vt = np.linalg.svd(a)
        return q[:-m], vt[s < 1e-13 * s[0]][:, :-m]

    def friction(self):
        """(torque or force, N at the wheel) by joint; and the sum."""
        spring, up = np.atleast_2d(self.spring), np.atleast_2d(self.up)
        rest, _ = self.solve(self.k, spring, up, self.load * up.sum(axis=0), 0.0)
        path, spins = self.solve(self.k + self.rate * spring.T @ spring, up, up, np.zeros(self.n), 1.0)
        torque, turning = {}, {}
        for name, rows, k, (free, per_force, radial, axes) in self.joints:
            f = k * (rows[:3] @ rest)
            torque[name] = free + per_force * np.linalg.norm(f[:2] if radial else f)
            turning[name] = rows[3:][axes]
        if len(spins):
            def lost(s):
                q = path + spins.T @ s
                return sum(m * np.sum((turning[n] @ q) ** 2) for n, m in torque.items())
            best = minimize(lost, np.zeros(len(spins)), method="BFGS", options={"gtol": 1e-13})
            for _ in range(3):
                best = minimize(lost, best.x, method="BFGS", options={"gtol": 1e-14})
            path = path + spins.T @ best.x
        wheels = len(up)  # each bears its part
        self.turns = {n: turning[n] @ path for n, m in torque.items() if m > 0}
        ways = np.zeros(1) if self.damper is None else np.atleast_2d(self.damper) @ path
        self.lengthening = float(ways[0])
        out = {n: (m, m * np.linalg.norm(self.turns[n]) / wheels) for n, m in torque.items() if m > 0}
        if self.damper is not None and self.damper_force > 0:
            out["damper"] = (self.damper_force, self.damper_force * np.abs(ways).sum() / wheels)
        return out, sum(w for _, w in out.values())


MIRROR = np.array([1.0, -1.0, 1.0])
WELD = {"type": "rigid"}, (np.full(3, 1e9), np.full(3, 1e7 / DEG))  # 1e6 N/mm, 1e7 N m/deg


class Axle(Corner):
    """Both wheels with what they share, moving alike. Nothing is mirrored but where points and axes lie."""

    def __init__(self, case, kit, corner, rates):
        self.spec, self.shared, self.rates, self.case = case["corners"][corner], case["axles"][corner], rates, case
        self.fits, self.corner = kit_fits(case, kit), corner
        self.centre = np.array(self.spec["wheel"]["centre_mm"], float) * 1e-3
        own = [f"{s}.{b}" for s in ("left", "right") for b in ("upright", *self.spec.get("members", {}))]
        bodies = own + list(self.shared.get("members", {}))
        self.first, self.n = {b: 6 * i for i, b in enumerate(bodies)}, 6 * len(bodies)
        self.joints, self.k = [], np.zeros((self.n, self.n))
        for j in self.spec["joints"]:
            for side in ("left", "right"):
                self.add(f"{side}.{j['name']}", j, self.spec, [self.body(side, b) for b in j["between"]], side == "right")
        for j in self.shared.get("joints", []):
            self.add_shared(j)
        sides = ("left", "right")
        self.spring = np.array([self.strut(self.spec["spring"], s) for s in sides])
        self.rate = self.spec["spring"]["rate_N_per_mm"] * 1e3
        damper = self.spec.get("damper")
        self.damper = np.array([self.strut(damper, s) for s in sides]) if damper else None
        self.damper_force = (damper or {}).get("friction_N", 0.0)
        self.up = np.array([self.move(f"{s}.upright", self.centre * (MIRROR if s == "right" else 1.0))[2] for s in sides])
        self.load = static_load(case, corner)

    def body(self, side, name):
        return name if name == "chassis" or name in self.shared.get("members", {}) else f"{side}.{name}"

    def add_shared(self, j):
        """One, or where it lies off the middle two of them, left and right changed over."""
        place = self.place_in(self.shared, j["at"])
        if place[1] == 0 or not j.get("mirrored", True):
            self.add(j["name"], j, self.shared, j["between"], False)
            return
        turned = [b.replace("left.", "\0").replace("right.", "left.").replace("\0", "right.") for b in j["between"]]
        self.add(f"left.{j['name']}", j, self.shared, j["between"], False)
        self.add(f"right.{j['name']}", j, self.shared, turned, True)

    def place_in(self, owner, at):
        return np.array(owner["points_mm"][at] if isinstance(at, str) else at, float) * 1e-3

    def add(self, name, j, owner, between, mirrored):
        flip = MIRROR if mirrored else np.ones(3)
        frame, p = flip[:, None] * bush_frame(j), flip * self.place_in(owner, j["at"])
        ref = self.fits.get(f"{self.corner}.{name}", self.fits.get(f"{self.corner}.{j['name']}", j["bush"]))
        spec = self.case["bushes"][ref] if isinstance(ref, str) else ref
        spec, (k, c) = WELD if spec["type"] == "rigid" else (spec, self.rates[ref])
        k = k.copy()
        if j.get("bracket_N_per_mm"):
            k[k > 0] = 1 / (1 / k[k > 0] + 1 / (j["bracket_N_per_mm"] * 1e3))
        a, b = between
        rows = np.vstack([frame.T @ (self.move(b, p) - self.move(a, p)), frame.T @ (self.turn(b) - self.turn(a))])
        self.k += rows.T @ np.diag(np.concatenate([k, c])) @ rows
        self.joints.append((name, rows, k, slider_of(spec)))

    def strut(self, part, side):
        flip = MIRROR if side == "right" else 1.0
        p, q = (flip * self.place_in(self.spec, part[x]) for x in ("at", "to"))
        return (p - q) / np.linalg.norm(p - q) @ self.move(self.body(side, part["on"]), p)


def reading(case, kit, corner, rates):
    """One corner, or where its wheels share parts the axle."""
    shares = any(case.get("axles", {}).get(corner, {}).get(x) for x in ("members", "joints"))
    return (Axle if shares else Corner)(case, kit, corner, rates)


def sliders_of(told, kit, corner):
    """Where `ride` has dashpots, in its order."""
    result = next(r for r in told["results"] if (r["kit"], r["corner"]) == (kit, corner))
    return [s["joint"] for s in result["sliders"]]


def meant_sliders(axle, parts):
    """Each joint that rubs once, shared or not, and every damper."""
    dampers = ["left.damper", "right.damper"] if isinstance(axle, Axle) else ["damper"]
    return sorted([n for n, (m, _) in parts.items() if n != "damper" and m > 1e-9] + (dampers if "damper" in parts else []))


def main():
    program, bad, count = sys.argv[1], 0, 0
    for path in sys.argv[2:]:
        case, rates = read(path), rates_of(program, path)
        ride = json.loads(subprocess.run([program, "ride", path, "--format", "json", "--quiet"], check=True,
                                         capture_output=True, text=True).stdout)
        told = json.loads(subprocess.run([program, "travel", path, "--format", "json", "--quiet"], check=True,
                                         capture_output=True, text=True).stdout)
        for r in told["results"]:
            second = reading(case, r["kit"], r["corner"], rates)
            want, wheel = second.friction()
            if sorted(sliders_of(ride, r["kit"], r["corner"])) != meant_sliders(second, want):
                print(f"not ok - {path} {r['kit']} {r['corner']}: ride has sliders at {sliders_of(ride, r['kit'], r['corner'])}")
                bad += 1
            got = {f["joint"]: (f.get("torque_Nm", f.get("force_N")), f["wheel_N"]) for f in r["friction"]}
            pairs = [("at the wheel [N]", wheel, r["friction_N"])]
            for name in {*want, *got}:
                if name not in want or name not in got:
                    print(f"not ok - {path} {r['kit']} {r['corner']}: {name} only in one of both")
                    bad += 1
                    continue
                pairs += [(f"{name} torque", want[name][0], got[name][0]), (f"{name} at the wheel", want[name][1], got[name][1])]
            for what, a, b in pairs:
                record("second reading", "reading", "tests/crosscheck/friction_reference.py", f"friction {what}", a, b, 1e-5)
                count += 1
                if abs(a - b) > 1e-5 * max(1.0, abs(a)):
                    print(f"not ok - {path} {r['kit']} {r['corner']}: {what}: {b}, second reading {a}")
                    bad += 1
    print(f"{'not ok' if bad else 'ok'} - {count} figures of friction agree with a second reading")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
