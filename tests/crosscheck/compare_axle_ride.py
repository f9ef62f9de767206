# SPDX-License-Identifier: MIT
"""Ride of axles with shared parts: a second reading, written apart from the program (used only for tests).

    compare_axle_ride.py GIVEWAY_BINARY CASE.json KIT CORNER [...]

Both wheels, all that they share and the chassis stand as they are, right side and all, in six degrees of freedom a
body: no mirror is used but to place the right side's frames. Both wheels are driven alike. Body force is the
root-sum-square over every attachment of the axle over sqrt 2; of modes counts the mean of both wheels' movement. So
that nothing hangs on laws of compounds, every bush gets the static rates that the program tells for it and a loss
factor of its own; figures agree to 1e-6.
"""
import json
import math
import os
import sys
import tempfile

for _v in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
    os.environ.setdefault(_v, "1")
sys.dont_write_bytecode = True

import numpy as np  # noqa: E402

from compare_corner import Tally, run  # noqa: E402
from reference.case import GRAVITY, bush_frame, kit_fits, read, static_load  # noqa: E402
from reference.dynamic_bush import Bush  # noqa: E402
from ride_reference import MM, N_PER_MM, Model, cross_matrix  # noqa: E402

MIRROR, AXIAL, FIGURE = np.diag([1.0, -1.0, 1.0]), np.diag([-1.0, 1.0, -1.0]), 1e-6
RIGID = {"type": "rates", "radial_N_per_mm": 1e6, "axial_N_per_mm": 1e6, "conical_Nm_per_deg": 1e7, "torsional_Nm_per_deg": 1e7}


