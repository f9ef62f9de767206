# SPDX-License-Identifier: MIT
"""Ride, harshness and road noise of one corner: an independent reading, used only for tests.

Written from the definitions alone, in the plainest form there is: every body has its six degrees of
freedom, every bracket a massless node of its own, every spring is one row b with a force k (b . q),
the matrices are dense, and the integrals are Gauss-Kronrod sums that halve their panels until they
agree to 1e-6. SI units inside. Bands are those of IEC 61260-1:2014, base ten.
"""
import math

import numpy as np

from reference.case import GRAVITY, bush_frame, kit_fits, static_load
from reference.dynamic_bush import Bush
from reference.quadrature import integrate
from reference.road import road, weight_a, weight_d, weight_k

MM, N_PER_MM = 1e-3, 1e3
BANDS = range(10, 26)


def cross_matrix(r):
    """theta x r = cross_matrix(r) theta, with the sign that goes with it."""
    return np.array([[0, r[2], -r[1]], [-r[2], 0, r[0]], [r[1], -r[0], 0]], float)


def solved(a, b):
    """Of matrices that rounding may leave singular, as that of a link that spins: such a motion takes no part."""
    try:
        return np.linalg.solve(a, b)
    except np.linalg.LinAlgError:
        return np.linalg.solve(a + 1e-16 * np.abs(a).max() * np.eye(a.shape[-1]), b)


