# SPDX-License-Identifier: MIT
"""Measured bushes (independent reading, used only for tests): Steffen's cubic and what derives from it.

M. Steffen, Astronomy and Astrophysics 239 (1990) 443-450; at both ends the slope of the last two points.
"""
import numpy as np

WAYS = {"radial": ("u", "round"), "radial_e1": ("u", 0), "radial_e2": ("u", 1), "axial": ("u", 2),
        "conical": ("theta", "round"), "conical_e1": ("theta", 0), "conical_e2": ("theta", 1),
        "torsional": ("theta", 2)}


class Curve:
    """Force over deflection through points that rise in both."""

    def __init__(self, points):
        pts = sorted({(0.0, 0.0)} | {(float(x), float(y)) for x, y in points})
        if pts[0][0] == 0.0:
            pts = [(-x, -y) for x, y in reversed(pts[1:])] + pts
        elif pts[-1][0] == 0.0:
            pts = pts + [(-x, -y) for x, y in reversed(pts[:-1])]
        self.x, self.y = (np.array(v) for v in zip(*pts))
        self._prepare()

    def _prepare(self):
        h, s = np.diff(self.x), np.diff(self.y) / np.diff(self.x)
        d = np.empty(len(self.x))
        d[0], d[-1] = s[0], s[-1]
        p = (s[:-1] * h[1:] + s[1:] * h[:-1]) / (h[:-1] + h[1:])
        d[1:-1] = (np.sign(s[:-1]) + np.sign(s[1:])) * np.minimum(np.minimum(abs(s[:-1]), abs(s[1:])), abs(p) / 2)
        self.d = d
        self.poly = [np.polynomial.Polynomial([self.y[i], d[i], (3 * s[i] - 2 * d[i] - d[i + 1]) / h[i],
                                               (d[i] + d[i + 1] - 2 * s[i]) / h[i] ** 2]) for i in range(len(h))]
        ends = np.concatenate([[0.0], np.cumsum([q.integ()(w) for q, w in zip(self.poly, h)])])
        self.area = ends - ends[int(np.flatnonzero(self.x == 0.0)[0])]

    def on(self, bracket):
        """The same on a bracket: every deflection longer by force / bracket."""
        out = Curve.__new__(Curve)
        out.x, out.y = self.x + self.y / bracket, self.y
        out._prepare()
        return out

    def at(self, x):
        """Energy, force and slope."""
        if x < self.x[0] or x >= self.x[-1]:
            i = 0 if x < self.x[0] else -1
            e, f, k = x - self.x[i], self.y[i], self.d[i]
            return self.area[i] + e * (f + k * e / 2), f + k * e, k
        i = int(np.searchsorted(self.x, x, side="right")) - 1
        q, e = self.poly[i], x - self.x[i]
        return self.area[i] + q.integ()(e), q(e), q.deriv()(e)

    def round(self, r):
        """The same where every direction across the axis counts alike: both sides, halved."""
        (wa, fa, ka), (wb, fb, kb) = self.at(r), self.at(-r)
        return (wa + wb) / 2, (fa - fb) / 2, (ka + kb) / 2


def tangent(curves, kind, value, rates):
    """3 x 3 matrix of the energy's second derivatives at a deflection or rotation."""
    k = np.diag(np.array(rates, float))
    for (what, way), curve in curves.items():
        if what != kind:
            continue
        if way == "round":
            r = float(np.hypot(value[0], value[1]))
            _, f, slope = curve.round(r)
            across = f / r if r > 0 else slope
            e = np.array(value[:2]) / r if r > 0 else np.zeros(2)
            k[:2, :2] = across * np.eye(2) + (slope - across) * np.outer(e, e)
        else:
            k[way, way] = curve.at(value[way])[2]
    return k


def force(curves, kind, value, rates):
    """Three components of force or moment."""
    f = np.array(rates, float) * value
    for (what, way), curve in curves.items():
        if what != kind:
            continue
        if way == "round":
            r = float(np.hypot(value[0], value[1]))
            f[:2] = curve.round(r)[1] * np.array(value[:2]) / r if r > 0 else 0.0
        else:
            f[way] = curve.at(value[way])[1]
    return f
