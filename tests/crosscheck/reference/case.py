# SPDX-License-Identifier: MIT
"""Reads a case (independent reading, used only for tests): joints as numbers, kits resolved.

Only bushes whose rates are given can be read here: `rates`, `ball_joint` and `bearing`. The rates
of other kinds can be handed in by name through the `extra` argument of load_bush.
"""
import json
import math

import numpy as np

from .curves import WAYS, Curve

DEG = math.pi / 180.0
NM_PER_DEG = 1000.0 / DEG      # N mm / rad
GRAVITY = 9.80665              # m/s^2


class Unsupported(Exception):
    """The case needs something that this reading does not cover."""


def _strip(value):
    """Drop comment keys."""
    if isinstance(value, dict):
        return {k: _strip(v) for k, v in value.items() if not k.startswith("//")}
    if isinstance(value, list):
        return [_strip(v) for v in value]
    return value


def read(path):
    """The case file as plain dictionaries."""
    with open(path, encoding="utf-8") as f:
        return _strip(json.load(f))


def _pair(value):
    return list(value) if isinstance(value, list) else [value, value]


class Bush:
    """Rates k (N/mm) and c (N mm/rad) along and about e1, e2, e3; stop; offset in mm; measured curves by way."""

    curves = {}

    def __init__(self, k, c, stop=None, offset=(0.0, 0.0)):
        self.k, self.c = np.array(k, float), np.array(c, float)
        self.gap, self.stop = (stop["gap_mm"], stop["rate_N_per_mm"]) if stop else (math.inf, 0.0)
        self.offset = offset


def _measured(spec, offset):
    """Curves in N/mm and N mm/rad; the rates of their ways are the slopes at zero."""
    curves, k, c = {}, [0.0] * 3, [0.0] * 3
    k[:2] = _pair(spec.get("radial_N_per_mm", 0.0))
    k[2] = spec.get("axial_N_per_mm", 0.0)
    c[:2] = _pair(spec.get("conical_Nm_per_deg", 0.0))
    c[2] = spec.get("torsional_Nm_per_deg", 0.0)
    c = [x * NM_PER_DEG for x in c]
    for key, (kind, way) in WAYS.items():
        if key not in spec:
            continue
        if "points" not in spec[key]:
            raise Unsupported("a curve in a file")
        turns = kind == "theta"
        curve = Curve([(x * DEG, y * 1000.0) if turns else (x, y) for x, y in spec[key]["points"]])
        curves[kind, way] = curve
        for i in (0, 1) if way == "round" else (way,):
            (c if turns else k)[i] = curve.at(0.0)[2]
    bush = Bush(k, c, None, offset)
    bush.curves = curves
    return bush


def load_bush(spec, extra=None, name=None):
    """A bush object of the case file as numbers."""
    kind = spec["type"]
    size, clock = spec.get("offset_mm", 0.0), spec.get("offset_clock_deg", 0.0) * DEG
    offset = (size * math.cos(clock), size * math.sin(clock))
    if kind == "rates":
        return Bush(_pair(spec["radial_N_per_mm"]) + [spec["axial_N_per_mm"]],
                    [x * NM_PER_DEG for x in
                     _pair(spec["conical_Nm_per_deg"]) + [spec["torsional_Nm_per_deg"]]],
                    spec.get("stop"), offset)
    if kind == "measured":
        return _measured(spec, offset)
    if kind in ("ball_joint", "bearing") and "radial_N_per_mm" in spec and "axial_N_per_mm" in spec:
        if spec.get("clearance_mm", 0.0) != 0.0:
            raise Unsupported("a bearing with clearance")
        return Bush(_pair(spec["radial_N_per_mm"]) + [spec["axial_N_per_mm"]], [0, 0, 0],
                    None, offset)
    if extra and name in extra:
        row = extra[name]
        return Bush(_pair(row["radial_N_per_mm"]) + [row["axial_N_per_mm"]],
                    [x * NM_PER_DEG for x in
                     _pair(row["conical_Nm_per_deg"]) + [row["torsional_Nm_per_deg"]]],
                    spec.get("stop"), offset)
    raise Unsupported(f"a bush of type {kind} without given rates")


def kit_fits(case, name):
    """What a kit fits to each joint, with the kits that it is based on."""
    kit = next(k for k in case["kits"] if k["name"] == name)
    fits = kit_fits(case, kit["based_on"]) if "based_on" in kit else {}
    fits.update(kit.get("fits", {}))
    return fits


def bush_frame(joint):
    """Columns e1, e2, e3 in vehicle axes, in the design position."""
    e3 = np.array(joint.get("axis", [0, 0, 1]), float)
    e3 /= np.linalg.norm(e3)
    ref = joint.get("radial_axis")
    if ref is None:
        ref = [1, 0, 0] if abs(e3[2]) > math.cos(20 * DEG) else [0, 0, 1]
    e1 = np.array(ref, float)
    e1 = e1 / np.linalg.norm(e1)
    e1 = e1 - e3 * (e3 @ e1)
    e1 /= np.linalg.norm(e1)
    return np.column_stack([e1, np.cross(e3, e1), e3])


def static_load(case, corner):
    """Static vertical load of one wheel, N."""
    wheel = case["corners"][corner]["wheel"]
    if "static_load_N" in wheel:
        return float(wheel["static_load_N"])
    v = case["vehicle"]
    f = v["front_mass_fraction"] if corner == "front" else 1 - v["front_mass_fraction"]
    return v["mass_kg"] * GRAVITY * f / 2
