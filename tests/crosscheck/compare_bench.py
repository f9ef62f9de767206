# SPDX-License-Identifier: MIT
"""Files of a press and of a test rig, read and fitted a second time (used only for tests).

    compare_bench.py GIVEWAY_BINARY [--files N] [--seed FIRST]

Static: loops with an offset, noise and a law of their own, reduced here with NumPy as the manual says: mean of
both ways, zero of force, 21 points, loss from the area. Dynamic: SciPy's bounded least squares (trust region, from
several beginnings) on the same rows; least sum, figures and their errors are compared.
"""
import argparse
import cmath
import json
import math
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy as np

try:
    from scipy.optimize import least_squares
except ImportError:
    print("needs SciPy")
    sys.exit(77)

TAU, FREE = 1e-6, ("rate_N_per_mm", "zener_gain", "zener_alpha", "payne_gain", "payne_amplitude_mm", "payne_exponent")


def law(v, f, x):
    p = (2j * math.pi * f * TAU) ** v[2]
    return v[0] * (1 + v[1] * p / (1 + p)) * (1 + v[3] / (1 + (x / v[4]) ** (2 * v[5])))


def run(binary, path):
    done = subprocess.run([binary, "bench", str(path), "--format", "json", "--quiet"], capture_output=True, text=True)
    if done.returncode:
        raise SystemExit(f"not ok - {done.stderr}")
    return json.loads(done.stdout)["results"][0]


def make_loop(rng):
    """Three and a half cycles with an offset of the zero, in time order."""
    a, k, cubic, h = rng.uniform(1, 5), rng.uniform(200, 3000), rng.uniform(0, 60), rng.uniform(20, 120)
    zero, skew, n = rng.uniform(-0.3, 0.3), rng.uniform(-0.1, 0.1), 90
    way = lambda p, q: np.linspace(p, q, n + 1)[1:]
    x = np.concatenate([[0], way(0, a), way(a, -a), way(-a, a), way(a, -a), way(-a, rng.uniform(0.2, 1) * a)])
    up = np.concatenate([[1], np.repeat([1, -1, 1, -1, 1], n)])
    f = (k * x + cubic * x ** 3) * (1 + skew * np.sign(x)) + up * h * np.sqrt(np.maximum(0, 1 - (x / a) ** 2))
    return x + zero, f


def extremes(x):
    """Where deflection turns by more than a tenth of the span."""
    back, turns, direction, best = 0.1 * np.ptp(x), [0], 0, 0
    low = high = 0
    for i in range(1, len(x)):
        low, high = (i if x[i] < x[low] else low), (i if x[i] > x[high] else high)
        if direction >= 0 and x[i] < x[high] - back:
            turns, low, direction = turns + [high], i, -1
        elif direction <= 0 and x[i] > x[low] + back:
            turns, high, direction = (turns + [low] if low else turns), i, 1
    turns.append(high if direction > 0 else low)
    return [t for i, t in enumerate(turns) if i == 0 or t > turns[i - 1]]


def line(x, f):
    values, inverse = np.unique(x, return_inverse=True)
    return values, np.bincount(inverse, f) / np.bincount(inverse)


def reduce(x, f):
    """Points, zero and loss of the last loop."""
    t = extremes(x)
    third, second, last = (line(x[a:b + 1], f[a:b + 1]) for a, b in zip(t[-4:-1], t[-3:]))
    rises = x[t[-1]] > x[t[-2]]
    ends = [e for e in (second[0][0], second[0][-1]) if not last[0][0] <= e <= last[0][-1] and third[0][0] <= e <= third[0][-1]]
    outer = [(a, b) for a, b in zip(*third) if not last[0][0] <= a <= last[0][-1] and second[0][0] <= a <= second[0][-1]]
    extra = outer + [(e, np.interp(e, *third)) for e in ends if e not in [o[0] for o in outer]]
    xs = np.concatenate([last[0], [e[0] for e in extra]])
    order = np.argsort(xs)
    last = xs[order], np.concatenate([last[1], [e[1] for e in extra]])[order]
    low, high = max(second[0][0], last[0][0]), min(second[0][-1], last[0][-1])
    grid = np.unique(np.concatenate([second[0], last[0], [low, high]]))
    grid = grid[(grid >= low) & (grid <= high)]
    one, two = np.interp(grid, *last), np.interp(grid, *second)
    up, down = (one, two) if rises else (two, one)
    mean = (up + down) / 2
    loss = np.trapezoid(up - down, grid) if hasattr(np, "trapezoid") else np.trapz(up - down, grid)
    loss /= math.pi * (high - low) / 2 * (mean[-1] - mean[0]) / 2
    i = np.flatnonzero(mean <= 0)[-1]
    zero = grid[i] - mean[i] * (grid[i + 1] - grid[i]) / (mean[i + 1] - mean[i])
    strokes = zero - low, high - zero
    at = np.array([j / 10 * strokes[0 if j < 0 else 1] for j in range(-10, 11)])
    force = np.interp(at + zero, grid, mean)
    force[10] = 0
    return {"points": np.column_stack([at, force]), "zero_mm": zero, "loss_factor": loss, "stroke_mm": np.array(strokes)}


