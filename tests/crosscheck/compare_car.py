# SPDX-License-Identifier: MIT
"""Compares axles and the whole car with the independent reading of them (used only for tests).

    compare_car.py GIVEWAY_BINARY CASE.json [KIT ...]

Every number of `deflect --format json`: angles to 1e-6 degree, lengths to 1e-6 mm, forces and moments to 1e-5 of
the largest of their result. The exit status is 1 if anything failed.
"""
import os
import sys
import time

for _v in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
    os.environ.setdefault(_v, "1")
sys.dont_write_bytecode = True

import numpy as np  # noqa: E402

import compare_corner as cc  # noqa: E402
from reference import car_study  # noqa: E402
from reference.case import read  # noqa: E402


def identity(r):
    """What a result is the result of."""
    return r["kit"], r["corner"], r["load"], r.get("wheel"), r.get("side")


def compare(binary, path, kits, tally, loads=None):
    """All results of one case."""
    case = read(path)
    rates, _ = cc.run(binary, "rates", path)
    extra = {b["name"]: b for b in rates["bushes"]}      # of bushes that the case gives by size and compound
    result, why = cc.run(binary, "deflect", path)
    if result is None:
        tally.result(False, path, why)
        return
    found = {identity(r): r for r in result["results"]}
    for ref in car_study.deflect(case, extra, kits, loads):
        where = "/".join(str(x) for x in identity(ref) if x)
        got = found.get(identity(ref))
        if got is None or "failed" in got:
            tally.result(False, where, "no such result" if got is None else got["failed"])
            continue
        ref = {k: v for k, v in ref.items() if k != "side"}
        bad = []
        for key, diff, allow in cc.differences(got, ref, cc.scales(ref)):
            tally.see(key, diff / allow, diff, where)
            if not diff <= allow:
                bad.append(f"{key} {diff:.2e}")
        tally.result(not bad, where, ", ".join(bad[:8]))


def close(tally, where, got, ref, allow):
    """One number of `travel`."""
    diff = float(np.max(np.abs(np.asarray(got, float) - np.asarray(ref, float))))
    tally.see(where.rsplit("/", 1)[1], diff / allow, diff, where)
    return diff <= allow


PLACES = (40,)
ROLLING = {"roll_centre_mm": 1e-4, "roll_camber_deg_per_deg": 1e-7, "roll_steer_deg_per_deg": 1e-7,
           "roll_stiffness_Nm_per_deg": 1e-4}


def compare_travel(binary, path, axle, kit, tally):
    """`travel` with the wheels together, opposite and one alone: angles and lengths to 1e-6, loads to 1e-3 N."""
    case = read(path)
    rates, _ = cc.run(binary, "rates", path)
    extra = {b["name"]: b for b in rates["bushes"]}
    for wheels in ("together", "opposite", "one"):
        result, why = cc.run(binary, "travel", path, "--kit", kit, "--corner", axle, "--wheels", wheels, "--from-mm", "-60",
                             "--to-mm", "40", "--step-mm", "20")
        if result is None:
            tally.result(False, path, why)
            continue
        told = {r.get("side", "left"): r for r in result["results"]}
        refs = car_study.travel(case, extra, axle, kit, wheels, PLACES)
        tally.result(sorted(told) == sorted(s for s, _ in refs), f"{kit}/{axle}/{wheels}", "not the wheels that are to be told")
        for side, ref in refs:
            where, good = f"{kit}/{axle}/{wheels}/{side}", True
            for at, point in zip(PLACES, ref["points"]):
                got = told[side]["points"][(at + 60) // 20]
                for key, value in point.items():
                    good &= close(tally, f"{where} {at} mm/{key}", got[key], value, 1e-3 if key.endswith("_N") else 1e-6)
            for key, allow in ROLLING.items():
                good &= (key in ref) == (key in told[side])
                if key in ref:
                    good &= close(tally, f"{where}/{key}", told[side][key], ref[key], allow)
            tally.result(bool(good), where, "travel differs")


def main():
    """Compare, and say how it went."""
    binary, path, kits = sys.argv[1], sys.argv[2], sys.argv[3:]
    tally, start = cc.Tally(), time.time()
    compare(binary, path, kits, tally, os.environ.get("LOADS", "").split(",") if os.environ.get("LOADS") else None)
    for what in os.environ.get("TRAVEL", "").split():
        compare_travel(binary, path, *what.split("."), tally)
    for key, (ratio, diff, where) in sorted(tally.worst.items()):
        print(f"{key:34} {ratio:10.2e} {diff:11.2e}  {where}")
    tally.keep("axles and the whole car in a second reading, written apart (tests/crosscheck/reference/car.py)")
    print(f"{tally.passed} passed, {tally.failed} failed, {tally.numbers} numbers in {time.time() - start:.0f} s")
    return 1 if tally.failed or not tally.passed else 0


if __name__ == "__main__":
    sys.exit(main())
