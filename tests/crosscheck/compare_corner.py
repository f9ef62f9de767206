# SPDX-License-Identifier: MIT
"""Compares the program with the independent reading of the corner (used only for tests).

    compare_corner.py GIVEWAY_BINARY [--cases N] [--seed FIRST] [CASE.json ...]

Runs `deflect --format json` on N random cases and on the cases of the checkout (or on those named),
and compares every number: angles to 1e-6 degree, lengths to 1e-6 mm, forces and moments to 1e-5 of
the largest in their result. Prints the worst differences and a closing line; the exit status is 1
if anything failed.

A member that spins freely about the line of its joints is held in both: it goes from the design
line to the current one by the shortest turn. Bushes that are described by shape are compared with the program's own rates for them: here the mechanics is on trial alone.
"""
import argparse
import json
import os
import subprocess
import sys
import tempfile
import time

for _v in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
    os.environ.setdefault(_v, "1")
sys.dont_write_bytecode = True

import numpy as np  # noqa: E402

import random_cases  # noqa: E402
import validation  # noqa: E402
from reference.case import Unsupported, read  # noqa: E402
from reference.study import Study  # noqa: E402

HERE = os.path.dirname(os.path.abspath(__file__))
ANGLE, LENGTH, FORCE = 1e-6, 1e-6, 1e-5


class Tally:
    """Worst difference of each kind of number, as a fraction of what is allowed."""

    def __init__(self):
        self.worst, self.passed, self.failed, self.numbers, self.skipped = {}, 0, 0, 0, []

    def see(self, key, ratio, difference, where):
        """Note one number."""
        self.numbers += 1
        if not ratio <= self.worst.get(key, (-1.0,))[0]:
            self.worst[key] = (ratio, difference, where)

    def keep(self, subject):
        """The worst of each kind into the table of validation."""
        for key, (ratio, difference, where) in sorted(self.worst.items()):
            allowed = difference / ratio if ratio > 0 else 0.0
            validation.record("second reading", "reading", f"{subject}, worst of each kind of number", f"{key}, {where}", 0.0,
                              difference, allowed)

    def result(self, good, where, why=""):
        """Note one result."""
        self.passed += good
        self.failed += not good
        if not good:
            print(f"FAIL {where}: {why}")


def run(binary, verb, path, *more):
    """The result object of one command, or the text of its error."""
    done = subprocess.run([binary, verb, path, *more, "--format", "json", "--quiet"],
                          capture_output=True, text=True, timeout=120)
    if done.returncode != 0:
        return None, f"exit status {done.returncode}: {done.stderr.strip()[-300:]}"
    try:
        return json.loads(done.stdout), ""
    except json.JSONDecodeError as e:
        return None, f"not JSON: {e}"


def allowed(key, biggest):
    """What two programs may differ by, from the unit in the name of the key."""
    if key.endswith("_deg"):
        return ANGLE
    if key.endswith("_mm"):
        return LENGTH
    return FORCE * biggest["moment" if key.endswith("_Nm") else "force"]


def scales(ref):
    """The largest force and the largest moment in a result."""
    force = [np.abs(b["force_N"]).max() for b in ref["bushes"]] + [abs(ref["spring_force_N"])]
    moment = [np.abs(b["moment_Nm"]).max() for b in ref["bushes"]]
    return {"force": max(force + [1.0]), "moment": max(moment + [1.0])}


def differences(got, ref, biggest, prefix=""):
    """(key, difference, allowed) of every number in ref; a missing key is infinitely wrong."""
    for key, want in ref.items():
        if key in ("kit", "corner", "load", "wheel", "joint", "bushes"):
            continue
        if isinstance(want, dict):
            yield from differences(got.get(key, {}), want, biggest, f"{key}.")
            continue
        have = got.get(key)
        try:
            diff = np.max(np.abs(np.array(have, float) - np.array(want, float)))
        except (TypeError, ValueError):
            diff = np.inf
        yield prefix + key, diff, allowed(key, biggest)
    if "bushes" in ref:
        by_name = {b["joint"]: b for b in got.get("bushes", [])}
        for b in ref["bushes"]:
            for key, diff, allow in differences(by_name.get(b["joint"], {}), b, biggest):
                yield f"bushes.{key}", diff, allow


def identity(r):
    """What a result is the result of."""
    return r["kit"], r["corner"], r["load"], r.get("wheel")


def compare_case(binary, path, label, tally):
    """All results of one case."""
    case = read(path)
    shaped = any(b["type"] not in ("rates", "ball_joint", "measured") for b in case["bushes"].values())
    extra = None
    if shaped:
        rates, why = run(binary, "rates", path)
        extra = {b["name"]: b for b in rates["bushes"]} if rates else None
    study = Study(case, extra)
    try:
        wanted = study.deflect()
    except (Unsupported, RuntimeError) as e:
        tally.skipped.append(f"{label}: {e}")
        return
    result, why = run(binary, "deflect", path)
    if result is None:
        tally.result(False, label, why)
        return
    found = {identity(r): r for r in result["results"]}
    for ref in wanted:
        where = f"{label} {'/'.join(str(x) for x in identity(ref) if x)}"
        got = found.pop(identity(ref), None)
        if got is None:
            tally.result(False, where, "no such result")
            continue
        bad = []
        for key, diff, allow in differences(got, ref, scales(ref)):
            tally.see(key, diff / allow, diff, where)
            if not diff <= allow:
                bad.append(f"{key} {diff:.2e}")
        tally.result(not bad, where, ", ".join(bad))
    for extra_result in found:
        tally.result(False, label, f"a result that was not expected: {extra_result}")


def arguments():
    """Command line."""
    p = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    p.add_argument("binary")
    p.add_argument("case", nargs="*")
    p.add_argument("--cases", type=int, default=24, help="how many random cases (24)")
    p.add_argument("--seed", type=int, default=0, help="the first one's seed (0)")
    return p.parse_args()


def main():
    """Compare, and say how it went."""
    a = arguments()
    tally, start = Tally(), time.time()
    named = a.case or random_cases.demonstration()
    for path in named:
        compare_case(a.binary, path, os.path.basename(path), tally)
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(a.seed, a.seed + (0 if a.case else a.cases)):
            path = os.path.join(folder, f"random-{seed}.json")
            with open(path, "w", encoding="utf-8") as f:
                json.dump(random_cases.make(seed), f)
            compare_case(a.binary, path, f"random {seed}", tally)
            with open(path, "w", encoding="utf-8") as f:
                json.dump(random_cases.with_curves(random_cases.make(seed), seed), f)
            compare_case(a.binary, path, f"random {seed}, measured", tally)
    print(f"{'number':34} {'of allowed':>10} {'difference':>11}  where")
    for key, (ratio, diff, where) in sorted(tally.worst.items()):
        print(f"{key:34} {ratio:10.2e} {diff:11.2e}  {where}")
    tally.keep("the corner in a second reading, written apart (tests/crosscheck/reference)")
    for line in tally.skipped:
        print(f"left out: {line}")
    print(f"{tally.numbers} vectors and numbers in {time.time() - start:.0f} s")
    print(f"{tally.passed} passed, {tally.failed} failed")
    return 1 if tally.failed or not tally.passed else 0


if __name__ == "__main__":
    sys.exit(main())