class Model:
    """Rows of springs over all degrees of freedom, and their stiffness at each frequency."""

    def __init__(self, case, kit, corner, rates, state=None, draw=None, belt=True):
        """`state`: dashpots of sliders and amplitudes of bushes (ride_depth.State); `draw`: seven levels."""
        self.case, self.ride = case, case["ride"]
        self.state, self.draw = state, draw
        self.spec = case["corners"][corner]
        self.wheel = self.spec["wheel"]
        self.weight = static_load(case, corner)
        self.v = self.ride["speed_km_h"] / 3.6
        self.points = {k: np.array(p, float) * MM for k, p in self.spec["points_mm"].items()}
        self.centre = np.array(self.wheel["centre_mm"], float) * MM
        self.belt = belt and "tyre_mass_kg" in self.wheel
        self.remake = lambda: Model(case, kit, corner, rates, state, draw, belt=False)
        self.rows, self.laws, self.kinds = [], [], []
        self._joints(kit_fits(case, kit), corner, rates)
        self._bodies()
        self._mass()
        self._bushes()
        self._struts()
        self._tyre()
        self.b = np.array(self.rows)
        self.squares = np.einsum("ei,ej->eij", self.b, self.b).reshape(len(self.b), -1).astype(complex)

    # what there is
    def _joints(self, fits, corner, rates):
        self.joints, self.specs = [], {}
        first = kit_fits(self.case, self.case["kits"][0]["name"])
        for j in self.spec["joints"]:
            name = fits.get(f"{corner}.{j['name']}", j.get("bush"))
            kept = name == first.get(f"{corner}.{j['name']}", j.get("bush"))
            spec = name if isinstance(name, dict) else self.case["bushes"][name]
            row = None if isinstance(name, dict) else rates[name]
            amplitude = self.ride.get("amplitude_mm", 0.1) * MM
            if self.state:
                amplitude = self.state.amplitude.get(j["name"], amplitude)
            bush = Bush(spec, row, amplitude)
            if self.draw is not None and spec["type"] in ("rates", "bonded", "unbonded", "measured"):
                bush.vary = (1.3 ** self.draw[2 if kept else 3], 2 ** self.draw[4])
            self.specs[j["name"]] = spec
            bracket = None
            if "chassis" in j["between"]:
                bracket = self.ride.get("default_bracket_N_per_mm", 25000.0)
            bracket = j.get("bracket_N_per_mm", bracket)
            bracket = None if bracket is None else bracket * N_PER_MM
            if bracket is not None and self.draw is not None:
                bracket *= 2 ** self.draw[0]
            self.joints.append((j, bush, bracket))

    def _bodies(self):
        self.origin, self.first = {"upright": self.centre}, {"chassis": 0, "upright": 2}
        self.turns = {"upright": np.eye(3)}
        self.n = 8
        for m in self.spec.get("members", {}):
            at = [self.points[j["at"]] for j, _, _ in self.joints if m in j["between"]]
            self.origin[m], self.first[m] = np.mean(at, axis=0), self.n
            self.turns[m] = self._free_turns(m)
            self.n += 3 + self.turns[m].shape[1]
        if self.belt:  # up and fore and aft
            self.belt_z, self.belt_x = self.n, self.n + 1
            self.n += 2
        self.node = {}
        for j, _, bracket in self.joints:
            if bracket is not None or self.draw is not None:
                self.node[j["name"]] = self.n
                self.n += 3

    def _free_turns(self, member):
        """Directions in which a member turns: not about the line of two joints that turn freely."""
        own = [(j, bush) for j, bush, _ in self.joints if member in j["between"]]
        if len(own) != 2 or any(bush.c.any() for _, bush in own):
            return np.eye(3)
        if self.state and any(j["name"] in self.state.dash for j, _ in own):
            return np.eye(3)
        line = self.points[own[0][0]["at"]] - self.points[own[1][0]["at"]]
        return np.linalg.svd(line[None, :])[2][1:].T

    def motion(self, body, p):
        """Displacement (3 rows) of the point p of a body."""
        t = np.zeros((3, self.n))
        if body == "chassis":
            t[0, 0] = t[2, 1] = 1.0
            return t
        i = self.first[body]
        t[:, i:i + 3] = np.eye(3)
        turns = self.turns[body]
        t[:, i + 3:i + 3 + turns.shape[1]] = cross_matrix(p - self.origin[body]) @ turns
        return t

    def turning(self, body):
        """Rotation (3 rows) of a body."""
        t = np.zeros((3, self.n))
        if body != "chassis":
            i, turns = self.first[body] + 3, self.turns[body]
            t[:, i:i + turns.shape[1]] = turns
        return t

    def _mass(self):
        w, m = self.wheel, np.zeros((self.n, self.n))
        members = {k: v.get("mass_kg", 0.0) for k, v in self.spec.get("members", {}).items()}
        body = self.weight / GRAVITY - w["mass_kg"] - sum(members.values())
        m[0, 0] = m[1, 1] = body
        for i in range(3):
            m[2 + i, 2 + i] = w["mass_kg"]
            m[5 + i, 5 + i] = w["pitch_inertia_kgm2"] if i == 1 else w["tilt_inertia_kgm2"]
        for name, mass in members.items():
            at = [self.points[j["at"]] for j, _, _ in self.joints if name in j["between"]]
            for p in at:
                t = self.motion(name, p)
                m += mass / len(at) * t.T @ t
        if self.belt:
            part = 0.75 * w["tyre_mass_kg"]
            m[2, 2] -= part
            m[4, 4] -= part
            m[self.belt_z, self.belt_z] = m[self.belt_x, self.belt_x] = part
        self.m, self.body_mass = m, body

    def add(self, row, law, kind):
        """One spring: its row, its complex stiffness as a function of f, and what it is."""
        self.rows.append(row)
        self.laws.append(law)
        self.kinds.append(kind)

    def _bushes(self):
        loss, give = 1 + 1j * self.ride.get("bracket_loss_factor", 0.05), 0.0
        if self.draw is not None:
            loss = 1 + 1j * math.sqrt(0.02 * 0.3) * 15 ** (self.draw[1] / 2)
            give = (1 + self.draw[5]) / 50 * 1e-6 / (1 + 0.02j)
        for j, bush, bracket in self.joints:
            p, frame = self.points[j["at"]], bush_frame(j)
            a, b = j["between"]
            path = ("joint", j["name"]) if "chassis" in j["between"] else None
            ends = {x: self.motion(x, p) for x in (a, b)}
            if j["name"] in self.node:
                held = "chassis" if "chassis" in j["between"] else b
                node = np.zeros((3, self.n))
                node[:, self.node[j["name"]]:self.node[j["name"]] + 3] = np.eye(3)
                stiff = 1 / (give + (0.0 if bracket is None else 1 / (bracket * loss)))
                for i in range(3):
                    self.add((ends[held] - node)[i],
                             lambda f, k=stiff: np.full(f.shape, k), path)
                ends[held], path = node, None
            u = frame.T @ (ends[b] - ends[a])
            turn = frame.T @ (self.turning(b) - self.turning(a))
            for i in range(3):
                self.add(u[i], lambda f, k=bush.k[i], s=bush: k * s.factor(f), path)
                self.add(turn[i], lambda f, c=bush.c[i], s=bush: c * s.factor(f), None)
            if self.state:
                self.state.place(self, j["name"], bush, u, turn)

    def _along(self, part):
        p, q = self.points[part["at"]], self.points[part["to"]]
        d = (q - p) / np.linalg.norm(q - p)
        return d @ (self.motion(part["on"], p) - self.motion("chassis", q))

    def _struts(self):
        spring, damper = self.spec.get("spring"), self.spec.get("damper")
        if spring:
            k = spring["rate_N_per_mm"] * N_PER_MM
            self.add(self._along(spring), lambda f: np.full(f.shape, k + 0j), ("spring", "spring"))
        if damper:
            c = damper["rate_Ns_per_mm"] * 1e3 + self.ride.get("damper_friction_Ns_per_mm", 0.0) * 1e3
            if self.state:
                c += self.state.dash.get("damper", 0.0)
            top = damper.get("top_mount_N_per_mm")
            flex = 0.0 if top is None else 1 / (top * N_PER_MM)
            self.add(self._along(damper), lambda f: 1 / (1 / (2j * np.pi * f * c) + flex),
                     ("damper", "damper"))

    def _tyre(self):
        w = self.wheel
        k, c = w["tyre_vertical_N_per_mm"] * N_PER_MM, w.get("tyre_damping_Ns_per_mm", 0.0) * 1e3
        patch = self.centre - [0, 0, w["loaded_radius_mm"] * MM]
        up, along = self.motion("upright", patch)[2], self.motion("upright", self.centre)[0]
        if self.belt:
            hz = w.get("tyre_belt_Hz", 77.0) * (1.0 if self.draw is None else 1.15 ** self.draw[6])
            wall = 0.75 * w["tyre_mass_kg"] * (2 * np.pi * hz) ** 2
            k = 1 / (1 / k - 1 / wall)
            wall = wall * (1 + 1j * w.get("tyre_belt_loss_factor", 0.1))
            for dof, row in ((self.belt_z, up), (self.belt_x, along)):
                own = np.zeros(self.n)
                own[dof] = 1.0
                self.add(row - own, lambda f: np.full(f.shape, wall), ("wall", "wall"))
            up, along = np.eye(self.n)[self.belt_z], np.eye(self.n)[self.belt_x]
        self.tyre = lambda f: k + 2j * np.pi * f * c
        self.add(up, self.tyre, ("tyre", "tyre"))
        self.push = along
        if all(x in w for x in ("tyre_slip_stiffness_N", "tyre_relaxation_mm", "spin_inertia_kgm2")):
            slip, relax = w["tyre_slip_stiffness_N"], w["tyre_relaxation_mm"] * MM
            inertia, radius = w["spin_inertia_kgm2"], w["loaded_radius_mm"] * MM

            def law(f):
                p = 2j * np.pi * f
                return 1 / (relax / slip + self.v / (slip * p) + radius ** 2 / (inertia * p ** 2))
            self.add(self.push, law, ("slip", "slip"))

    # what it does
    def stiffness(self, f, leave_out=()):
        """K at every f, without the named kinds; and the stiffness of each spring."""
        k = np.array([law(f) for law in self.laws]).T
        k = np.where([kind in leave_out for kind in self.kinds], 0, k)
        return (k @ self.squares).reshape(len(f), self.n, self.n), k

    def move(self, f, crackle=None):
        """Movements and forces of springs per metre of road, and by the jumps of friction; what is on the body."""
        f = np.asarray(f, float)
        k, each = self.stiffness(f)
        p = 2j * np.pi * f
        rhs = self.tyre(f)[:, None] * self.b[self.kinds.index(("tyre", "tyre"))]
        rhs = [rhs - (self.weight * p / self.v)[:, None] * self.push]
        if crackle:
            push, in_damper = crackle.push(self, f)
            rhs.append(push)
        q = solved(k + (p ** 2)[:, None, None] * self.m, np.stack(rhs, axis=-1))
        force = [each * (q[:, :, i] @ self.b.T) for i in range(len(rhs))]
        if crackle and in_damper is not None:
            force[1][:, self.kinds.index(("damper", "damper"))] += in_damper
        on_body = [kind is not None and kind[0] in ("joint", "spring", "damper") for kind in self.kinds]
        return [q[:, :, i] for i in range(len(rhs))], force, np.array(on_body)

    def respond(self, f):
        """Chassis z and x, and the force of every spring, per metre of road, at frequencies f; what is on the body."""
        q, force, on_body = self.move(f)
        return q[0][:, 1], q[0][:, 0], force[0], on_body

    def bump(self, samples=8192, step=1e-3, highest=315.0):
        """Net fore-aft and vertical force on the body after the half-sine bump of the case, up to `highest` Hz."""
        height, length = (self.ride["obstacle"][k] * MM for k in ("height_mm", "length_mm"))
        f = np.arange(1, int(highest * samples * step) + 1) / (samples * step)
        s, w = 2j * np.pi * f, np.pi * self.v / length
        x = s * self.ride.get("contact_length_mm", 120.0) * MM / self.v
        shape = height * w * (1 + np.exp(-s * np.pi / w)) / (s ** 2 + w ** 2) * (1 - np.exp(-x)) / x
        z, fore, _, _ = self.respond(f)
        out = []
        for motion in (fore, z):
            spectrum = np.zeros(samples // 2 + 1, complex)
            spectrum[1:len(f) + 1] = self.body_mass * s ** 2 * motion * shape / step
            out.append(np.fft.irfft(spectrum, samples))
        return out

    def natural(self):
        """Body, wheel vertical and wheel fore-aft: undamped, each at the stiffness of its own frequency."""
        if self.belt:  # natural frequencies are those without it
            return self.remake().natural()
        found = []
        for i in range(self.m.shape[0]):
            f = 10.0
            for _ in range(60):
                modes, shares = self._modes_at(f)
                if i >= len(modes):
                    break
                last, f = f, modes[i]
                if abs(f - last) <= 1e-10 * f:
                    found.append((f, shares[i]))
                    break
            if i >= len(modes) or f > 500.0:
                break
        best = [max(found, key=lambda m, a=a: m[1][a]) for a in range(3)]
        return {"body": best[0][0], "wheel_vertical": best[1][0], "wheel_fore_aft": best[2][0]}

    def _modes_at(self, f):
        out = (("damper", "damper"), ("slip", "slip"), ("slider", "slider"))
        k = self.stiffness(np.array([f]), out)[0][0]
        nodes = np.zeros(self.n, bool)
        for i in self.node.values():
            nodes[i:i + 3] = True
        a, b = ~nodes, nodes
        k = (k[np.ix_(a, a)] - k[np.ix_(a, b)] @ np.linalg.solve(k[np.ix_(b, b)], k[np.ix_(b, a)])).real \
            if b.any() else k.real
        m = self.m[np.ix_(a, a)]
        shift = (2 * math.pi * 1.0) ** 2
        # A link that spins between two ball joints has neither stiffness nor inertia: rounding decides whether such a
        # matrix can be solved. Its singular values are 1e-16 of the greatest, those of all other motions above 1e-7.
        mu, v = np.linalg.eig(np.linalg.lstsq(k + shift * m, m, rcond=1e-12)[0])
        keep = (mu.real > 1 / (2 * math.pi * 5000) ** 2)
        w2, v = 1 / mu[keep].real - shift, v[:, keep].real
        order = np.argsort(w2)
        w2, v = w2[order], v[:, order]
        moving = w2 > (2 * math.pi * 0.05) ** 2
        w2, v = w2[moving], v[:, moving]
        total = np.einsum("im,ij,jm->m", v, m, v)
        total = np.where(total > 0, total, np.inf)  # a motion without mass is no mode
        shares = [self.body_mass * v[1] ** 2 / total, self.wheel["mass_kg"] * v[4] ** 2 / total,
                  self.wheel["mass_kg"] * v[2] ** 2 / total]
        return np.sqrt(w2) / (2 * math.pi), np.array(shares).T

    def figures(self, crackle=None):
        """Comfort, harshness, road noise, bands, each path's part of the harshness, and what crackle makes."""
        names = [k for k in dict.fromkeys(self.kinds) if k and k[0] in ("joint", "spring", "damper")]
        member = np.array([[kind == n for kind in self.kinds] for n in names], float)

        def density(f):
            q, force, on_body = self.move(f, crackle)
            by = [road(self.ride, f)] + ([crackle.spectrum(f)] if crackle else [])
            w4 = (2 * np.pi * f) ** 4
            comfort = sum(s * w4 * (weight_k(f) ** 2 * np.abs(m[:, 1]) ** 2 + weight_d(f) ** 2 * np.abs(m[:, 0]) ** 2)
                          for s, m in zip(by, q))
            square = [s[:, None] * np.abs(one) ** 2 for s, one in zip(by, force)]
            alone = square[1][:, on_body].sum(axis=1) if crackle else np.zeros(len(f))
            total, a2 = sum(square)[:, on_body].sum(axis=1), weight_a(f) ** 2
            return np.column_stack([comfort, total, total * a2, alone, alone * a2, sum(square) @ member.T])

        edges = {0.5, 80.0, 20.0, 200.0, 40.0, 315.0}
        band_edges = [10 ** ((n - 0.5) / 10) for n in list(BANDS) + [BANDS[-1] + 1]]
        cells, values = integrate(density, sorted(edges | set(band_edges)))

        def over(low, high, column):
            inside = [(low <= a and b <= high) for a, b in cells]
            return values[inside][:, column].sum(axis=0)
        out = {"comfort_ms2": math.sqrt(over(0.5, 80.0, 0)),
               "harshness_N": math.sqrt(over(20.0, 200.0, 1)),
               "road_noise_N": math.sqrt(over(40.0, 315.0, 2)),
               "bands": [math.sqrt(over(band_edges[i], band_edges[i + 1], 1)) for i in range(len(BANDS))]}
        out["crackle_N"] = [math.sqrt(over(20.0, 200.0, 3)), math.sqrt(over(40.0, 315.0, 4))]
        paths = over(20.0, 200.0, slice(5, None))
        out["paths"] = {n[1]: float(p / paths.sum()) for n, p in zip(names, paths)}
        return out