class Axle(Model):
    """An axle with both its wheels; the rest is the second reading of a corner."""

    def __init__(self, case, kit, corner):
        self.case, self.ride, self.state, self.draw, self.belt = case, case["ride"], None, None, False
        self.corner, self.spec = corner, case["corners"][corner]
        self.shared = case.get("axles", {}).get(corner, {})
        self.wheel, self.weight = self.spec["wheel"], static_load(case, corner)
        self.v = self.ride["speed_km_h"] / 3.6
        self.centre = np.array(self.wheel["centre_mm"], float) * MM
        self.rows, self.laws, self.kinds, self.joints = [], [], [], []
        self._all_joints(kit_fits(case, kit))
        self._all_bodies()
        self._all_mass()
        self._all_bushes()
        for side in ("left", "right"):
            self._both_struts(side)
            self._both_tyre(side)
        self.b = np.array(self.rows)
        self.squares = np.einsum("ei,ej->eij", self.b, self.b).reshape(len(self.b), -1).astype(complex)

    def _owner(self, side, name):
        if name == "chassis" or name in self.shared.get("members", {}) or "." in name:
            return name
        return f"{side}.{name}"

    def _place(self, spec, at, side):
        p = np.array(spec.get("points_mm", {})[at] if isinstance(at, str) else at, float) * MM
        return MIRROR @ p if side == "right" else p

    def _add_joint(self, fits, spec, j, side, twin):
        a, b = (self._owner(side, x) for x in j["between"])
        if twin:
            swap = {"left": "right", "right": "left"}
            a, b = (".".join([swap[x.split(".")[0]]] + x.split(".")[1:]) if "." in x and spec is self.shared else x for x in (a, b))
        names = [f"{self.corner}.{j['name']}", f"{self.corner}.{side}.{j['name']}"]
        bush = j.get("bush")
        for name in names:
            bush = fits.get(name, bush)
        bracket = None  # brackets are the chassis' own; what a joint between members gives there is in its static rates alone
        if "chassis" in (a, b):
            bracket = j.get("bracket_N_per_mm", self.ride.get("default_bracket_N_per_mm", 25000.0))
        described = self.case["bushes"][bush]
        law = Bush(RIGID if described["type"] == "rigid" else described, None, 0.0)
        self.joints.append({"name": f"{side}.{j['name']}" if side else j["name"], "a": a, "b": b, "law": law,
                            "at": self._place(spec, j["at"], "right" if twin else side or "left"), "frame": bush_frame(j),
                            "mirrored": side == "right", "bracket": None if bracket is None else bracket * N_PER_MM})

    def _all_joints(self, fits):
        for side in ("left", "right"):
            for j in self.spec["joints"]:
                self._add_joint(fits, self.spec, j, side, False)
        for j in self.shared.get("joints", []):
            pair = self._place(self.shared, j["at"], "left")[1] != 0.0 and j.get("mirrored", True)
            self._add_joint(fits, self.shared, j, "left" if pair else None, False)
            if pair:
                self._add_joint(fits, self.shared, j, "right", True)

    def _all_bodies(self):
        names = [f"{s}.{m}" for s in ("left", "right") for m in self.spec.get("members", {})]
        self.origin = {"left.upright": self.centre, "right.upright": MIRROR @ self.centre}
        self.first, self.turns, self.n = {"chassis": 0}, {}, 2
        for body in ["left.upright", "right.upright"] + names + list(self.shared.get("members", {})):
            own = [j for j in self.joints if body in (j["a"], j["b"])]
            self.origin.setdefault(body, np.mean([j["at"] for j in own], axis=0))
            self.first[body], self.turns[body] = self.n, np.eye(3)
            if len(own) == 2 and not any(j["law"].c.any() for j in own):
                self.turns[body] = np.linalg.svd((own[0]["at"] - own[1]["at"])[None, :])[2][1:].T
            self.n += 3 + self.turns[body].shape[1]
        self.node = {}
        for j in self.joints:
            if j["bracket"] is not None:
                self.node[j["name"]] = self.n
                self.n += 3

    def _all_mass(self):
        wheel, m = self.wheel, np.zeros((self.n, self.n))
        members = {f"{s}.{k}": v.get("mass_kg", 0.0) for s in ("left", "right") for k, v in self.spec.get("members", {}).items()}
        members.update({k: v.get("mass_kg", 0.0) for k, v in self.shared.get("members", {}).items()})
        self.body_mass = 2 * (self.weight / GRAVITY - wheel["mass_kg"]) - sum(members.values())
        m[0, 0] = m[1, 1] = self.body_mass
        for side in ("left", "right"):
            i = self.first[f"{side}.upright"]
            for k in range(3):
                m[i + k, i + k] = wheel["mass_kg"]
                m[i + 3 + k, i + 3 + k] = wheel["pitch_inertia_kgm2" if k == 1 else "tilt_inertia_kgm2"]
        for name, mass in members.items():
            at = [j["at"] for j in self.joints if name in (j["a"], j["b"])]
            for p in at:
                t = self.motion(name, p)
                m += mass / len(at) * t.T @ t
        self.m = m

    def _all_bushes(self):
        loss = 1 + 1j * self.ride.get("bracket_loss_factor", 0.05)
        for j in self.joints:
            frame, seen = j["frame"].T, (MIRROR, AXIAL) if j["mirrored"] else (np.eye(3), np.eye(3))
            path = ("joint", j["name"]) if "chassis" in (j["a"], j["b"]) else None
            ends = {x: self.motion(x, j["at"]) for x in (j["a"], j["b"])}
            if j["name"] in self.node:
                held = "chassis" if path else j["b"]
                node = np.zeros((3, self.n))
                node[:, self.node[j["name"]]:self.node[j["name"]] + 3] = np.eye(3)
                for i in range(3):
                    self.add((ends[held] - node)[i], lambda f, k=j["bracket"] * loss: np.full(f.shape, k), path)
                ends[held], path = node, None
            u = frame @ seen[0] @ (ends[j["b"]] - ends[j["a"]])
            turn = frame @ seen[1] @ (self.turning(j["b"]) - self.turning(j["a"]))
            for i in range(3):
                self.add(u[i], lambda f, k=j["law"].k[i], s=j["law"]: k * s.factor(f), path)
                self.add(turn[i], lambda f, c=j["law"].c[i], s=j["law"]: c * s.factor(f), None)

    def _both_struts(self, side):
        for kind in ("spring", "damper"):
            part = self.spec.get(kind)
            if not part:
                continue
            p, q = (self._place(self.spec, part[end], side) for end in ("at", "to"))
            row = (q - p) / np.linalg.norm(q - p) @ (self.motion(self._owner(side, part["on"]), p) - self.motion("chassis", q))
            if kind == "spring":
                self.add(row, lambda f, k=part["rate_N_per_mm"] * N_PER_MM: np.full(f.shape, k + 0j), (kind, side))
                continue
            c, top = part["rate_Ns_per_mm"] * 1e3, part.get("top_mount_N_per_mm")
            flex = 0.0 if top is None else 1 / (top * N_PER_MM)
            self.add(row, lambda f, c=c, flex=flex: 1 / (1 / (2j * np.pi * f * c) + flex), (kind, side))

    def _both_tyre(self, side):
        w, body = self.wheel, f"{side}.upright"
        k, c = w["tyre_vertical_N_per_mm"] * N_PER_MM, w.get("tyre_damping_Ns_per_mm", 0.0) * 1e3
        patch = self.origin[body] - [0, 0, w["loaded_radius_mm"] * MM]
        along = self.motion(body, self.origin[body])[0]
        self.tyre = lambda f: k + 2j * np.pi * f * c
        self.add(self.motion(body, patch)[2], self.tyre, ("tyre", side))
        self.push = along if side == "left" else self.push + along
        if "tyre_slip_stiffness_N" in w:
            slip, relax = w["tyre_slip_stiffness_N"], w["tyre_relaxation_mm"] * MM
            inertia, radius = w["spin_inertia_kgm2"], w["loaded_radius_mm"] * MM

            def law(f):
                p = 2j * np.pi * f
                return 1 / (relax / slip + self.v / (slip * p) + radius ** 2 / (inertia * p ** 2))
            self.add(along, law, ("slip", "slip"))

    def stiffness(self, f, leave_out=()):
        """Dampers of both sides have names of their own."""
        left = set(leave_out)
        if ("damper", "damper") in left:
            left |= {("damper", "left"), ("damper", "right")}
        return super().stiffness(f, tuple(left))

    def move(self, f, crackle=None):
        """Both wheels driven alike."""
        f = np.asarray(f, float)
        k, each = self.stiffness(f)
        p = 2j * np.pi * f
        rows = sum(self.b[self.kinds.index(("tyre", side))] for side in ("left", "right"))
        rhs = self.tyre(f)[:, None] * rows - (self.weight * p / self.v)[:, None] * self.push
        q = np.linalg.solve(k + (p ** 2)[:, None, None] * self.m, rhs[..., None])[..., 0]
        on_body = np.array([kind is not None and kind[0] in ("joint", "spring", "damper") for kind in self.kinds])
        return [q], [each * (q @ self.b.T) / math.sqrt(2)], on_body

    def _modes_at(self, f):
        hz, _ = super()._modes_at(f)
        k = self.stiffness(np.array([f]), (("damper", "damper"), ("slip", "slip")))[0][0]
        nodes = np.zeros(self.n, bool)
        for i in self.node.values():
            nodes[i:i + 3] = True
        a, b = ~nodes, nodes
        k = (k[np.ix_(a, a)] - k[np.ix_(a, b)] @ np.linalg.solve(k[np.ix_(b, b)], k[np.ix_(b, a)])).real
        m = self.m[np.ix_(a, a)]
        mu, v = np.linalg.eig(np.linalg.lstsq(k + (2 * math.pi) ** 2 * m, m, rcond=1e-12)[0])  # see ride_reference.py
        keep = mu.real > 1 / (2 * math.pi * 5000) ** 2
        w2, v = 1 / mu[keep].real - (2 * math.pi) ** 2, v[:, keep].real
        order = np.argsort(w2)
        w2, v = w2[order], v[:, order]
        v = v[:, w2 > (2 * math.pi * 0.05) ** 2]
        total = np.einsum("im,ij,jm->m", v, m, v)
        total, wheel = np.where(total > 0, total, np.inf), 2 * self.wheel["mass_kg"]
        i, j = self.first["left.upright"], self.first["right.upright"]
        mean = (v[i:i + 3] + v[j:j + 3]) / 2
        shares = [self.body_mass * v[1] ** 2 / total, wheel * mean[2] ** 2 / total, wheel * mean[0] ** 2 / total]
        return hz, np.array(shares).T


