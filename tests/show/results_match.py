# SPDX-License-Identifier: MIT
"""
What each command prints, held against the schema of results: results_match.py PROGRAM

The schema that is installed leaves room for keys of later versions. Here it is closed first, so that a key which is
printed and not described is found; and every key that is described must have been printed.
"""
import json
import re
import subprocess
import sys
import tempfile
from pathlib import Path

from jsonschema import Draft202012Validator

from schemas import SOURCE, Tally, checked, closed, errors

SCHEMA = checked(json.loads(subprocess.run([sys.argv[1], "help", "schema"], capture_output=True, text=True, check=True).stdout))
OPEN, CLOSED = Draft202012Validator(SCHEMA), Draft202012Validator(closed(SCHEMA))
CASES = ["cases/fast-saloon.json", "tests/cases/saloon-by-rule.json", "cases/hatchback.json", "tests/cases/hatchback-by-rule.json",
         "tests/casefile/samples/every-key.json", "tests/casefile/samples/other-choices.json", "tests/casefile/samples/shared-parts.json"]
BENCH = [["cases/press.csv", "dynamic=cases/rig.csv"], ["conical=tests/fuzz/corpus/bench/turned"]]
LOAD = {"tests/cases/saloon-by-rule.json": "hard stop", "tests/casefile/samples/every-key.json": "stop"}
DETAIL = {"rates": [["--explain", "--frequency-Hz", "20"]], "ride": [["--detail"]], "deflect": [["--detail"]]}

# Described, but not printed for every state of the samples: key, and when it is.
RARE = {
    "no_parasitic_rate": "the corner cannot be solved with its bushes free to turn",
    "belt_note": "a tyre whose mass the case leaves out; tests/cli/ride.test has one",
    "wavers": "friction and amplitudes of the ride model come to no one state",
    "failed": "a load of the case cannot be carried",
    "why": "a wheel lifts before a part of what a kit does to the car could be worked out",
}


def commands(program):
    """The commands that print JSON, as the program lists them."""
    listed = subprocess.run([program, "help"], capture_output=True, text=True, check=True).stdout
    for name in re.findall(r"^  ([a-z]+) ", listed, re.M):
        if name == "help":
            continue
        told = subprocess.run([program, "help", name], capture_output=True, text=True, check=True).stdout
        if "--format" in told:
            yield name


def printed(program, command, *arguments):
    """The object that a command prints; None where the case is not made for that command."""
    done = subprocess.run([program, command, *arguments, "--format", "json", "--quiet"], capture_output=True, text=True,
                          cwd=SOURCE)
    if done.returncode not in (0, 1):
        raise SystemExit(f"giveway {command} {' '.join(arguments)}: {done.stderr}")
    if not done.stdout:
        return None
    return json.loads(done.stdout)


def runs(program, command):
    """Each way to call a command that may print other keys: arguments, and what was printed."""
    if command == "match":
        with tempfile.TemporaryDirectory() as folder:
            ramp = Path(folder) / "ramp.csv"
            ramp.write_text("name,corner,travel_mm,toe_change_deg,within_deg\nbump,front,20,1,0.02\nbump,front,-20,0,0.02\n")
            yield ["readings that contradict"], printed(program, command, CASES[1], "--readings", str(ramp))
        return
    for files in BENCH if command == "bench" else []:
        yield files, printed(program, command, *files)
    for case in CASES if command != "bench" else []:
        ways = [[]] + (DETAIL.get(command, []) if case == CASES[0] else [])
        if command == "spread":
            ways = [["--draws", "100"], ["--draws", "100", "--ride"]]
        if command == "choose":
            ways = [["--draws", "100", "--corner", "front"]]
        if command == "travel" and case in LOAD:
            ways.append(["--load", LOAD[case]])
        if command == "travel" and "shared" in case:
            ways += [["--wheels", "opposite"], ["--wheels", "one", "--load", "kerb"]]
        for way in ways:
            document = printed(program, command, case, *way)
            if document is not None:
                yield [case, *way], document
    if command == "check":
        with tempfile.TemporaryDirectory() as folder:
            faulty = Path(folder) / "faulty.json"
            faulty.write_text('{"format":"giveway-case-1","titel":"t","bushes":{}}')
            yield ["a faulty case"], printed(program, command, str(faulty))


def keys_of(document, found):
    if isinstance(document, dict):
        for key, value in document.items():
            found.add(key)
            keys_of(value, found)
    elif isinstance(document, list):
        for value in document:
            keys_of(value, found)


def described_keys(schema, found):
    if isinstance(schema, dict):
        found.update(schema.get("properties", {}))
        for value in schema.values():
            described_keys(value, found)
    elif isinstance(schema, list):
        for value in schema:
            described_keys(value, found)


def lost_dependents(schema, found):
    """Keys that stand only together are keys of their object."""
    if isinstance(schema, dict):
        known = set(schema.get("properties", {}))
        for key, others in schema.get("dependentRequired", {}).items():
            found.update({key, *others} - known)
        for value in schema.values():
            lost_dependents(value, found)
    elif isinstance(schema, list):
        for value in schema:
            lost_dependents(value, found)


def schema_bites(tally, command, document):
    """A result without one of its keys, or with another kind of value there, is refused; a new key is not."""
    needed = SCHEMA["$defs"][f"{command}_result"]["required"]
    missed = []
    for key, value in document.items():
        other = 17 if isinstance(value, (str, list)) else []
        lacking = {k: v for k, v in document.items() if k != key}
        missed += [f"without {key}"] if key in needed and OPEN.is_valid(lacking) else []
        missed += [f"{key}: {other}"] if OPEN.is_valid({**document, key: other}) else []
    tally.verdict(not missed, f"{command}: a result that lacks a key, or has another kind of value, is refused", missed)
    newer = {**document, "of_a_later_version": 1}
    tally.verdict(OPEN.is_valid(newer) and not CLOSED.is_valid(newer), f"{command}: a key of a later version is allowed")


def main():
    program, tally, seen = sys.argv[1], Tally(), set()
    for command in commands(program):
        smallest = None
        for arguments, document in runs(program, command):
            keys_of(document, seen)
            found = errors(CLOSED, document)
            tally.verdict(not found, f"{command} {' '.join(arguments)} prints what is described", found)
            if smallest is None or len(str(document)) < len(str(smallest)):
                smallest = document
        tally.verdict(smallest is not None, f"{command} prints something for one of the samples")
        if smallest is not None:
            schema_bites(tally, command, smallest)
    described = set()
    described_keys(SCHEMA["$defs"], described)
    lost = set()
    lost_dependents(SCHEMA, lost)
    tally.verdict(not lost and "dependentRequired" in json.dumps(SCHEMA), "keys that stand only together are described beside each other", lost)
    unseen = sorted(described - seen - set(RARE))
    tally.verdict(not unseen, "every key that is described is printed for one of the samples", unseen)
    tally.leave()


main()
