# SPDX-License-Identifier: MIT
"""Compares bands with draws that an independent program makes (used only for tests).

    compare_spread.py GIVEWAY_BINARY [--draws N]

1. One bush: its movement is log-normal; percentiles by scipy.stats.
2. First-order indices of variance by regression on each figure alone, tried on the function of T. Ishigami and T. Homma
   (An importance quantification technique in uncertainty analysis for computer models, Proc. ISUMA '90, 1990, 398-403),
   whose indices are known: with a = 7, b = 0.1 they are 0.3139, 0.4424 and 0.
3. A corner with kits: cars drawn here with NumPy's numbers, as section 1 of the contract says, and worked out by the
   second reading of the mechanics (reference/). Every band must agree within four standard errors of these draws.
"""
import copy
import json
import math
import os
import sys
import tempfile

for _v in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
    os.environ.setdefault(_v, "1")
sys.dont_write_bytecode = True

import numpy as np  # noqa: E402
from scipy import stats  # noqa: E402

import compare_corner as cc  # noqa: E402
import validation  # noqa: E402
from reference.study import Study  # noqa: E402

FAILED = []


def check(kind, basis, source, what, want, got, allowed):
    """One comparison."""
    validation.record(kind, basis, source, what, want, got, allowed)
    if not abs(got - want) <= allowed:
        FAILED.append(what)
        print(f"FAIL {what}: {got:.6g}, wanted {want:.6g} +- {allowed:.2g}")


def spread(binary, case, *more):
    """What the program says."""
    with tempfile.TemporaryDirectory() as folder:
        path = os.path.join(folder, "case.json")
        with open(path, "w", encoding="utf-8") as f:
            json.dump(case, f)
        result, why = cc.run(binary, "spread", path, *more)
    if result is None:
        sys.exit(f"giveway spread: {why}")
    return result


def rates(radial, axial, conical, torsional):
    """A bush."""
    return {"type": "rates", "radial_N_per_mm": radial, "axial_N_per_mm": axial, "conical_Nm_per_deg": conical,
            "torsional_Nm_per_deg": torsional}


WHEEL = {"centre_mm": [0, 740, 310], "loaded_radius_mm": 310, "static_load_N": 3900, "static_camber_deg": -0.8, "static_toe_deg": 0.1}


def one_bush(binary):
    """x = F / k exp(-s z), s = ln(1 + percent / 100) / 2."""
    joint = {"name": "hub", "between": ["chassis", "upright"], "at": WHEEL["centre_mm"], "axis": [0, 1, 0], "radial_axis": [1, 0, 0],
             "bush": "soft"}
    case = {"format": "giveway-case-1", "title": "one bush (invented)",
            "corners": {"front": {"wheel": WHEEL, "joints": [joint],
                                  "spring": {"on": "upright", "at": WHEEL["centre_mm"], "to": [0, 740, 640], "rate_N_per_mm": 40}}},
            "bushes": {"soft": rates([430, 0], 5e3, 1e7, 1e7)}, "uncertain": [{"of": "bushes.soft", "percent": 45}],
            "loads": [{"name": "pull", "corner": "front", "hub_force_N": [-1700, 0, 0]}]}
    n = 50000
    got = spread(binary, case, "--draws", str(n))["results"][0]["wheel_fore_aft_mm"]
    s, x = math.log(1.45) / 2, 1700 / 430
    law = stats.lognorm(s, scale=x)
    for key, p in (("high", 0.025), ("median", 0.5), ("low", 0.975)):  # negative: the ends change places
        q = law.ppf(p)
        check("computed", "solver", "SciPy, log-normal quantiles", f"one bush, {key}", -q, got[key],
              4 * math.sqrt(p * (1 - p) / n) / law.pdf(q))
    check("computed", "solver", "SciPy, log-normal moments", "one bush, mean", -law.mean(), got["mean"], 4 * law.std() / math.sqrt(n))
    kurtosis = float(law.stats("k")) + 3
    check("computed", "solver", "SciPy, log-normal moments", "one bush, sd", law.std(), got["sd"],
          4 * law.std() * math.sqrt((kurtosis - 1) / (4 * n)))


def first_order(x, y, degree):
    """Share of the variance of y that the mean of y given x has: by polynomials, less what chance gives them."""
    basis = np.polynomial.legendre.legvander(2 * (x - x.min()) / np.ptp(x) - 1, degree)
    left = y - basis @ np.linalg.lstsq(basis, y, rcond=None)[0]
    n = len(y)
    return 1 - (left @ left / (n - degree - 1)) / np.var(y, ddof=1)


