# SPDX-License-Identifier: MIT
"""Bushes in motion (independent reading, used only for tests). SI units."""
import json
import math
import os

import numpy as np

MATERIALS = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "..", "materials")
N_PER_MM, NM_PER_DEG = 1e3, 180.0 / math.pi


def pair(x):
    """A number or a pair."""
    return list(x) if isinstance(x, list) else [x, x]


def material(name):
    """The values of a compound."""
    if isinstance(name, dict):
        raw = name
    else:
        with open(os.path.join(MATERIALS, f"{name}.json"), encoding="utf-8") as file:
            raw = json.load(file)
    return {k: v["value"] if isinstance(v, dict) else v for k, v in raw.items()}


class Bush:
    """Six static rates and the factor that makes them dynamic."""

    def __init__(self, spec, row, amplitude):
        kind = spec["type"]
        given = spec if kind == "rates" else row
        self.k = np.array(pair(given["radial_N_per_mm"]) + [given["axial_N_per_mm"]]) * N_PER_MM
        turn = pair(given.get("conical_Nm_per_deg", 0.0)) + [given.get("torsional_Nm_per_deg", 0.0)]
        self.c = np.array(turn, float) * NM_PER_DEG
        self.constant = spec.get("dynamic_ratio", 1.0) * (1 + 1j * spec.get("loss_factor", 0.0))
        self.zener, self.payne, self.vary = None, 1.0, None
        if kind in ("bonded", "unbonded"):
            wall = (spec["outer_diameter_mm"] - spec["inner_diameter_mm"]) / 2 * 1e-3
            self._compound(material(spec["material"]), wall, amplitude)

        if kind == "measured" and "dynamic" in spec:
            self._tested(spec["dynamic"], amplitude)

    def _tested(self, d, amplitude):
        """What a rig says across the bush, over its radial rate at zero (0: axial)."""
        still = (self.k[0] + self.k[1]) / 2 or self.k[2]
        self.constant = d["rate_N_per_mm"] * N_PER_MM / still
        self.zener = (d["zener_gain"], d["zener_tau_s"], d["zener_alpha"])
        if d.get("payne_gain"):
            x = amplitude / (d["payne_amplitude_mm"] * 1e-3)
            self.payne = 1 + d["payne_gain"] / (1 + x ** (2 * d["payne_exponent"]))

    def _compound(self, m, wall, amplitude):
        if m.get("zener_gain"):
            self.zener = (m["zener_gain"], m["zener_tau_s"], m["zener_alpha"])
        if m.get("payne_gain"):
            x = amplitude / (m["payne_strain"] * wall)
            self.payne = 1 + m["payne_gain"] / (1 + x ** (2 * m["payne_exponent"]))

    def factor(self, f):
        """Dynamic over static at frequencies f."""
        out = np.full(np.shape(f), self.constant * self.payne, complex)
        if self.zener:
            d, tau, alpha = self.zener
            x = (2j * np.pi * f * tau) ** alpha
            out = out * (1 + d * x / (1 + x))
        if self.vary:  # stiffness, and loss besides
            out = self.vary[0] * (out.real + 1j * self.vary[1] * out.imag)
        return out
