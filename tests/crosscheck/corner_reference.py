# SPDX-License-Identifier: MIT
"""The corner computed a second time, by other means than the program's.

This is an independent reading of the published model, used only for tests: written from the
description of the physics and of the case file, without sight of the program. See reference/.

    corner_reference.py CASE.json      prints the results of `deflect`
    corner_reference.py selfcheck      checks this reading against statics and closed forms
"""
import json
import os
import sys

for _v in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
    os.environ.setdefault(_v, "1")
sys.dont_write_bytecode = True

from reference import selfcheck  # noqa: E402
from reference.case import read  # noqa: E402
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


def main(args):
    """Entry point."""
    if len(args) != 1:
        print(__doc__, file=sys.stderr)
        return 2
    if args[0] == "selfcheck":
        return run_selfcheck()
    case = read(args[0])
    json.dump({"format": "giveway-result-1", "command": "deflect", "case": case["title"],
               "results": Study(case).deflect()}, sys.stdout, indent=1)
    print()
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