def made_plain(path, binary, folder):
    """The case with the program's static rates for every bush and losses of their own; no friction, no belt."""
    case, told = read(path), run(binary, "rates", path)[0]
    rates = {b["name"]: b for b in told["bushes"]}
    for i, (name, bush) in enumerate(case["bushes"].items()):
        if bush["type"] == "rigid":
            continue
        row = dict(rates[name], **bush) if bush["type"] == "rates" else rates[name]
        case["bushes"][name] = {"type": "rates", "loss_factor": 0.03 + 0.01 * (i % 7), "dynamic_ratio": 1.1 + 0.1 * (i % 4)}
        for key in ("radial_N_per_mm", "axial_N_per_mm", "conical_Nm_per_deg", "torsional_Nm_per_deg"):
            case["bushes"][name][key] = row.get(key) or 0
    for key in ("choose", "align", "jobs", "uncertain"):
        case.pop(key, None)
    for corner in case["corners"].values():
        corner["damper"].pop("friction_N", None)
        for key in ("tyre_mass_kg", "tyre_belt_Hz", "tyre_belt_loss_factor"):
            corner["wheel"].pop(key, None)
    case["kits"] = [k for k in case["kits"] if "based_on" not in k]
    out = os.path.join(folder, os.path.basename(path))
    with open(out, "w", encoding="utf-8") as f:
        json.dump(case, f)
    return case, out


