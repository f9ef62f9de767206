# SPDX-License-Identifier: MIT
"""Rows for the table of validation, as tests/support/check.c writes them: see scripts/validate.sh."""
import os


def record(kind, basis, source, what, want, got, allowed):
    """One comparison with the world outside; does nothing unless GIVEWAY_VALIDATION names a file.

    kind: "computed", "copied" (a printed table carried over) or "second reading" (of the same mechanics, by a
    program written apart from this one). basis: where the wanted value comes from: "print", "solver" (a
    general-purpose one), "formula" (of the source, evaluated again), "memory" or "reading" (a second reading).
    """
    path = os.environ.get("GIVEWAY_VALIDATION")
    if path:
        with open(path, "a", encoding="utf-8") as table:
            table.write(f"{kind}\t{basis}\t{source}\t{what}\t{want:.12g}\t{got:.12g}\t{allowed:.6g}\n")