def compare_static(binary, folder, seed, worst):
    rng = np.random.default_rng(seed)
    x, f = make_loop(rng)
    path = Path(folder) / "press.csv"
    path.write_text("deflection_mm,force_N\n" + "".join(f"{a!r},{b!r}\n" for a, b in zip(x.tolist(), f.tolist())))
    got, want = run(binary, path), reduce(x, f)
    for key, value in want.items():
        size = np.max(np.abs(value)) if key == "points" else 1.0
        worst[key] = max(worst.get(key, 0), float(np.max(np.abs(np.array(got[key]) - value)) / size))


def fit(rows, n_free):
    """Least sum by SciPy, from several beginnings."""
    f, x, k, d = (np.array(c) for c in zip(*rows))
    low, high = [1e-6, 1e-9, 1e-6, 1e-9, x.min() / 10, 1e-6], [np.inf, np.inf, 1, np.inf, x.max() * 10, 2]

    def residuals(v):
        v = list(v) + [0.0, 1.0, 0.55][n_free - 3:] if n_free < 6 else v
        r = np.log(k * np.exp(1j * d) / law(v, f, x))
        return np.concatenate([r.real, r.imag])
    best = None
    for alpha, gain in ((0.15, 2), (0.3, 6), (0.5, 3)):
        start = [np.exp(np.mean(np.log(k))) / (1 + gain * 0.1), gain, alpha, 0.3, np.sqrt(x.min() * x.max()), 0.6][:n_free]
        s = least_squares(residuals, start, bounds=(low[:n_free], high[:n_free]), x_scale=np.abs(start), xtol=1e-15, ftol=1e-15,
                          gtol=1e-15, max_nfev=4000)
        best = s if best is None or s.cost < best.cost else best
    scatter2 = 2 * best.cost / (2 * len(rows) - n_free)
    return best.x, 2 * np.sqrt(np.diag(np.linalg.inv(best.jac.T @ best.jac)) * scatter2), math.sqrt(scatter2)


def compare_dynamic(binary, folder, seed, worst):
    rng = np.random.default_rng(500 + seed)
    truth = [rng.uniform(200, 3000), rng.uniform(1, 6), rng.uniform(0.15, 0.4), rng.uniform(0.1, 0.8), rng.uniform(0.1, 0.4),
             rng.uniform(0.4, 0.8)]
    amplitudes = [[0.1], [0.02, 0.25, 2], [0.02, 0.08, 0.25, 0.8, 2]][seed % 3]
    rows = []
    for x in amplitudes:
        for f in (1, 3, 8, 20, 50, 120):
            v = law(truth, f, x)
            rows.append((f, x, abs(v) * math.exp(0.01 * rng.normal()), cmath.phase(v) + 0.004 * abs(rng.normal())))
    rows = [(f, x, k, d) for f, x, k, d in rows if 0 < d < math.pi / 2]
    path = Path(folder) / "rig.csv"
    path.write_text("frequency_Hz,amplitude_mm,stiffness_N_per_mm,loss_angle_deg\n" +
                    "".join(f"{f!r},{x!r},{k!r},{math.degrees(d)!r}\n" for f, x, k, d in rows))
    got = run(binary, path)
    n_free = {1: 3, 3: 5, 5: 6}[len(amplitudes)]
    value, within, scatter = fit(rows, n_free)
    worst["scatter"] = max(worst.get("scatter", 0), got["scatter"] / scatter - 1)  # a smaller sum is a better search
    for i, key in enumerate(FREE[:n_free]):
        worst[key] = max(worst.get(key, 0), abs(got[key]["value"] - value[i]) / within[i])
        worst["within"] = max(worst.get("within", 0), abs(got[key]["within"] / within[i] - 1))


def main():
    p = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    p.add_argument("binary")
    p.add_argument("--files", type=int, default=12)
    p.add_argument("--seed", type=int, default=0)
    a = p.parse_args()
    static, dynamic = {}, {}
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(a.seed, a.seed + a.files):
            compare_static(a.binary, folder, seed, static)
            compare_dynamic(a.binary, folder, seed, dynamic)
    bad = {k: v for k, v in static.items() if v > 1e-9}
    # figures in parts of their own error: two searches stop where the sum has no slope left
    bad |= {k: v for k, v in dynamic.items() if v > (1e-6 if k == "scatter" else 2e-2 if k == "within" else 5e-3)}
    for key, value in sorted((static | dynamic).items()):
        print(f"# {key}: {value:.2e}")
    print(f"{'not ok' if bad else 'ok'} - {a.files} loops and {a.files} dynamic tests come out as NumPy and SciPy have them {bad or ''}")


if __name__ == "__main__":
    main()