def ishigami():
    """The estimator above, where the answer is known."""
    random, n = np.random.default_rng(7), 40000
    x = random.uniform(-math.pi, math.pi, (n, 3))
    y = np.sin(x[:, 0]) + 7 * np.sin(x[:, 1]) ** 2 + 0.1 * x[:, 2] ** 4 * np.sin(x[:, 0])
    for i, want in enumerate((0.3139, 0.4424, 0.0)):
        check("computed", "print", "Ishigami and Homma 1990", f"first-order index {i + 1}", want, first_order(x[:, i], y, 10), 0.015)


POINTS = {"inner": [430, 330, 290], "outer": [395, 655, 300], "link": [-120, 420, 240], "knee": [-60, 660, 250],
          "seat": [0, 600, 240], "turret": [0, 520, 640]}


def corner_case():
    """A trailing arm on two bushes that lie askew, steadied by a link: three kits, two loads. Invented."""
    joints = [{"name": "inner", "between": ["chassis", "upright"], "at": "inner", "axis": [-0.1, 1, 0], "radial_axis": [1, 0.1, 0],
               "bush": "inner"},
              {"name": "outer", "between": ["chassis", "upright"], "at": "outer", "axis": [-0.1, 1, 0], "radial_axis": [1, 0.1, 0],
               "bush": "outer"},
              {"name": "link", "between": ["chassis", "link"], "at": "link", "axis": [1, 0.2, 0], "radial_axis": [0, 0, 1], "bush": "link"},
              {"name": "knee", "between": ["link", "upright"], "at": "knee", "axis": [0, 0, 1], "radial_axis": [1, 0, 0], "bush": "ball"}]
    bushes = {"inner": rates([2600, 2300], 700, 30, 2), "outer": rates([3100, 2500], 800, 35, 2.4), "link": rates([2900, 2900], 500, 25, 2),
              "hard": rates([9000, 9500], 2500, 90, 7),
              "ball": {"type": "ball_joint", "radial_N_per_mm": 9e4, "axial_N_per_mm": 9e4}}
    return {"format": "giveway-case-1", "title": "trailing arm (invented)",
            "corners": {"front": {"wheel": WHEEL, "points_mm": copy.deepcopy(POINTS), "members": {"link": {}}, "joints": joints,
                                  "spring": {"on": "upright", "at": "seat", "to": "turret", "rate_N_per_mm": 34}}},
            "bushes": bushes,
            "kits": [{"name": "as it was", "fits": {}}, {"name": "hard outside", "fits": {"front.outer": "hard"}},
                     {"name": "hard", "fits": {f"front.{n}": "hard" for n in ("inner", "outer", "link")}}],
            "loads": [{"name": "stop", "corner": "front", "patch_force_N": [-3100, 0, 5200], "travel_mm": 18},
                      {"name": "corner", "corner": "front", "patch_force_N": [0, 2300, 5400], "travel_mm": 25}],
            "uncertain": [{"of": "bushes", "percent": 40}, {"of": "corners.front.points_mm", "mm": [3, 3, 5]},
                          {"of": "corners.front.points_mm.link[2]", "mm": 9}]}


def drawn(case, random):
    """A car as section 1 has it: one factor a bush that is not a ball joint, each coordinate on its own; and its z."""
    car, z = copy.deepcopy(case), {}
    for name, bush in car["bushes"].items():
        z[f"bushes.{name}"] = g = random.standard_normal()
        factor = math.exp(math.log(1.4) / 2 * g)
        for key, value in bush.items():
            if key != "type":
                bush[key] = [factor * v for v in value] if isinstance(value, list) else factor * value
    for name, point in car["corners"]["front"]["points_mm"].items():
        for i, band in enumerate((3, 3, 9 if name == "link" else 5)):
            z[f"corners.front.points_mm.{name}[{i}]"] = g = random.standard_normal()
            point[i] += band / 2 * g
    return car, z


