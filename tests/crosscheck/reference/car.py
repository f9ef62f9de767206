# SPDX-License-Identifier: MIT
"""Axles and the whole car as one potential (independent reading, used only for tests).

Every body, the chassis too, stands in the road's axes with a quaternion and a displacement. The energy of a joint
of the right side is that of the left one, asked of the mirror images of its two bodies. First derivatives come
from a complex step, exact to rounding; Newton's matrix from differences of these. SI units inside.
"""
import numpy as np

from .case import bush_frame, load_bush

STEP = 1e-30            # of the complex step
HOLD = 1e8              # N m/rad: what keeps a link from spinning about its own line
MIRROR = np.array([1.0, -1.0, 1.0])
G0 = 9.80665


def _series(s2, terms):
    """sum terms[i] s2^i."""
    out = np.zeros_like(s2)
    for t in reversed(terms):
        out = out * s2 + t
    return out


COS = [(-1.0) ** i / np.prod(np.arange(1, 2 * i + 1, dtype=float)) / 4.0 ** i for i in range(14)]
SINC = [0.5 * (-1.0) ** i / np.prod(np.arange(1, 2 * i + 2, dtype=float)) / 4.0 ** i for i in range(14)]
ASIN = [2.0]
for _i in range(1, 40):
    ASIN.append(ASIN[-1] * (2 * _i - 1) ** 2 / (2.0 * _i * (2 * _i + 1)))


def quaternion(r):
    """Of a rotation vector (last axis)."""
    s2 = (r * r).sum(-1)
    return np.concatenate([_series(s2, COS)[..., None], r * _series(s2, SINC)[..., None]], -1)


def product(a, b):
    """Hamilton's product."""
    w = a[..., 0] * b[..., 0] - (a[..., 1:] * b[..., 1:]).sum(-1)
    v = a[..., :1] * b[..., 1:] + b[..., :1] * a[..., 1:] + np.cross(a[..., 1:], b[..., 1:])
    return np.concatenate([w[..., None], v], -1)


def conjugate(q):
    """The reverse rotation."""
    return q * np.array([1.0, -1.0, -1.0, -1.0])


def rotate(q, x):
    """x turned by q."""
    t = 2.0 * np.cross(q[..., 1:], x)
    return x + q[..., :1] * t + np.cross(q[..., 1:], t)


def rotation_vector(q):
    """Of a quaternion near the identity (less than about 100 degrees)."""
    q = q * np.where(q[..., :1].real < 0, -1.0, 1.0)
    s2 = (q[..., 1:] ** 2).sum(-1)
    return q[..., 1:] * _series(s2, ASIN)[..., None]


def matrix(q):
    """3 x 3 of a real quaternion."""
    return np.stack([rotate(q, e) for e in np.eye(3)], -1)


def camber_toe(w):
    """Of a left wheel's axis."""
    return -np.arcsin(w[2]), np.arctan2(w[0], w[1])


def wheel_axis(camber, toe):
    """The unit axis with this camber and toe-in (rad)."""
    return np.array([np.cos(camber) * np.sin(toe), np.cos(camber) * np.cos(toe), -np.sin(camber)])


def fits_of(case, kit):
    """(axle, side, joint) -> bush of a kit: its bases first, and in each the wide names before the narrow."""
    spec = next(k for k in case["kits"] if k["name"] == kit)
    out = dict(fits_of(case, spec["based_on"])) if "based_on" in spec else {}
    for narrow in (False, True):
        for key, bush in spec.get("fits", {}).items():
            axle, name = key.split(".", 1)
            side, _, rest = name.partition(".")
            if (side in ("left", "right")) != narrow:
                continue
            for s in ([side] if narrow else ["left", "right"]):
                out[axle, s, rest if narrow else name] = bush
    return out


