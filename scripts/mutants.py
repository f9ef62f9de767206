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
import resource
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
    return "output" if file.split("/")[1] in ("format", "start", "record", "chart", "show", "page", "cli") else "physics"


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


def run(command, tree):
    """What a command says, and whether it went well."""
    env = {k: v for k, v in os.environ.items() if not k.startswith(("MAKE", "MFLAGS"))}
    done = subprocess.run(command, cwd=tree, env=env, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, check=False)
    return done.returncode == 0, done.stdout.decode("utf-8", "replace")


def make(tree, *goals):
    """Slower tests make up for a quicker compiler: -O1. The quickest linker there is: every fault is linked anew."""
    linker = next(("-fuse-ld=" + name for name in ("mold", "lld", "gold") if shutil.which("ld." + name)), "")
    return run(["make", "-s", "CFLAGS=-O1", "LDFLAGS=" + linker, *goals], tree)


def program_of(test):
    """What a test runs: itself where it is a program, or giveway."""
    return "build/release/" + ("giveway" if "." in test else test)


def programs(faults):
    return sorted({program_of(t) for fault in faults for t in fault["tests"]} | {"build/release/giveway"})


class Shop:
    """A tree that is built, and how one of its files is compiled and one of its programs linked without make."""

    def __init__(self, tree):
        self.tree = tree
        self.compiler, self.linker, self.libraries = make(tree, "print-flags", "print-link")[1].splitlines()[:3]

    def compile(self, file):
        return run(self.compiler.split() + ["-w", "-c", "-o", "planted.o", file], self.tree)[0]

    def link(self, program, file):
        """A program with planted.o in the place of a file's object: what it defines is not looked for in archives."""
        built = os.path.join(self.tree, "build/release")
        own = "build/release" + file[len("src"):-len("c")] + "o"
        if program == "build/release/giveway":
            parts = [f"build/release/cli/{o}" for o in sorted(os.listdir(built + "/cli")) if o.endswith(".o")]
        else:
            parts = [program + ".o", "build/release/tests/libsupport.a"]
        parts = ["planted.o"] + [o for o in parts if o != own] + ["build/release/libshow.a", "build/release/libgiveway.a"]
        return run(self.linker.split() + ["-o", program + ".planted"] + parts + self.libraries.split()
                   + ["-lcmocka"] * (program != "build/release/giveway"), self.tree)[0]


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
               GIVEWAY=tree + "/build/release/giveway", TMPDIR=scratch, PYTHON=python, CMOCKA_MESSAGE_OUTPUT="TAP",
               PYTHONUNBUFFERED="1")
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


def killer(shop, fault):
    """The test that saw the fault, "the compiler", or None: it lives. The tree is as before then."""
    path = os.path.join(shop.tree, fault["file"])
    with open(path, encoding="utf-8") as f:
        before = f.read()
    write(path, before.replace(fault["old"], fault["new"], 1))
    try:
        if not fault["file"].endswith(".c"):
            return seen_with_make(shop, fault)
        if not shop.compile(fault["file"]):
            return "the compiler"
        return next((t for t in fault["tests"] if not passes_planted(shop, t, fault["file"])), None)
    finally:
        write(path, before)


def seen_with_make(shop, fault):
    """For a fault in a header, which many files read."""
    if not make(shop.tree, *programs([fault]))[0]:
        return "the compiler"
    return next((t for t in fault["tests"] if not passes(shop.tree, t)), None)


def passes_planted(shop, test, file):
    """A test with the fault in the program that it runs; the sound program comes back afterwards."""
    program = program_of(test)
    if not shop.link(program, file):
        sys.exit(f"{program} with the object of {file} does not link")
    path = os.path.join(shop.tree, program)
    os.replace(path, path + ".sound")
    os.replace(path + ".planted", path)
    try:
        return passes(shop.tree, test)
    finally:
        os.replace(path + ".sound", path)


def prepare(work, jobs, faults):
    """Copies of the tree, built once; every test that is named must pass before anything is planted."""
    first = os.path.join(work, "tree-0")
    copy_tree(first)
    built, said = make(first, f"-j{jobs}", *programs(faults))
    if not built:
        sys.exit("the tree does not build:\n" + said[-2000:])
    print(f"built: {cost():.0f} s of processor time", flush=True)
    tests = sorted({t for fault in faults for t in fault["tests"]})
    with ThreadPoolExecutor(jobs) as pool:
        for test, passed in zip(tests, pool.map(lambda t: passes(first, t), tests)):
            if not passed:
                sys.exit(f"{test} fails without any fault: nothing can be learned from it")
    print(f"{len(tests)} tests pass without a fault: {cost():.0f} s of processor time", flush=True)
    for i in range(1, jobs):
        shutil.copytree(first, os.path.join(work, f"tree-{i}"), symlinks=True)
    return [Shop(os.path.join(work, f"tree-{i}")) for i in range(jobs)]


def cost():
    """Processor time of all that has been started and has ended, in seconds."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def plant_all(faults, shops):
    free = Queue()
    for shop in shops:
        free.put(shop)

    def plant(fault):
        shop = free.get()
        start, before = time.time(), cost()
        try:
            return fault, killer(shop, fault), time.time() - start, cost() - before
        finally:
            free.put(shop)

    results = []
    with ThreadPoolExecutor(len(shops)) as pool:
        for fault, by, seconds, processor in pool.map(plant, faults):
            results.append((seconds, processor, fault, by))
            print(f"{'LIVES' if by is None else 'dead '}  {fault['room']}: {fault['what']} ({fault['file']})"
                  + ("" if by is None else f": seen by {by}") + f", {seconds:.1f} s", flush=True)
    return results


def sum_up(results, start, unfit):
    print("the slowest:")
    for seconds, processor, fault, by in sorted(results, key=lambda r: -r[0])[:10]:
        print(f"{seconds:7.1f} s  {fault['what']} ({fault['file']}): {by or ','.join(fault['tests'])}")
    alive = sum(by is None for _, _, _, by in results)
    print(f"{len(results)} faults planted in {time.time() - start:.0f} s, {cost():.0f} s of processor time: "
          f"{len(results) - alive} dead, {alive} alive, {unfit} do not fit")
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
    with tempfile.TemporaryDirectory(prefix="giveway-mutants-", ignore_cleanup_errors=True) as work:
        alive = sum_up(plant_all(faults, prepare(work, args.jobs, faults)), start, len(unfit))
    return 1 if alive or unfit else 0


if __name__ == "__main__":
    sys.exit(main())