def against_draws(binary, n):
    """The program's many draws against few of our own."""
    case, random = corner_case(), np.random.default_rng(20261129)
    found = spread(binary, case, "--draws", "6000", "--seed", "3")
    index = {(r["kit"], r["load"]): r for r in found["results"]}
    figures = {"toe_change_deg": lambda r: r["toe_change_deg"], "camber_change_deg": lambda r: r["camber_change_deg"],
               "wheel_fore_aft_mm": lambda r: r["wheel_centre_mm"][0]}
    rows, zs = [], []
    for _ in range(n):
        car, z = drawn(case, random)
        zs.append(z)
        rows.append({(r["kit"], r["load"]): {k: f(r) for k, f in figures.items()} for r in Study(car).deflect()})
    kits = [k["name"] for k in case["kits"]]
    for key, r in index.items():
        for figure in figures:
            y = np.array([row[key][figure] for row in rows])
            bands(f"{key[0]}, {key[1]}, {figure}", r[figure], y)
            if key[0] != kits[0]:
                base = np.array([row[kits[0], key[1]][figure] for row in rows])
                bands(f"{key[0]} less the first, {key[1]}, {figure}", r["difference"][figure], y - base)
        if key[0] != kits[0]:
            better = np.mean([abs(row[key]["toe_change_deg"]) < abs(row[kits[0], key[1]]["toe_change_deg"]) for row in rows])
            binomial(f"{key[0]}, {key[1]}, better", r["better"], better, n)
    rms = {k: np.array([math.sqrt(np.mean([row[k, load["name"]]["toe_change_deg"] ** 2 for load in case["loads"]])) for row in rows])
           for k in kits}
    for s in found["summary"]:
        bands(f"{s['kit']}, unsteadiness", s["unsteadiness_deg"], rms[s["kit"]])
        if s["kit"] != kits[0]:
            binomial(f"{s['kit']}, steadier", s["steadier"], np.mean(rms[s["kit"]] < rms[kits[0]]), n)
        binomial(f"{s['kit']}, steadiest", s["steadiest"], np.mean([all(rms[s["kit"]][i] <= rms[k][i] for k in kits) for i in range(n)]), n)
    shares(index, rows, zs)


def strays(p, n):
    """How far a share of n draws may lie from its probability: exactly as seldom passed as four standard errors of a
    normal law are. Of few draws and a small probability the normal law itself knows nothing."""
    seldom = stats.norm.sf(4)
    return max(p - stats.binom.ppf(seldom, n, p) / n, stats.binom.isf(seldom, n, p) / n - p)


def bands(what, band, y):
    """Mean and sd within four standard errors of the draws y; shares below the three percentiles as `strays` says."""
    n, sd = len(y), np.std(y, ddof=1)
    source = "draws of an independent program on an independent reading of the corner"
    check("second reading", "reading", source, f"{what}, mean", np.mean(y), band["mean"], 4 * sd / math.sqrt(n))
    kurtosis = max(stats.kurtosis(y, fisher=False), 3)
    check("second reading", "reading", source, f"{what}, sd", sd, band["sd"], 4 * sd * math.sqrt((kurtosis - 1) / (4 * n)))
    for key, p in (("low", 0.025), ("median", 0.5), ("high", 0.975)):
        check("second reading", "reading", source, f"{what}, share below {key}", p, np.mean(y < band[key]),
              strays(p, n))


def binomial(what, share, own, n):
    """A share of the draws."""
    p = min(max(share, 2 / n), 1 - 2 / n)
    check("second reading", "reading", "draws of an independent program", what, own, share, strays(p, n))


def shares(index, rows, zs):
    """Shares of variance: first-order indices of our draws, where the answer is nearly linear. An index of n draws has a
    standard error of about 2 sqrt(S (1 - S) / n), and of 1 / n where it is none."""
    n = len(rows)
    for key, r in index.items():
        m = r["measure_next"]["toe_change_deg"]
        if m["linear_r2"] < 0.97:
            continue
        y = np.array([row[key]["toe_change_deg"] for row in rows])
        for s in m["shares"][:3]:
            want = first_order(np.array([z[s["of"]] for z in zs]), y, 2)
            check("second reading", "formula", "first-order indices (I. M. Sobol', 1993) of independent draws",
                  f"{key}, share of {s['of']}", want, s["share"], 8 * math.sqrt(s["share"] * (1 - s["share"]) / n) + 4 / n)


def main():
    """All of it."""
    binary = sys.argv[1]
    n = int(sys.argv[sys.argv.index("--draws") + 1]) if "--draws" in sys.argv else 120
    one_bush(binary)
    ishigami()
    against_draws(binary, n)
    print(f"{len(FAILED)} comparisons failed")
    return 1 if FAILED else 0


if __name__ == "__main__":
    sys.exit(main())
