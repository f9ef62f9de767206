# SPDX-License-Identifier: MIT
"""Rates of rubber bushes against three-dimensional models in CalculiX (calculix-ccx).

    bush_vs_ccx.py GIVEWAY_BINARY [--only WORD] [--fine F]

Ten bonded bushes within 1 %, voided ones of finite length within 3 %, dished ends and interleaf within
2 %, in every rate. Prints each difference and a closing line; exit status 1 if anything failed. Without ccx it
says "skipped" and exits 0.
"""
import argparse
import json
import math
import os
import shutil
import subprocess
import sys
import tempfile
import time

sys.dont_write_bytecode = True
import validation  # noqa: E402
from ccx_model import Eighth, LOADS  # noqa: E402


def bonded(a, b, length, ratio, g=1.0):
    """A plain bush: radii and length in mm, bulk modulus over shear modulus."""
    return {"a": a, "b": b, "length": length, "g": g, "k": ratio * g}


def voided(base, half_angle, depth=None):
    """The same with two opposite voids."""
    return dict(base, half_angle=half_angle, depth=depth)


# name: shape, allowed relative difference
SHAPES = {
    "plain 10/20 x 40": (bonded(10, 20, 40, 2000), 0.01),
    "plain 8/16 x 30": (bonded(8, 16, 30, 2000, 0.64), 0.01),
    "plain 12/22 x 50": (bonded(12, 22, 50, 2000), 0.01),
    "plain 15/25 x 60": (bonded(15, 25, 60, 1500), 0.01),
    "plain 10/30 x 20": (bonded(10, 30, 20, 2000), 0.01),
    "plain 7/21 x 77": (bonded(7, 21, 77, 1000), 0.01),
    "plain 20/25 x 50, slim": (bonded(20, 25, 50, 1000, 1.06), 0.01),
    "plain 20/25 x 25, slim": (bonded(20, 25, 25, 1800), 0.01),
    "plain 18/26 x 20": (bonded(18, 26, 20, 2000), 0.01),
    "plain 11/19 x 80": (bonded(11, 19, 80, 900), 0.01),
    "voids 30 deg, 10/20 x 40": (voided(bonded(10, 20, 40, 2000), 30), 0.03),
    "voids 45 deg, 15/25 x 60": (voided(bonded(15, 25, 60, 1500), 45), 0.03),
    "voids 20 deg, 10/26 x 24": (voided(bonded(10, 26, 24, 1000), 20), 0.03),
    "voids 40 deg, slim 20/26 x 45": (voided(bonded(20, 26, 45, 1000), 40), 0.03),
    "voids 35 deg, 4 of 10 deep, 10/20 x 40": (voided(bonded(10, 20, 40, 2000), 35, 4), 0.03),
    "voids 30 deg, 2 of 4 deep, slim 20/24 x 40": (voided(bonded(20, 24, 40, 1000), 30, 2), 0.03),
    "dish 5, 10/22 x 40": (dict(bonded(10, 22, 40, 2000), dish=5), 0.02),
    "interleaf 16 x 1.5, 10/22 x 40": (dict(bonded(10, 22, 40, 2000), interleaf=(16, 1.5)), 0.02),
}


def as_bush(s):
    """The shape in a case's words."""
    bush = {"type": "bonded", "inner_diameter_mm": 2 * s["a"], "outer_diameter_mm": 2 * s["b"],
            "length_mm": s["length"],
            "material": {"shear_modulus_MPa": s["g"], "bulk_modulus_MPa": s["k"]}}
    if s.get("half_angle"):
        bush["voids"] = {"half_angle_deg": s["half_angle"], "gap_mm": 1.0}
        if s.get("depth"):
            bush["voids"]["depth_mm"] = s["depth"]
    if s.get("dish"):
        bush["end_dish_mm"] = s["dish"]
    if s.get("interleaf"):
        bush["interleaf"] = {"diameter_mm": 2 * s["interleaf"][0], "thickness_mm": s["interleaf"][1]}
    return bush


def own_rates(binary, folder, shapes):
    """What the program says, by name and load, in N/mm and N mm/rad."""
    names = list(shapes)
    case = {"format": "giveway-case-1", "title": "cross-check",
            "bushes": {f"b{i}": as_bush(shapes[n][0]) for i, n in enumerate(names)}}
    path = os.path.join(folder, "case.json")
    with open(path, "w", encoding="utf-8") as f:
        json.dump(case, f)
    done = subprocess.run([binary, "rates", path, "--format", "json", "--quiet"], capture_output=True, text=True,
                          check=False)
    if done.returncode:
        sys.exit("the program refused the case: " + done.stderr)
    per_rad = 1000 * 180 / math.pi
    out = {}
    for name, row in zip(names, json.loads(done.stdout)["bushes"]):
        out[name] = {"radial1": row["radial_N_per_mm"][0], "radial2": row["radial_N_per_mm"][1],
                     "axial": row["axial_N_per_mm"], "torsional": row["torsional_Nm_per_deg"] * per_rad,
                     "conical1": row["conical_Nm_per_deg"][0] * per_rad,
                     "conical2": row["conical_Nm_per_deg"][1] * per_rad}
    return out


def compare(name, tolerance, own, other):
    """Prints one line of percentages; returns passed and failed."""
    off = {load: own[load] / other[load] - 1 for load in other}
    bad = [load for load in off if not abs(off[load]) <= tolerance]
    for load, want in other.items():
        validation.record("computed", "solver", "CalculiX, three-dimensional finite elements", f"{name} mm, {load} [N/mm, N mm/rad]",
                          want, own[load], tolerance * want)
    words = "  ".join(f"{load} {100 * value:+.2f}" for load, value in off.items())
    print(f"{'FAIL' if bad else 'ok':4}  {name:40} within {100 * tolerance:.0f} %:  {words}", flush=True)
    return len(off) - len(bad), len(bad)


def main():
    """Command line."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("binary")
    parser.add_argument("--only", default="", help="shapes whose name holds this word")
    parser.add_argument("--fine", type=float, default=1.3, help="cells of the models, over the coarsest usable")
    args = parser.parse_args()
    ccx = shutil.which("ccx")
    if not ccx:
        print("skipped: ccx (Debian package calculix-ccx) is not installed")
        return 0
    shapes = {n: s for n, s in SHAPES.items() if args.only in n}
    passed, failed, begun = 0, 0, time.monotonic()
    with tempfile.TemporaryDirectory() as folder:
        own = own_rates(os.path.abspath(args.binary), folder, shapes)
        for i, (name, (shape, tolerance)) in enumerate(shapes.items()):
            loads = list(LOADS)
            if not shape.get("half_angle"):
                loads = ["radial1", "axial", "torsional", "conical2"]
            other = Eighth(shape, args.fine).rates(ccx, folder, f"m{i}", loads)
            good, bad = compare(name, tolerance, own[name], other)
            passed, failed = passed + good, failed + bad
    print(f"differences in per cent; {time.monotonic() - begun:.0f} s")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
