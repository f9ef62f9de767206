# SPDX-License-Identifier: MIT
"""A whole corner whose joints and damper rub, marched through time by a general integrator: march_corner.py PROGRAM

Two arms, four bushes and three ball joints with Coulomb friction each, and a damper: the nonlinear equations of the
independent reading (ride_reference.Model) go through SciPy's solve_ivp on a road of harmonics with random phases.
Every body has inertia in every direction here, so nothing is condensed. The bushes' loss factor becomes viscous damping
that loses the same at each natural frequency. Comfort is held within 2 %, the felt force within 0.5 dB, the heard one
within 1.5 dB of the program's linearised figures with their crackle.
"""
import math
import sys

import numpy as np
from scipy.integrate import solve_ivp
from scipy.linalg import eigh

from march import harmonics, told_by
from reference.road import weight_a, weight_d, weight_k
from ride_depth import Depth, rates_in
from validation import record

PERIOD, BEFORE, RATE = 5.0, 1.0, 3200
ROUND = {True: 3e-4, False: 6e-4}  # speed within which friction is rounded: of the damper [m/s], of a joint [rad/s]
LOSS = 0.12


def bush(radial, axial, conical, torsional, breakaway):
    return {"type": "rates", "radial_N_per_mm": radial, "axial_N_per_mm": axial, "conical_Nm_per_deg": conical,
            "torsional_Nm_per_deg": torsional, "loss_factor": LOSS, "breakaway_Nm": breakaway}


def case():
    """Invented: an upper arm on two bushes and a ball joint, a lower one on two bushes and two ball joints."""
    def joint(name, a, b, axis, part):
        return {"name": name, "between": [a, b], "at": name, "axis": axis, "bush": part}
    return {"format": "giveway-case-1", "title": "corner that rubs (invented)",
            "bushes": {"low": bush(2900, 410, 6.1, 1.3, 1.1), "top": bush(2100, 380, 4.7, 0.9, 0.8),
                       "ball": {"type": "ball_joint", "radial_N_per_mm": 9000, "axial_N_per_mm": 9000,
                                "loss_factor": LOSS, "breakaway_Nm": 0.9}},
            "kits": [{"name": "only", "fits": {}}], "loads": [],
            "ride": {"road_class": "B", "speed_km_h": 72.0, "contact_length_mm": 110, "default_bracket_N_per_mm": None},
            "corners": {"front": {
                "wheel": {"centre_mm": [0, 760, 310], "loaded_radius_mm": 305, "rim_diameter_mm": 400, "static_load_N": 3870,
                          "static_camber_deg": 0, "static_toe_deg": 0, "mass_kg": 33.0, "tilt_inertia_kgm2": 0.8,
                          "pitch_inertia_kgm2": 0.6, "tyre_vertical_N_per_mm": 221, "tyre_damping_Ns_per_mm": 0.06},
                "points_mm": {"low_front": [130, 350, 195], "low_rear": [-190, 345, 201], "ball_front": [55, 690, 188],
                              "ball_rear": [-70, 685, 192], "top_front": [90, 420, 455], "top_rear": [-110, 425, 448],
                              "ball_top": [-12, 665, 470], "seat": [-5, 600, 205], "turret": [-20, 560, 640]},
                "members": {"lower": {"mass_kg": 4.2}, "upper": {"mass_kg": 2.1}},
                "joints": [joint("low_front", "chassis", "lower", [1, 0.02, 0], "low"),
                           joint("low_rear", "chassis", "lower", [1, 0.02, 0], "low"),
                           joint("ball_front", "lower", "upright", [0, 0, 1], "ball"),
                           joint("ball_rear", "lower", "upright", [0, 0, 1], "ball"),
                           joint("top_front", "chassis", "upper", [1, -0.02, 0.03], "top"),
                           joint("top_rear", "chassis", "upper", [1, -0.02, 0.03], "top"),
                           joint("ball_top", "upper", "upright", [0, 0, 1], "ball")],
                "spring": {"on": "lower", "at": "seat", "to": "turret", "rate_N_per_mm": 38.0},
                "damper": {"on": "lower", "at": "seat", "to": "turret", "rate_Ns_per_mm": 2.3, "friction_N": 31.0}}}}


def band(f, signal, low, high, weight):
    """Mean square between two frequencies of a signal over a whole period."""
    square = np.abs(np.fft.rfft(signal)) ** 2 * 2 / len(signal) ** 2
    inside = (f >= low) & (f <= high)
    return (square[inside] * weight(f[inside]) ** 2).sum()