class Bodies:
    """The bodies, joints and springs of some axles; `names` tells where each stands."""

    def __init__(self, case, kit, axles, extra=None):
        self.case, self.axles, self.extra = case, axles, extra
        self.fits = fits_of(case, kit) if kit else {}
        self.index = {("chassis",): 0}
        self.joints, self.springs, self.wheels, self.shift = [], [], {}, {}
        for axle in axles:
            self._read_axle(axle)
        self.n = len(self.index) - 1
        self._pack()
        self._find_holds()

    def _body(self, *key):
        return self.index.setdefault(key, len(self.index))

    def _place(self, spec, axle, at):
        p = spec["points_mm"][at] if isinstance(at, str) else at
        return np.array(p, float) * 1e-3 + self.shift[axle]

    def _read_axle(self, axle):
        spec = self.case["corners"][axle]
        shared = self.case.get("axles", {}).get(axle, {})
        centre = np.array(spec["wheel"]["centre_mm"], float) * 1e-3
        far = self.case["vehicle"]["wheelbase_mm"] * 1e-3 if axle == "rear" and "vehicle" in self.case else 0.0
        self.shift[axle] = np.array([-far - centre[0], 0.0, 0.0])

        def own(side, name):
            if name == "chassis":
                return 0
            if name in shared.get("members", {}):
                return self._body(axle, "shared", name)
            return self._body(axle, side, name)

        def of_axle(name, swap):
            side, _, rest = name.partition(".")
            if side not in ("left", "right"):
                return own(None, name)
            return self._body(axle, {"left": "right", "right": "left"}[side] if swap else side, rest)

        for side in ("left", "right"):
            self._body(axle, side, "upright")
            for j in spec["joints"]:
                a, b = (own(side, n) for n in j["between"])
                housing = own(side, j["housing"]) if "housing" in j else None
                self._joint(axle, spec, j, side, side == "right", a, b, housing)
            s = spec["spring"]
            self.springs.append(dict(axle=axle, side=side, body=own(side, s["on"]), mirrored=side == "right",
                                     at=self._place(spec, axle, s["at"]), to=self._place(spec, axle, s["to"]),
                                     rate=s["rate_N_per_mm"] * 1e3))
            self.wheels[axle, side] = dict(body=self._body(axle, side, "upright"), centre=centre + self.shift[axle],
                                           radius=spec["wheel"]["loaded_radius_mm"] * 1e-3, spec=spec["wheel"])
        for j in shared.get("joints", []):
            y = self._place(shared, axle, j["at"])[1]
            pair = y != 0.0 and j.get("mirrored", True)
            for swap in ([False, True] if pair else [False]):
                a, b = (of_axle(n, swap) for n in j["between"])
                housing = of_axle(j["housing"], swap) if "housing" in j else None
                side = ("right" if swap else "left") if pair else None
                self._joint(axle, shared, j, side, swap, a, b, housing)
        self.has_bar = getattr(self, "has_bar", {})
        self.has_bar[axle] = any({n.split(".")[0] for n in j["between"]} == {"left", "right"}
                                 for j in shared.get("joints", []))
        drive = shared.get("final_drive_on", "chassis")
        self.final_drive = getattr(self, "final_drive", {})
        self.final_drive[axle] = own(None, drive)

    def _joint(self, axle, spec, j, side, mirrored, a, b, housing):
        ref = self.fits.get((axle, side or "left", j["name"]), j["bush"])
        bush = (dict(k=np.full(3, 1e9), c=np.full(3, np.degrees(1e7)), gap=np.inf, stop=0.0, offset=(0, 0)))
        obj = self.case["bushes"][ref] if isinstance(ref, str) else ref
        if obj["type"] != "rigid":
            x = load_bush(obj, self.extra, ref if isinstance(ref, str) else None)
            bush = dict(k=x.k * 1e3, c=x.c * 1e-3, gap=x.gap * 1e-3, stop=x.stop * 1e3, offset=x.offset)
        if "bracket_N_per_mm" in j:
            kb = j["bracket_N_per_mm"] * 1e3
            bush["k"] = bush["k"] * kb / (bush["k"] + kb)
        frame = bush_frame(j)
        at = self._place(spec, axle, j["at"])
        o = frame @ np.array([bush["offset"][0], bush["offset"][1], 0.0]) * 1e-3
        self.joints.append(dict(axle=axle, side=side, name=j["name"], mirrored=mirrored, a=a, b=b, frame=frame, at=at,
                                oa=o if housing == a else 0 * o, ob=o if housing == b and housing != a else 0 * o,
                                **bush))

    def _pack(self):
        js = self.joints
        self.ja = np.array([j["a"] for j in js])
        self.jb = np.array([j["b"] for j in js])
        self.mirrored = np.array([j["mirrored"] for j in js])
        self.frame = np.array([j["frame"] for j in js])
        self.at = np.array([j["at"] for j in js])
        self.offset = np.array([[j["oa"], j["ob"]] for j in js])
        self.k = np.array([j["k"] for j in js])
        self.c = np.array([j["c"] for j in js])
        self.gap = np.array([j["gap"] for j in js])
        self.stop = np.array([j["stop"] for j in js])

    def _of(self, body):
        return [i for i in range(len(self.joints)) if body in (self.ja[i], self.jb[i])]

    def _is_link(self, body, uprights):
        mine = self._of(body)
        return body > 0 and body not in uprights and len(mine) == 2 and not np.any(self.c[mine])

    def _find_holds(self):
        """Members with two joints that both turn freely: (body, unit line), as the left side writes it."""
        self.holds = []
        uprights = {w["body"] for w in self.wheels.values()}
        for body in range(1, self.n + 1):
            mine = self._of(body)
            if body in uprights or np.any(self.c[mine]):
                continue
            if len(mine) > 2:      # a bar's link holds nothing from spinning
                mine = [i for i in mine if not self._is_link(self.ja[i] + self.jb[i] - body, uprights)]
            if len(mine) != 2:
                continue
            ends = []
            for i in mine:
                p = self.at[i] + self.offset[i][0 if self.ja[i] == body else 1]
                ends.append(p * MIRROR if self.mirrored[i] else p)
            line = ends[1] - ends[0]
            if np.linalg.norm(line) > 1e-6:
                self.holds.append((body, line / np.linalg.norm(line)))

    # --- kinematics: z holds six numbers a body, then the chassis' y, z, roll, pitch, yaw -----------------

    def poses(self, z):
        """Quaternion and displacement of every body, chassis first; leading axes of z are kept."""
        z = np.asarray(z)
        own = z[..., :6 * self.n].reshape(z.shape[:-1] + (self.n, 6))
        y, h, roll, pitch, yaw = (z[..., 6 * self.n + i] for i in range(5))
        zero = 0 * y
        q = product(quaternion(np.stack([zero, zero, yaw], -1)),
                    product(quaternion(np.stack([zero, pitch, zero], -1)), quaternion(np.stack([roll, zero, zero], -1))))
        t = np.stack([zero, y, h], -1)
        qs = np.concatenate([q[..., None, :], quaternion(own[..., 3:])], -2)
        ts = np.concatenate([t[..., None, :], own[..., :3]], -2)
        return qs, ts

    @staticmethod
    def _seen(q, t, mirrored):
        """As the mirror shows a pose."""
        m = np.where(mirrored[..., None], MIRROR, 1.0)
        axial = np.where(mirrored[..., None], np.array([1.0, -1.0, 1.0, -1.0]), 1.0)
        return q * axial, t * m

    def strain(self, qa, ta, qb, tb, part):
        """u and theta of every joint in its bush frame, mirrored axes on the right side."""
        qa, ta = self._seen(qa, ta, self.mirrored)
        qb, tb = self._seen(qb, tb, self.mirrored)
        xa, xb = (self.at + part * self.offset[:, s] for s in (0, 1))
        d = rotate(qb, np.broadcast_to(xb, tb.shape)) + tb - rotate(qa, np.broadcast_to(xa, ta.shape)) - ta
        u = np.einsum("jik,...ji->...jk", self.frame, rotate(conjugate(qa), d))
        turn = rotation_vector(product(conjugate(qa), qb))
        return u, np.einsum("jik,...ji->...jk", self.frame, turn)

    def energy(self, u, th):
        """Of every joint."""
        r2 = u[..., 0] ** 2 + u[..., 1] ** 2
        hit = r2.real > self.gap ** 2
        r = np.sqrt(np.where(hit, r2, 1.0))
        over = np.where(hit, r - np.where(np.isfinite(self.gap), self.gap, 0.0), 0.0)
        return 0.5 * ((self.k * u * u).sum(-1) + (self.c * th * th).sum(-1) + self.stop * over * over)

    def _perturbed(self, z):
        """Poses with one coordinate of every body stepped into the imaginary, one of six after the other."""
        z = np.asarray(z)
        steps = np.zeros((6, z.shape[-1]), complex)
        for c in range(6):
            steps[c, c:6 * self.n:6] = 1j * STEP
            if c < 5:
                steps[c, 6 * self.n + c] = 1j * STEP
        return self.poses(z[..., None, :] + steps)

    def _columns(self, body):
        base = np.where(body > 0, 6 * (body - 1), 6 * self.n)
        return base

    def gradient(self, z, part, forces):
        """dV/dz of joints and holds, and minus what springs of these forces do."""
        q, t = self.poses(z)
        qp, tp = self._perturbed(z)
        lead = np.asarray(z).shape[:-1]
        out = np.zeros(lead + (6 * self.n + 6,))

        def put(body, values):
            """values: (..., 6, things), coordinate c of body[i]."""
            for i, b in enumerate(body):
                base = 6 * (b - 1) if b > 0 else 6 * self.n
                out[..., base:base + 6] += values[..., :, i]
        for s in (0, 1):
            who = self.ja if s == 0 else self.jb
            a = (qp[..., self.ja, :], tp[..., self.ja, :]) if s == 0 else (q[..., None, self.ja, :], t[..., None, self.ja, :])
            b = (qp[..., self.jb, :], tp[..., self.jb, :]) if s == 1 else (q[..., None, self.jb, :], t[..., None, self.jb, :])
            a, b = (np.broadcast_arrays(a[0], qp[..., self.ja, :])[0], np.broadcast_arrays(a[1], tp[..., self.ja, :])[0]), (
                np.broadcast_arrays(b[0], qp[..., self.jb, :])[0], np.broadcast_arrays(b[1], tp[..., self.jb, :])[0])
            put(who, self.energy(*self.strain(*a, *b, part)).imag / STEP)
        for body, line in self.holds:
            def held(qc, qb):
                turn = rotation_vector(product(conjugate(qc), qb))
                return 0.5 * HOLD * (turn @ line) ** 2
            put([body], held(q[..., None, 0, :], qp[..., body, :])[..., None].imag / STEP)
            put([0], held(qp[..., 0, :], q[..., None, body, :])[..., None].imag / STEP)
        for i, s in enumerate(self.springs):
            m = MIRROR if s["mirrored"] else np.ones(3)
            for which in (s["body"], 0):
                pb = (qp, tp) if which == s["body"] else (q[..., None, :, :], t[..., None, :, :])
                pc = (qp, tp) if which == 0 else (q[..., None, :, :], t[..., None, :, :])
                d = self._point(pb, s["body"], s["at"] * m) - self._point(pc, 0, s["to"] * m)
                length = np.sqrt((d * d).sum(-1))
                put([which], (-forces[..., i, None] * length.imag / STEP)[..., None])
        return out[..., :6 * self.n + 5]

    @staticmethod
    def _point(pose, body, x):
        q, t = pose
        return rotate(q[..., body, :], np.broadcast_to(x, t[..., body, :].shape)) + t[..., body, :]

    def lengths(self, z):
        """Of every spring."""
        q, t = self.poses(z)
        out = []
        for s in self.springs:
            m = MIRROR if s["mirrored"] else np.ones(3)
            d = self._point((q, t), s["body"], s["at"] * m) - self._point((q, t), 0, s["to"] * m)
            out.append(np.linalg.norm(d, axis=-1))
        return np.stack(out, -1)

    def push(self, z, body, x, force, moment, out):
        """Generalised forces of a force at the point that is now at x and of a moment, in road axes."""
        qp, tp = self._perturbed(z)
        q, t = self.poses(z)
        local = rotate(conjugate(q[..., body, :]), x - t[..., body, :])
        p = rotate(qp[..., body, :], np.broadcast_to(local[..., None, :], tp[..., body, :].shape)) + tp[..., body, :]
        turn = rotation_vector(product(qp[..., body, :], conjugate(q[..., None, body, :])))
        work = (p.imag / STEP * force[..., None, :]).sum(-1) + (turn.imag / STEP * moment[..., None, :]).sum(-1)
        base = 6 * (body - 1) if body > 0 else 6 * self.n
        width = 6 if body > 0 else 5
        out[..., base:base + width] += work[..., :width]

    # --- the linear axle: shares ------------------------------------------------------------------------

    def shares(self, axle, side, camber, toe):
        """Force and moment in every joint under the unit moments of toe and camber, and the reactions."""
        n = 6 * self.n
        z = np.zeros(n + 5)
        q, t = self.poses(z)
        qp, tp = self._perturbed(z)
        nj = len(self.joints)
        b = np.zeros((nj, 6, n + 6))
        for s in (0, 1):
            a_ = (qp[:, self.ja], tp[:, self.ja]) if s == 0 else (np.broadcast_to(q[self.ja], (6, nj, 4)), np.broadcast_to(t[self.ja], (6, nj, 3)))
            b_ = (qp[:, self.jb], tp[:, self.jb]) if s == 1 else (np.broadcast_to(q[self.jb], (6, nj, 4)), np.broadcast_to(t[self.jb], (6, nj, 3)))
            u, th = self.strain(*a_, *b_, 0.0)
            rows = np.concatenate([u, th], -1).imag / STEP          # (6 coordinates, joints, 6)
            for j in range(nj):
                body = (self.ja if s == 0 else self.jb)[j]
                base = 6 * (body - 1) if body > 0 else n
                b[j, :, base:base + 6] += rows[:, j].T
        b = b[:, :, :n]
        rate = np.concatenate([self.k, self.c], 1)
        big = np.einsum("jri,jr,jrk->ik", b, rate, b)
        for body, line in self.holds:
            i = slice(6 * body - 3, 6 * body)
            big[i, i] += HOLD * np.outer(line, line)
        springs, wheels = [s for s in self.springs], list(self.wheels.items())
        m = len(springs)
        a = np.zeros((n + m, n + m))
        a[:n, :n] = big
        scale = 1e6
        for i, s in enumerate(springs):
            mir = MIRROR if s["mirrored"] else np.ones(3)
            at, to = s["at"] * mir, s["to"] * mir
            e = (at - to) / np.linalg.norm(at - to)
            base = 6 * (s["body"] - 1)
            a[n + i, base:base + 3], a[n + i, base + 3:base + 6] = scale * e, scale * np.cross(at, e)
        for i, (_, w) in enumerate(wheels):
            key = wheels[i][0]
            c = w["centre"] * (MIRROR if key[1] == "right" else 1.0)
            base = 6 * (w["body"] - 1)
            a[base:base + 3, n + i], a[base + 3:base + 6, n + i] = scale * np.array([0, 0, 1.0]), scale * np.cross(c, [0, 0, 1.0])
        w = wheel_axis(camber, toe)
        s2, s1 = w[0] ** 2 + w[1] ** 2, np.sqrt(1 - w[2] ** 2)
        out = []
        for m3 in (np.array([w[0] * w[2] / s2, w[1] * w[2] / s2, -1.0]), np.array([-w[1] / s1, w[0] / s1, 0.0])):
            if side == "right":
                m3 = m3 * np.array([-1.0, 1.0, -1.0])
            rhs = np.zeros(n + m)
            base = 6 * (self.wheels[axle, side]["body"] - 1)
            rhs[base + 3:base + 6] = m3
            y = np.linalg.solve(a, rhs)
            y += np.linalg.solve(a, rhs - a @ y)
            f = rate * np.einsum("jri,i->jr", b, y[:n])
            out.append((f, {key: scale * y[n + i] for i, (key, _) in enumerate(wheels)}))
        return out
