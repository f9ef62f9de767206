#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Plants the faults of tests/mutants.txt, one at a time, in copies of the tree, and says which of them no test sees.

usage: mutants.py [--room physics|output] [--only TEXT] [--list] [--jobs N]

A line of the list: file|text as it stands there|text with the fault|tests that should see it, comma between|what is
wrong then. Planted is the first place where the text stands. A test is a program (tests/vehicle/test_transfer), a
script (tests/show/values.sh) or command lines (tests/cli/rates.test). A fault is dead when one of its tests fails, or
when it does not build. --list only looks whether every fault still fits its file. Status 1: one lives or does not fit.
"""
import argparse
import os
import shutil
import signal
import subprocess
import sys
import tempfile
import threading
import time
from concurrent.futures import ThreadPoolExecutor
from queue import Queue

LONGEST = 300  # seconds for one test


def room_of(file):
    """The showing half, or what is shown."""
    return "output" if file.split("/")[1] in ("format", "record", "chart", "show", "page", "cli") else "physics"


def read(path):
    faults = []
    with open(path, encoding="utf-8") as f:
        for at, line in enumerate(f, 1):
            if not line.strip() or line.startswith("#"):
                continue
            parts = line.rstrip("\n").split("|")
            if len(parts) not in (4, 5):
                sys.exit(f"{path}:{at}: not a fault: file|text|text with the fault|tests|what is wrong")
            file, old, new, tests = parts[:4]
            what = parts[4] if len(parts) == 5 else f"{old} -> {new}"
            faults.append({"room": room_of(file), "tests": tests.split(","), "file": file, "old": old, "new": new,
                           "what": what})
    return faults


def fits(fault):
    if not os.path.exists(fault["file"]):
        return False
    with open(fault["file"], encoding="utf-8") as f:
        return fault["old"] in f.read()


def files():
    listed = subprocess.run(["git", "ls-files", "-z"], stdout=subprocess.PIPE, check=True).stdout
    return [name for name in listed.decode("utf-8").split("\0") if name and os.path.exists(name)]


def copy_tree(to):
    for name in files():
        os.makedirs(os.path.join(to, os.path.dirname(name)), exist_ok=True)
        shutil.copy2(name, os.path.join(to, name))


def make(tree, *goals):
    env = {k: v for k, v in os.environ.items() if not k.startswith(("MAKE", "MFLAGS"))}
    return subprocess.run(["make", "-s", "CFLAGS=-O1", *goals], cwd=tree, env=env, stdout=subprocess.PIPE,
                          stderr=subprocess.STDOUT, check=False)


def programs(faults):
    """What has to be built for a set of faults: the program, and the tests that are programs."""
    named = sorted({t for fault in faults for t in fault["tests"] if "." not in t})
    return ["build/release/giveway"] + ["build/release/" + t for t in named]


def command(tree, test):
    if test.endswith(".test"):
        return ["sh", "tests/cli/run.sh", tree + "/build/release/giveway", os.path.basename(test)[:-5]]
    if test.endswith(".sh"):
        return ["bash", test]
    return ["build/release/" + test]


def holds(process):
    """Reads what a test says, and ends it with its first failure: that one is enough."""
    for line in process.stdout:
        if line.startswith((b"not ok", b"FAILED")):
            return False
    return process.wait() in (0, 77)


def passes(tree, test):
    scratch = tempfile.mkdtemp(dir=os.path.dirname(tree))
    python = next((p for p in ("/usr/bin/python3", sys.executable) if os.path.exists(p)), "python3")
    env = dict(os.environ, LC_ALL="C", TZ="UTC", NO_COLOR="1", B="build/release", MODE="release", SOURCE=tree,
               GIVEWAY=tree + "/build/release/giveway", TMPDIR=scratch, PYTHON=python, CMOCKA_MESSAGE_OUTPUT="TAP")
    process = subprocess.Popen(command(tree, test), cwd=tree, env=env, stdin=subprocess.DEVNULL,
                               stdout=subprocess.PIPE, stderr=subprocess.STDOUT, start_new_session=True)
    late = threading.Timer(LONGEST, end, [process])  # one that hangs sees the fault too
    late.start()
    try:
        return holds(process)
    finally:
        late.cancel()
        end(process)
        shutil.rmtree(scratch, ignore_errors=True)


def end(process):
    """A test and all that it has started."""
    try:
        os.killpg(process.pid, signal.SIGKILL)
    except ProcessLookupError:
        pass
    process.wait()


def write(path, text):
    """A file's new text, and a time that make sees as new."""
    with open(path, "w", encoding="utf-8") as f:
        f.write(text)
    now = time.time() + 1
    os.utime(path, (now, now))


