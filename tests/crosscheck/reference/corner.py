# SPDX-License-Identifier: MIT
"""The corner as a potential, and its equilibrium (independent reading, used only for tests).

Each body has six coordinates: the displacement of its own reference point, and the components of
the rotation vector from the design position times a length, so that all are in mm. All first and
second derivatives come from jets.py; nothing is derived by hand except the chain rule.
"""
import numpy as np
from scipy import linalg, optimize

from . import jets
from .case import Unsupported, bush_frame, kit_fits, load_bush, static_load
from .curves import force as curve_force, tangent

ELL = 200.0      # mm for one radian
NO_LOAD = np.zeros(10)


def load_vector(patch=(0, 0, 0), moment=(0, 0, 0), hub=(0, 0, 0), travel=0.0):
    """Force at the patch (N), moment (N mm), force at the wheel centre (N), travel (mm)."""
    return np.concatenate([patch, moment, hub, [travel]]).astype(float)


class Corner:
    """One corner with one kit; `offset_scale` fades the off-centre bushes and `adjust` in."""

    def __init__(self, case, corner, kit, extra=None, rotations=True):
        spec = case["corners"][corner]
        self.case, self.name, self.kit = case, corner, kit
        self.bodies = ["upright"] + list(spec.get("members", {}))
        self.points = {k: np.array(v, float) for k, v in spec["points_mm"].items()}
        self.wheel, self.spring = spec["wheel"], spec["spring"]
        self.centre = np.array(self.wheel["centre_mm"], float)
        self.radius = float(self.wheel["loaded_radius_mm"])
        self.static = static_load(case, corner)
        self.joints = spec["joints"]
        self._read_joints(case, kit, extra, rotations)
        self._references()
        self.misfit = np.zeros((2, len(self.joints), 3))
        for j, joint in enumerate(self.joints):
            o = self.bushes[j].offset
            if o != (0.0, 0.0):
                self._move(j, joint["housing"], self.frame[j] @ np.array([o[0], o[1], 0.0]))
        self.has_offset = bool(np.any(self.misfit))
        self.ndof = 6 * len(self.bodies)
        self.accept = 1e-6          # N; a polished state is usually a thousand times better
        self.gauge = self._find_gauge()
        self.basis = self._held_basis()

    # --- reading ------------------------------------------------------------------------------

    def _read_joints(self, case, kit, extra, rotations):
        fits = kit_fits(case, kit) if kit is not None else {}
        self.bushes, frames, sides, at = [], [], [], []
        for joint in self.joints:
            ref = fits.get(f"{self.name}.{joint['name']}", joint.get("bush"))
            name = ref if isinstance(ref, str) else None
            bush = load_bush(case["bushes"][ref] if name else ref, extra, name)
            bracket = joint.get("bracket_N_per_mm")
            if bracket is not None:
                # the rates alone: a stop acts on the whole deflection, bracket and all
                bush.k = bush.k * bracket / (bush.k + bracket)
                bush.curves = {w: c.on(bracket) if w[0] == "u" else c for w, c in bush.curves.items()}
            if not rotations:
                bush.curves = {w: c for w, c in bush.curves.items() if w[0] == "u"}
            self.bushes.append(bush)
            frames.append(bush_frame(joint))
            sides.append([self._index(b) for b in joint["between"]])
            at.append(self.points[joint["at"]])
        self.frame, self.at = np.array(frames), np.array(at)
        self.side = np.array(sides)
        self.k = np.array([b.k for b in self.bushes])
        self.c = np.array([b.c for b in self.bushes]) * (1.0 if rotations else 0.0)
        self._straight()
        self.gap = np.array([b.gap for b in self.bushes])
        self.stop = np.array([b.stop for b in self.bushes])

    def _straight(self):
        """Rates of what was not measured: the energy of the rest comes from the curves."""
        self.k_plain, self.c_plain = self.k.copy(), self.c.copy()
        for j, bush in enumerate(self.bushes):
            for kind, way in bush.curves:
                rates = self.k_plain if kind == "u" else self.c_plain
                rates[j, slice(0, 2) if way == "round" else way] = 0.0

    def _index(self, body):
        return -1 if body == "chassis" else self.bodies.index(body)

    def joints_of(self, body):
        """Numbers of the joints that touch a body."""
        i = self._index(body)
        return [j for j in range(len(self.joints)) if i in self.side[j]]

    def _references(self):
        """The wheel centre for the upright; the middle of its joints for a member."""
        ref = [self.centre]
        for body in self.bodies[1:]:
            ref.append(np.mean(self.at[self.joints_of(body)], axis=0))
        self.ref = np.array(ref + [np.zeros(3)])          # the last one is the chassis
        self.local = np.array([self.at - self.ref[self.side[:, s]] for s in (0, 1)])
        n = 6 * len(self.bodies)
        idx = np.full((len(self.joints), 12), n)
        for s in (0, 1):
            moving = self.side[:, s] >= 0
            idx[moving, 6 * s:6 * s + 6] = 6 * self.side[moving, s, None] + np.arange(6)
        self.idx = idx

    def _move(self, joint, body, vector):
        """Move the point that a joint uses in one of its two bodies."""
        s = 0 if self.joints[joint]["between"][0] == body else 1
        self.misfit[s, joint] += vector

    # --- adjusters ----------------------------------------------------------------------------

    def add_offset(self, joint_name, along_e1, along_e2):
        """A further offset at a joint, mm in the bush plane."""
        j = next(i for i, q in enumerate(self.joints) if q["name"] == joint_name)
        vector = self.frame[j] @ np.array([along_e1, along_e2, 0.0])
        self._move(j, self.joints[j]["housing"], vector)

    def add_length(self, member, mm):
        """A longer member: its two joint points apart, half each."""
        a, b = self.joints_of(member)
        d = self.at[b] - self.at[a]
        d = d / np.linalg.norm(d) * (mm / 2)
        self._move(a, member, -d)
        self._move(b, member, d)

    def add_shim(self, joint_name, along, mm):
        """Move the chassis point of a joint."""
        j = next(i for i, q in enumerate(self.joints) if q["name"] == joint_name)
        d = np.array(along, float)
        self._move(j, "chassis", d / np.linalg.norm(d) * mm)

    # --- the potential ------------------------------------------------------------------------

    def joint_jets(self, y, scale):
        """u and theta of every joint as jets of (tA, rA, tB, rB), r in rad."""
        q = np.vstack([y[:self.ndof].reshape(-1, 6), np.zeros(6)])
        n = 12
        ta, tb = (jets.seed(q[self.side[:, s], :3], 6 * s, n) for s in (0, 1))
        ra, rb = (jets.seed(q[self.side[:, s], 3:] / ELL, 6 * s + 3, n) for s in (0, 1))
        qa, qb = jets.halves(jets.quaternion(jets.stack(ra, rb)))
        xa, xb = (self.local[s] + scale * self.misfit[s] for s in (0, 1))
        apart = (tb - ta + jets.rotate_constant(jets.rotation(qb), xb)).plus(
            self.ref[self.side[:, 1]] - self.ref[self.side[:, 0]])
        # p_A = ref_A + t_A + R_A x_A, so R_A^T (p_B - p_A) = R_A^T (...) - x_A
        u = jets.rotate_back(jets.rotation(qa), apart).plus(-xa)
        turn = self.frame.transpose(0, 2, 1)
        return jets.linear(turn, u), jets.linear(turn, jets.relative_log(qa, qb))

    def bush_energy(self, u, theta):
        """V = W(u) + 1/2 sum c theta^2 for each joint, stop included."""
        energy = None
        for a, rate in ((u, self.k_plain), (theta, self.c_plain)):
            for i in range(3):
                e = jets.square(jets.part(a, slice(i, i + 1))).times(rate[:, i] / 2)
                energy = e if energy is None else energy + e
        energy = self._curve_energy(u, theta, energy)
        r2 = jets.square(jets.part(u, slice(0, 2)))
        r = np.sqrt(r2.v)
        hit = r > self.gap
        if not np.any(hit):
            return energy
        r, gap = np.where(hit, r, 1.0), np.where(hit, self.gap, 0.0)
        ks = np.where(hit, self.stop, 0.0)
        return energy + jets.unary(r2, ks * (r - gap) ** 2 / 2, ks * (r - gap) / (2 * r),
                                   ks * gap / (4 * r ** 3))

    def _curve_energy(self, u, theta, energy):
        """Adds the energies of measured ways, each a function of one component or of the radius squared."""
        for name, a in (("u", u), ("theta", theta)):
            for way in (0, 1, 2, "round"):
                those = [j for j, b in enumerate(self.bushes) if (name, way) in b.curves]
                if not those:
                    continue
                s = jets.square(jets.part(a, slice(0, 2))) if way == "round" else \
                    jets.Jet(a.v[:, way], a.g[:, way], a.h[:, way])
                f = np.zeros((3, len(self.bushes)))
                for j in those:
                    curve = self.bushes[j].curves[name, way]
                    if way == "round":
                        r = max(np.sqrt(s.v[j]), 1e-9)
                        w, force, slope = curve.round(r)
                        f[:, j] = w, force / (2 * r), (slope - force / r) / (4 * r * r)
                    else:
                        f[:, j] = curve.at(s.v[j])
                energy = energy + jets.unary(s, *f)
        return energy

    def tangents(self, u, theta):
        """6 x 6 of every joint at a state: measured ways by their curves, the others at their rates."""
        out = np.zeros((len(self.bushes), 6, 6))
        for j, bush in enumerate(self.bushes):
            out[j, :3, :3] = tangent(bush.curves, "u", u[j], self.k[j])
            out[j, 3:, 3:] = tangent(bush.curves, "theta", theta[j], self.c[j])
        return out

    def elastic(self, y, scale):
        """Gradient and Hessian of all bushes in the scaled coordinates."""
        e = self.bush_energy(*self.joint_jets(y, scale))
        w = np.tile(np.repeat([1.0, 1.0 / ELL], 3), 2)
        n = self.ndof
        grad, hess = np.zeros(n + 1), np.zeros((n + 1, n + 1))
        np.add.at(grad, self.idx, e.g * w)
        np.add.at(hess, (self.idx[:, :, None], self.idx[:, None, :]), e.h * w[:, None] * w)
        return grad[:n], hess[:n, :n]

    def _find_gauge(self):
        """Orthonormal directions that cost nothing and do not move the upright (free spins)."""
        n = self.ndof
        y = np.zeros(n)
        _, k = self.elastic(y, 0.0)
        lg, _, _ = self.spring_length(y)
        a = np.zeros((n + 1, n + 1))
        a[:n, :n], a[:n, n], a[n, 2] = k, -lg * 1e4, 1e4
        vt = linalg.svd(a)
        free = vt[2][vt[1] < 1e-9 * vt[1][0]][:, :n]
        if free.size and np.max(np.abs(free[:, :6])) > 1e-6:
            raise Unsupported("a mechanism")
        return free

    def _held_basis(self):
        """Columns that span all unknowns but the free spins, which are held exactly.

        A held spin means that the component of the member's rotation vector along the design
        line of its joints stays zero: the member goes from the one line to the other by the
        shortest turn.
        """
        n = self.ndof
        p = np.eye(n + 1)
        if len(self.gauge):
            rest = linalg.null_space(self.gauge)
            p = linalg.block_diag(rest, np.eye(1))
        return p

    def tangent_solve(self, jac, rhs):
        """Solve with a Jacobian of the full size, free spins held."""
        p = self.basis
        return p @ linalg.solve(p.T @ jac @ p, p.T @ rhs)

    # --- the upright, the spring, the loads -----------------------------------------------------

    def _body_jets(self, y, body):
        q = y[6 * body:6 * body + 6]
        t = jets.seed(q[None, :3], 0, 6)
        r = jets.seed(q[None, 3:] / ELL, 3, 6)
        return t, jets.rotation(jets.quaternion(r))

    @staticmethod
    def _scaled(g, h):
        w = np.repeat([1.0, 1.0 / ELL], 3)
        return g * w, h * w[:, None] * w

    def spring_length(self, y):
        """Gradient, Hessian (full size) and value of the spring's length."""
        body = self._index(self.spring["on"])
        t, rot = self._body_jets(y, body)
        x = (self.points[self.spring["at"]] - self.ref[body])[None]
        p = (t + jets.rotate_constant(rot, x)).plus(
            self.ref[body] - self.points[self.spring["to"]])
        s = jets.square(p)
        length = np.sqrt(s.v)
        e = jets.unary(s, length, 0.5 / length, -0.25 / length ** 3)
        g, h = self._scaled(e.g[0], e.h[0])
        gg, hh = np.zeros(self.ndof), np.zeros((self.ndof, self.ndof))
        sl = slice(6 * body, 6 * body + 6)
        gg[sl], hh[sl, sl] = g, h
        return gg, hh, length[0]

    def applied(self, y, load):
        """Generalised dead loads on the upright (six) and their derivatives."""
        t, rot = self._body_jets(y, 0)
        patch = t + jets.rotate_constant(rot, np.array([[0.0, 0.0, -self.radius]]))
        f, m, hub = load[:3], load[3:6], load[6:9]
        g = f @ patch.g[0] + hub @ t.g[0]
        h = np.einsum("i,imn->mn", f, patch.h[0])
        r = rot.v[0].reshape(3, 3)
        rg = np.moveaxis(rot.g[0].reshape(3, 3, 6), 2, 0)
        rh = np.moveaxis(rot.h[0].reshape(3, 3, 6, 6), (2, 3), (0, 1))
        spin = rg @ r.T                                     # m: [omega_m x]
        dspin = rh @ r.T + rg[:, None] @ rg[None].transpose(0, 1, 3, 2)
        g = g + self._axial(spin) @ m
        h = h + self._axial(dspin) @ m
        return self._scaled(g, h)

    @staticmethod
    def _axial(w):
        return 0.5 * np.stack([w[..., 2, 1] - w[..., 1, 2], w[..., 0, 2] - w[..., 2, 0],
                               w[..., 1, 0] - w[..., 0, 1]], -1)

    # --- equilibrium --------------------------------------------------------------------------
    # The vector of unknowns is y and one more, p. Three questions are asked of it:
    #   travel : travel given, p is the spring's force
    #   dive   : p is again the force, but tied to its value at S0 by the spring's rate
    #   path   : travel given, spring as in `dive`, p is the vertical load at the patch

    def residual(self, z, load, scale, mode="travel", s0=None):
        """Residual and Jacobian; s0 = (force, length) of the spring at S0."""
        n = self.ndof
        y, p = z[:n], z[n]
        grad, hess = self.elastic(y, scale)
        lg, lh, length = self.spring_length(y)
        rate = self.spring["rate_N_per_mm"]
        force = p if mode == "travel" else s0[0] + rate * (s0[1] - length)
        if mode == "path":
            load = load.copy()
            load[2] += p
        q, dq = self.applied(y, load)
        res, jac = np.zeros(n + 1), np.zeros((n + 1, n + 1))
        res[:n] = grad - force * lg
        jac[:n, :n] = hess - force * lh
        res[:6] -= q
        jac[:6, :6] -= dq
        if mode == "travel":
            jac[:n, n] = -lg
        else:
            jac[:n, :n] += rate * np.outer(lg, lg)
        if mode == "path":
            jac[:6, n] = -self.applied(y, np.array([0, 0, 1.0] + [0] * 7))[0]
        if mode == "dive":
            res[n], jac[n, n] = p - force, 1.0
            jac[n, :n] = rate * lg
        else:
            res[n], jac[n, 2] = 1e3 * (y[2] - load[9]), 1e3
        return res, jac

    def _root(self, z, *args):
        p = self.basis

        def held(w):
            res, jac = self.residual(p @ w, *args)
            return p.T @ res, p.T @ jac @ p
        w = optimize.root(held, p.T @ z, jac=True, method="hybr",
                          options={"xtol": 1e-13, "maxfev": 200}).x
        last = np.inf
        for _ in range(6):        # polish: the last digits, by the same derivatives
            res, jac = held(w)
            size = np.max(np.abs(res))
            if size < 0.1 * self.accept and size >= 0.3 * last:
                return p @ w
            last = size
            w = w - linalg.solve(jac, res)
        return p @ w if size < self.accept else None

    def solve(self, start, load, scale=1.0, mode="travel", s0=None, steps=None):
        """Follow the loads from a known state (z, load, scale) to the wanted ones."""
        z0, load0, scale0 = start
        if steps is None:
            steps = 1 + int(abs(load[9] - load0[9]) / 25) + int(
                np.max(np.abs(load[:9] - load0[:9])[[0, 1, 2, 6, 7, 8]]) / 6000)
        for attempt in range(5):
            z, good = z0, True
            n = steps * 4 ** attempt
            for i in range(1, n + 1):
                f = i / n
                z = self._root(z, load0 + f * (load - load0), scale0 + f * (scale - scale0),
                               mode, s0)
                if z is None:
                    good = False
                    break
            if good:
                return z, load, scale
        raise RuntimeError(f"{self.name}: the reference did not converge")

    def reference(self):
        """S0 without and with the off-centre bushes."""
        start = (np.zeros(self.ndof + 1), NO_LOAD, 0.0)
        load = load_vector(patch=(0, 0, self.static))
        plain = self.solve(start, load, 0.0, steps=3)
        fitted = self.solve(plain, load, 1.0, steps=2) if np.any(self.misfit) else plain
        return plain, fitted

    # --- what is read off a state ---------------------------------------------------------------

    def rotation_of(self, z, body=0):
        """Rotation matrix of a body from design."""
        _, rot = self._body_jets(z, body)
        return rot.v[0].reshape(3, 3)

    def patch_of(self, z):
        """Contact patch, mm from design."""
        r = self.rotation_of(z)
        arm = np.array([0.0, 0.0, -self.radius])
        return z[:3] + r @ arm - arm

    def joint_values(self, z, scale):
        """u (mm), theta (rad), force (N) and moment (N mm) of each joint, bush frame."""
        u, th = self.joint_jets(z, scale)
        r = np.hypot(u.v[:, 0], u.v[:, 1])
        beyond = np.where(r > self.gap, r - np.where(r > self.gap, self.gap, 0.0), 0.0)
        over = self.stop * beyond / np.where(r > 0, r, 1.0)
        force = np.array([curve_force(b.curves, "u", u.v[j], self.k[j]) for j, b in enumerate(self.bushes)])
        force[:, :2] += over[:, None] * u.v[:, :2]
        moment = np.array([curve_force(b.curves, "theta", th.v[j], self.c[j]) for j, b in enumerate(self.bushes)])
        return u.v, th.v, force, moment


def camber_toe(w):
    """Camber and toe-in (rad) of a left wheel whose axis points outboard along w."""
    return -np.arcsin(w[2]), np.arctan2(w[0], w[1])


def wheel_axis(camber, toe):
    """The unit axis with this camber and toe-in (rad)."""
    c = np.cos(camber)
    return np.array([c * np.sin(toe), c * np.cos(toe), -np.sin(camber)])


def log_rotation(r):
    """Rotation vector of a rotation of less than half a turn."""
    v = Corner._axial(r)
    s = np.linalg.norm(v)
    return v * (np.arctan2(s, (np.trace(r) - 1) / 2) / s if s > 1e-14 else 1.0)


def caster(r):
    """Caster change (rad): the top of the upright rearward is positive."""
    return -log_rotation(r)[1]