class March:
    """The corner in coordinates that are its undamped modes."""

    def __init__(self, spec, rates, told):
        self.ride = spec["ride"]
        depth = Depth(spec, "only", "front", {b["name"]: b for b in rates["bushes"]}, rates_in(rates), told)
        model = depth.model
        kind = np.array([k[0] if k else "" for k in model.kinds])
        at = np.array([100.0])
        stiff = np.array([law(at)[0] for law in model.laws])
        solid = ~np.isin(kind, ("slider", "damper", "tyre"))
        tyre, damper = (model.b[list(kind).index(x)] for x in ("tyre", "damper"))
        self.kt, self.ct = (spec["corners"]["front"]["wheel"][k] * 1e3 for k in ("tyre_vertical_N_per_mm", "tyre_damping_Ns_per_mm"))
        self.c = spec["corners"]["front"]["damper"]["rate_Ns_per_mm"] * 1e3
        b, k = model.b[solid], stiff[solid]
        square, self.v = eigh((b.T * k.real) @ b + self.kt * np.outer(tyre, tyre), model.m)
        w = np.sqrt(np.maximum(square, 0.0))
        self.k = np.maximum(square, 0.0)
        moved = np.maximum(w, 2 * math.pi * 0.5)
        lost = (b @ self.v).T * k.imag @ (b @ self.v) / np.sqrt(np.outer(moved, moved))
        tyre, damper = tyre @ self.v, damper @ self.v
        self.d = lost + self.ct * np.outer(tyre, tyre) + self.c * np.outer(damper, damper)
        self.tyre, self.damper, self.push = tyre, damper, model.push @ self.v
        self.per_slope = -model.weight / model.v
        self.path = (b @ self.v)[[i for i, x in enumerate(kind[solid]) if x in ("joint", "spring")]]
        self.stiff = k[[i for i, x in enumerate(kind[solid]) if x in ("joint", "spring")]].real
        self.rub = [(depth.friction.strength[n], axes @ self.v, False) for n, (axes, _) in depth.state.slips.items()]
        self.rub.append((depth.friction.strength["damper"], damper[None, :], True))
        dash = [depth.state.dash[n] for n in [*depth.state.slips, "damper"]]
        self.linear = self.d + sum(c * axes.T @ axes for c, (_, axes, _) in zip(dash, self.rub))
        self.hz = w / (2 * math.pi)

    def friction(self, v):
        """Generalised force of all sliders, against their slip."""
        out = np.zeros(len(v))
        for strength, axes, damper in self.rub:
            slip = axes @ v
            size = math.sqrt(slip @ slip) + 1e-30
            out -= strength * math.tanh(size / ROUND[damper]) / size * (slip @ axes)
        return out

    def begin(self, f, size, up, back):
        """The linearised corner at time 0: the march starts there, so that little has to die away."""
        p = 2j * np.pi * f[1:]
        d = np.eye(len(self.k)) * (p ** 2)[:, None, None] + p[:, None, None] * self.linear + np.diag(self.k)
        q = np.linalg.solve(d, (size[1:, None] * (up + p[:, None] * back))[:, :, None])[:, :, 0]
        return np.concatenate([q.real.sum(axis=0), (p[:, None] * q).real.sum(axis=0)])

    def run(self):
        """Movements and speeds of the modes over a whole period of the road."""
        n, m = round(PERIOD * RATE), len(self.k)
        f = np.arange(n // 2 + 1) / PERIOD
        size = harmonics(f, self.ride)
        z, dz = (np.fft.irfft(s * n / 2, n) for s in (size, size * 2j * np.pi * f))
        z, dz = np.append(z, z[0]), np.append(dz, dz[0])
        up, back = self.kt * self.tyre, self.ct * self.tyre + self.per_slope * self.push
        drive = np.outer(z, up) + np.outer(dz, back)
        inside = f <= 315

        def slope(t, y):
            at = (t * RATE) % n
            i = int(at)
            force = drive[i] + (at - i) * (drive[i + 1] - drive[i])
            v = y[m:]
            return np.concatenate([v, force - self.k * y[:m] - self.d @ v + self.friction(v)])
        times = BEFORE + PERIOD * np.arange(n) / n
        y = solve_ivp(slope, (0, times[-1]), self.begin(f[inside], size[inside], up, back), t_eval=times, rtol=1e-4, atol=1e-7,
                      max_step=2e-4).y
        return f, y[:m], y[m:]

    def figures(self):
        """Comfort, felt and heard."""
        f, q, v = self.run()
        chassis = self.v[:2] @ q  # x, z
        strength = self.rub[-1][0]
        damper = self.c * (self.damper @ v) + strength * np.tanh((self.damper @ v) / ROUND[True])
        forces = [k * (row @ q) for k, row in zip(self.stiff, self.path)] + [damper]
        comfort = sum(band(f, x, 0.5, 80, lambda h, w=w: w(h) * (2 * math.pi * h) ** 2) for x, w in zip(chassis, (weight_d, weight_k)))
        felt = sum(band(f, x, 20, 200, np.ones_like) for x in forces)
        heard = sum(band(f, x, 40, 315, weight_a) for x in forces)
        return math.sqrt(comfort), math.sqrt(felt), math.sqrt(heard)


def main():
    spec = case()
    rates, told = (told_by(sys.argv[1], command, spec) for command in ("rates", "ride"))
    told = told["results"][0]
    march = March(spec, rates, told)
    comfort, felt, heard = march.figures()
    bad = 0
    for what, got, meant, allowed in (
            ("comfort of a corner [m/s2]", told["comfort_ms2"], comfort, 0.02 * comfort),
            ("felt, a corner [dB]", 20 * math.log10(told["harshness_N"]), 20 * math.log10(felt), 0.5),
            ("heard, a corner [dB]", 20 * math.log10(told["road_noise_N"]), 20 * math.log10(heard), 1.5)):
        record("computed", "solver", "a march in time of a corner with Coulomb friction, SciPy solve_ivp", what, meant, got, allowed)
        ok = abs(got - meant) <= allowed
        bad += not ok
        print(f"{'ok' if ok else 'not ok'} - {what}: {got:.4g} by the program, {meant:.4g} in the march")
    stuck = [s["joint"] for s in told["sliders"] if s["sticks"]]
    print(f"# crackle {told['crackle_N'][0]:.3g} of {told['harshness_N']:.3g} N felt, {told['crackle_N'][1]:.3g} of "
          f"{told['road_noise_N']:.3g} N heard; sticks: {stuck or 'nothing'}; modes up to {march.hz[-1]:.0f} Hz")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
