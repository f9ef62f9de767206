# SPDX-License-Identifier: MIT
"""A quarter car with a damper that rubs, marched through time by a general integrator: march.py PROGRAM

The road is a sum of harmonics of the program's spectrum with random phases, the friction a Coulomb force (rounded within
1 mm/s); SciPy's solve_ivp goes through it. What comes out of that nonlinear motion is held against the program's
linearised figures: comfort within 2 %, force of spring and damper 20 to 200 Hz within 0.5 dB, slip speed within 4 %.
"""
import json
import math
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy as np
from scipy.integrate import solve_ivp

from reference.road import road, weight_k
from validation import record

MS, MU, KS, C, KT, FRICTION = 331.0, 43.7, 21.3e3, 1370.0, 213e3, 57.0
SPEED, CLASS, PERIOD, STEP = 72.0, "B", 16.0, 1 / 1600


def case():
    load = (MS + MU) * 9.80665
    guide = {"type": "rates", "radial_N_per_mm": 1e7, "axial_N_per_mm": 0, "conical_Nm_per_deg": 1e7, "torsional_Nm_per_deg": 1e7}
    at, top = [0, 750, 300], [0, 750, 900]
    return {"format": "giveway-case-1", "title": "quarter car", "bushes": {"guide": guide},
            "kits": [{"name": "only", "fits": {}}], "loads": [],
            "ride": {"road_class": CLASS, "speed_km_h": SPEED, "contact_length_mm": 0, "default_bracket_N_per_mm": None},
            "corners": {"front": {
                "wheel": {"centre_mm": at, "loaded_radius_mm": 300, "rim_diameter_mm": 400, "static_load_N": load,
                          "static_camber_deg": 0, "static_toe_deg": 0, "mass_kg": MU, "tilt_inertia_kgm2": 0.7,
                          "pitch_inertia_kgm2": 0.3, "tyre_vertical_N_per_mm": KT / 1e3},
                "points_mm": {"hub": at}, "members": {},
                "joints": [{"name": "guide", "between": ["chassis", "upright"], "at": "hub", "axis": [0, 0, 1], "bush": "guide"}],
                "spring": {"on": "upright", "at": at, "to": top, "rate_N_per_mm": KS / 1e3},
                "damper": {"on": "upright", "at": at, "to": top, "rate_Ns_per_mm": C / 1e3, "friction_N": FRICTION}}}}


def told_by(program, command, spec):
    """What a command says of a case, in JSON."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "case.json"
        path.write_text(json.dumps(spec))
        done = subprocess.run([program, command, str(path), "--format", "json", "--quiet"], capture_output=True, text=True)
    if done.returncode:
        raise SystemExit(done.stderr)
    return json.loads(done.stdout)


def harmonics(f, ride):
    """Amplitudes of the road at the multiples f of a frequency, from 0.5 to 315 Hz, random phases."""
    rng = np.random.default_rng(7)
    inside = (f >= 0.5) & (f <= 315)
    size = np.zeros(len(f), complex)
    size[inside] = np.sqrt(2 * road(ride, f[inside]) * f[1]) * np.exp(2j * np.pi * rng.random(inside.sum()))
    return size


def march(ride):
    n = round(PERIOD / STEP)
    f = np.arange(n // 2 + 1) / PERIOD
    z = np.fft.irfft(harmonics(f, ride) * n / 2, n)
    z = np.append(z, z[0])

    def slope(t, y):
        at = (t / STEP) % n
        i = int(at)
        ground = z[i] + (at - i) * (z[i + 1] - z[i])
        force = KS * (y[1] - y[0]) + C * (y[3] - y[2]) + FRICTION * math.tanh((y[3] - y[2]) / 1e-3)
        return [y[2], y[3], force / MS, (KT * (ground - y[1]) - force) / MU]
    times = PERIOD * (0.5 + np.arange(n) / n)
    y = solve_ivp(slope, (0, times[-1]), [0, 0, 0, 0], t_eval=times, rtol=1e-5, atol=1e-8, max_step=1e-3).y
    return f, y


def band(f, signal, low, high, weight=None):
    """Mean square of a signal between two frequencies."""
    n = len(signal)
    window = np.hanning(n)
    s = np.abs(np.fft.rfft(signal * window)) ** 2 * 2 / (n * (window ** 2).sum())
    s = s * (weight(np.maximum(f, 1e-3)) ** 2 if weight else 1.0)
    return s[(f >= low) & (f <= high)].sum()


def main():
    told = told_by(sys.argv[1], "ride", case())["results"][0]
    f, (zs, zu, vs, vu) = march(case()["ride"])
    rub = FRICTION * np.tanh((vu - vs) / 1e-3)
    spring, damper = KS * (zu - zs), C * (vu - vs) + rub
    comfort = math.sqrt(band(f, (spring + damper) / MS, 0.5, 80, weight_k))
    felt = math.sqrt(band(f, spring, 20, 200) + band(f, damper, 20, 200))
    slip = math.sqrt(band(f, vu - vs, 0.5, 315))
    paths = {p["attachment"]: p["force_N"] for p in told["paths"]}
    c = told["sliders"][0]["damping_Ns_per_mm"] * 1e3
    bad = 0
    for what, got, meant, allowed in (
            ("comfort [m/s2]", told["comfort_ms2"], comfort, 0.02 * comfort),
            ("felt, spring and damper [dB]", 20 * math.log10(math.hypot(paths["spring"], paths["damper"])), 20 * math.log10(felt), 0.5),
            ("rms slip speed of the damper [m/s]", math.sqrt(2 / math.pi) * FRICTION / c, slip, 0.04 * slip)):
        record("computed", "solver", "a march in time of a quarter car with Coulomb friction, SciPy solve_ivp", what, meant, got, allowed)
        ok = abs(got - meant) <= allowed
        bad += not ok
        print(f"{'ok' if ok else 'not ok'} - {what}: {got:.4g} by the program, {meant:.4g} in the march")
    without = 20 * math.log10(math.sqrt(paths["spring"] ** 2 + paths["damper"] ** 2 - told["crackle_N"][0] ** 2))
    print(f"# without crackle the felt force would be {without - 20 * math.log10(felt):+.2f} dB off")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
