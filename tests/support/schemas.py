# SPDX-License-Identifier: MIT
"""What the tests of the JSON Schemas share: loading them, asking them, closing them."""
import json
import os
from pathlib import Path

from jsonschema import Draft202012Validator

SOURCE = Path(os.environ["SOURCE"])


def load(path):
    """A schema of the source tree; it must itself be one of draft 2020-12."""
    return checked(json.loads((SOURCE / path).read_text()))


def checked(schema):
    """A schema that is itself one of draft 2020-12."""
    Draft202012Validator.check_schema(schema)
    return schema


def closed(schema):
    """The schema with every object that lists keys closed to others: what is printed must be described."""
    if isinstance(schema, list):
        return [closed(entry) for entry in schema]
    if not isinstance(schema, dict):
        return schema
    tight = {key: closed(value) for key, value in schema.items()}
    if tight.get("type") == "object" and "properties" in tight:
        tight.setdefault("additionalProperties", False)
    return tight


def errors(validator, document):
    """One line an error: where, and what."""
    lines = []
    for error in validator.iter_errors(document):
        for leaf in leaves(error):
            where = ".".join(str(step) for step in leaf.absolute_path)
            lines.append(f"{where or 'top'}: {leaf.message[:160]}")
    return lines


def leaves(error):
    """The errors that are not made of others."""
    if not error.context:
        return [error]
    return [leaf for part in error.context for leaf in leaves(part)]


class Tally:
    """Counts what holds, prints what does not, in the manner of the Test Anything Protocol."""

    def __init__(self):
        self.failed = 0

    def verdict(self, holds, what, details=()):
        print(("ok - " if holds else "not ok - ") + what)
        if not holds:
            self.failed += 1
            for line in list(details)[:12]:
                print(f"#   {line}")

    def leave(self):
        raise SystemExit(1 if self.failed else 0)