def killer(tree, fault):
    """The test that saw the fault, "the compiler", or None: it lives. The tree is as before then."""
    path = os.path.join(tree, fault["file"])
    with open(path, encoding="utf-8") as f:
        before = f.read()
    write(path, before.replace(fault["old"], fault["new"], 1))
    try:
        if make(tree, *programs([fault])).returncode != 0:
            return "the compiler"
        return next((t for t in fault["tests"] if not passes(tree, t)), None)
    finally:
        write(path, before)


def prepare(work, jobs, faults):
    """Copies of the tree, built once; every test that is named must pass before anything is planted."""
    first = os.path.join(work, "tree-0")
    copy_tree(first)
    built = make(first, f"-j{jobs}", *programs(faults))
    if built.returncode != 0:
        sys.exit("the tree does not build:\n" + built.stdout.decode("utf-8", "replace")[-2000:])
    for test in sorted({t for fault in faults for t in fault["tests"]}):
        if not passes(first, test):
            sys.exit(f"{test} fails without any fault: nothing can be learned from it")
    trees = [first]
    for i in range(1, jobs):
        trees.append(os.path.join(work, f"tree-{i}"))
        shutil.copytree(first, trees[-1], symlinks=True)
    return trees


def plant_all(faults, trees):
    free = Queue()
    for tree in trees:
        free.put(tree)

    def plant(fault):
        tree = free.get()
        try:
            return fault, killer(tree, fault)
        finally:
            free.put(tree)

    alive = 0
    with ThreadPoolExecutor(len(trees)) as pool:
        for fault, by in pool.map(plant, faults):
            alive += by is None
            print(f"{'LIVES' if by is None else 'dead '}  {fault['room']}: {fault['what']} ({fault['file']})"
                  + ("" if by is None else f": seen by {by}"), flush=True)
    return alive


def main():
    parser = argparse.ArgumentParser(description="Plants faults and says which no test sees.")
    parser.add_argument("--room")
    parser.add_argument("--only", default="")
    parser.add_argument("--list", action="store_true")
    parser.add_argument("--jobs", type=int, default=2)
    args = parser.parse_args()
    os.chdir(os.path.join(os.path.dirname(os.path.abspath(__file__)), ".."))
    faults = [f for f in read("tests/mutants.txt") if args.room in (None, f["room"]) and args.only in f["file"] + f["what"]]
    unfit = [f for f in faults if not fits(f)]
    for fault in unfit:
        print(f"does not fit: {fault['what']}: \"{fault['old']}\" does not stand in {fault['file']}")
    faults = [f for f in faults if f not in unfit]
    if args.list or not faults:
        print(f"{len(faults)} faults fit, {len(unfit)} do not")
        return 1 if unfit or not faults else 0
    start = time.time()
    with tempfile.TemporaryDirectory(prefix="giveway-mutants-") as work:
        alive = plant_all(faults, prepare(work, args.jobs, faults))
    print(f"{len(faults)} faults planted in {time.time() - start:.0f} s: {len(faults) - alive} dead, {alive} alive, "
          f"{len(unfit)} do not fit")
    return 1 if alive or unfit else 0


if __name__ == "__main__":
    sys.exit(main())