def compare(binary, path, kit, corner, tally):
    """One kit on one axle."""
    with tempfile.TemporaryDirectory() as folder:
        case, plain = made_plain(path, binary, folder)
        told, why = run(binary, "ride", plain, "--kit", kit, "--corner", corner)
    where = f"{os.path.basename(path)} {kit}/{corner}"
    if told is None:
        tally.result(False, where, why)
        return
    got, model = told["results"][0], Axle(case, kit, corner)
    natural, figures = model.natural(), model.figures()
    pairs = [(f"natural_Hz.{k}", got["natural_Hz"][k], v) for k, v in natural.items()]
    pairs += [(k, got[k], figures[k]) for k in ("comfort_ms2", "harshness_N", "road_noise_N")]
    pairs += [("body_force_N", b["body_force_N"], f) for b, f in zip(got["third_octave"], figures["bands"])]
    bad = []
    for key, have, want in pairs:
        off = abs(have / want - 1)
        tally.see(key, off / FIGURE, off, where)
        if not off <= FIGURE:
            bad.append(f"{key} {have:.9g}, here {want:.9g}")
    tally.result(not bad, where, ", ".join(bad))


def main():
    """Compare, and say how it went."""
    binary, words, tally = sys.argv[1], sys.argv[2:], Tally()
    for path, kit, corner in zip(words[::3], words[1::3], words[2::3]):
        compare(binary, path, kit, corner, tally)
    tally.keep("ride of axles in a second reading, both sides as they stand (tests/crosscheck/compare_axle_ride.py)")
    for key, (_, difference, where) in sorted(tally.worst.items()):
        print(f"{key:28} {difference:11.2e}  {where}")
    print(f"{tally.passed} passed, {tally.failed} failed")
    return 1 if tally.failed or not tally.passed else 0


if __name__ == "__main__":
    sys.exit(main())
