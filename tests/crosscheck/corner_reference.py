# SPDX-License-Identifier: MIT
"""The corner computed a second time, by other means than the program's.

This is an independent reading of the published model, used only for tests: written from the
description of the physics and of the case file, without sight of the program. See reference/.

    corner_reference.py CASE.json           prints the results of `deflect`
    corner_reference.py travel CASE.json    prints the vertical path with wheel and parasitic rates
    corner_reference.py align CASE.json     prints the sensitivities of the case's adjusters
    corner_reference.py selfcheck           checks this reading against statics and closed forms
"""
import json
import os
import sys

for _v in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
    os.environ.setdefault(_v, "1")
sys.dont_write_bytecode = True

from reference import selfcheck  # noqa: E402
from reference.case import Unsupported, read  # noqa: E402
from reference.study import Study  # noqa: E402


def run_selfcheck():
    """Print every check; the number that failed decides the exit status."""
    failed = count = 0
    for name, error, tolerance in selfcheck.all_checks():
        good = abs(error) <= tolerance
        count += 1
        failed += not good
        print(f"{'ok  ' if good else 'FAIL'} {name}: {abs(error):.2e} (allowed {tolerance:.0e})")
    print(f"{count - failed} passed, {failed} failed")
    return 1 if failed else 0


def print_travel(case):
    """The vertical path of every corner and kit."""
    study = Study(case)
    for corner in case["corners"]:
        for kit in case["kits"]:
            print(corner, kit["name"])
            for row in study.travel(corner, kit["name"], range(-60, 61, 20)):
                print("  ", "  ".join(f"{k} {v:.9g}" for k, v in row.items()))


def print_align(case):
    """The sensitivities of every corner that has adjusters, with every kit."""
    study = Study(case)
    for corner in case.get("align", {}):
        for kit in case["kits"]:
            print(corner, kit["name"])
            for name, row in study.align(corner, kit["name"]):
                print(f"  {name:32}", "  ".join(f"{v:12.8f}" for v in row))


def main(args):
    """Entry point."""
    if args == ["selfcheck"]:
        return run_selfcheck()
    verbs = {"travel": print_travel, "align": print_align}
    if len(args) == 2 and args[0] in verbs:
        verbs[args[0]](read(args[1]))
        return 0
    if len(args) != 1:
        print(__doc__, file=sys.stderr)
        return 2
    case = read(args[0])
    json.dump({"format": "giveway-result-1", "command": "deflect", "case": case["title"],
               "results": Study(case).deflect()}, sys.stdout, indent=1)
    print()
    return 0


if __name__ == "__main__":
    try:
        sys.exit(main(sys.argv[1:]))
    except Unsupported as reason:
        sys.exit(f"this reading does not cover {reason}")
