#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Runs the commands of the blocks marked ```console in README.md again and puts in what they print now.

usage: readme.py [--check] [FILE...]

A line "..." stands for lines left out. What stands between two of them is looked for in the new output by its
words, whatever its figures, and taken over from there with as many lines as it has now. A piece that is no longer
found, or a command that ends with another exit status than "# exit N" says, is left as it was and told (status 1).
--check writes nothing and tells with status 1 what would change.
"""
import difflib
import os
import re
import subprocess
import sys

DOTS = "..."
ALIKE = 0.6  # how alike two lines must be, of 1, to be the same line with other words


def shape(line):
    """A line without its figures and its rules, so that a table is found again when its numbers change."""
    line = re.sub(r"[-+]?\d+(?:[.,'°]\d+)*", "#", line)
    line = re.sub(r"-{2,}", "--", line)
    return re.sub(r"\s+", " ", line).strip()


def pieces(lines):
    """The lines between the dots, and whether dots stand at the beginning and at the end."""
    parts = [[]]
    for line in lines:
        if line.strip() == DOTS:
            parts.append([])
        else:
            parts[-1].append(line)
    return [p for p in parts if p], lines[:1] == [DOTS], lines[-1:] == [DOTS]


def find(line, got, start):
    """The place from `start` on of the line most like `line`; None if there is none."""
    want = shape(line)
    best, place = ALIKE, None
    for i in range(start, len(got)):
        have = shape(got[i])
        if have == want:
            return i
        if want and have:
            alike = difflib.SequenceMatcher(None, want, have, autojunk=False).ratio()
            if alike > best:
                best, place = alike, i
    return place


def best_run(part, got, start):
    """The lines of `got` that pair best with those of `part`: the place of the first and of the last.

    Lines are paired in order. A piece whose first or last line is gone begins and ends where its next line does.
    """
    wanted = [shape(p) for p in part]
    have = [shape(g) for g in got[start:]]
    first = last = None
    for shift in sorted(range(len(have)), key=lambda s: (-score(wanted, have, s), s))[:1]:
        if score(wanted, have, shift) > 0:
            first = start + shift
    if first is None:
        first = find(part[0], got, start)
    if first is None:
        return None
    for back, line in enumerate(reversed(part)):
        last = find_end(line, got, first, len(part) - 1 - back)
        if last is not None:
            break
    return None if last is None else (first, last)


def score(wanted, have, shift):
    """How many lines agree if the piece begins at `shift`; the first line must, and counts for most."""
    if wanted[0] != have[shift]:
        return 0
    pairs = difflib.SequenceMatcher(None, wanted, have[shift:shift + 2 * len(wanted) + 4], autojunk=False)
    return sum(m.size for m in pairs.get_matching_blocks())


def find_end(line, got, first, expected):
    """The last line of a piece: of those of its shape the one nearest to where it used to stand."""
    want = shape(line)
    same = [i for i in range(first, len(got)) if shape(got[i]) == want]
    if same:
        return min(same, key=lambda i: abs(i - first - expected))
    near = [i for i in range(first, min(len(got), first + expected + 6))
            if difflib.SequenceMatcher(None, want, shape(got[i]), autojunk=False).ratio() > ALIKE]
    return min(near, key=lambda i: abs(i - first - expected)) if near else None


def renew(block, got):
    """The block with its lines taken from `got`; None and the piece that was not found otherwise."""
    parts, dots_first, dots_last = pieces(block)
    if not parts:
        return block, None
    runs, start = [], 0
    for i, part in enumerate(parts):
        run = best_run(part, got, start)
        opens, closes = i == 0 and not dots_first, i == len(parts) - 1 and not dots_last
        if opens and closes:
            run = (0, len(got) - 1)
        elif run is None:
            return None, part[0]
        elif opens:
            run = (0, run[1])
        elif closes:
            run = (run[0], len(got) - 1)
        runs.append(run)
        start = run[1] + 1
    out = [DOTS] if dots_first and runs[0][0] > 0 else []
    for i, (first, last) in enumerate(runs):
        if i and first > runs[i - 1][1] + 1:
            out.append(DOTS)
        out += got[first:last + 1]
    if dots_last and runs[-1][1] < len(got) - 1:
        out.append(DOTS)
    return out, None


def strip_end(lines):
    while lines and not lines[-1].strip():
        lines = lines[:-1]
    return lines


def run(command):
    env = dict(os.environ, LC_ALL="C", NO_COLOR="1")
    done = subprocess.run(["bash", "-c", command], stdin=subprocess.DEVNULL, stdout=subprocess.PIPE,
                          stderr=subprocess.STDOUT, env=env, check=False)
    return done.returncode, strip_end(done.stdout.decode("utf-8").split("\n"))


def blocks(lines):
    """Yields (line of the command, first line after it, line after its output) of every command."""
    inside, command = False, None
    for i, line in enumerate(lines):
        if line.startswith("```"):
            if command is not None:
                yield command, command + 1, i
            inside, command = not inside and line.startswith("```console"), None
        elif inside and line.startswith("$ "):
            if command is not None:
                yield command, command + 1, i
            command = i if line.startswith("$ giveway ") else None


def refresh(path, check):
    with open(path, encoding="utf-8") as f:
        lines = f.read().split("\n")
    bad, changed = 0, 0
    for at, first, after in reversed(list(blocks(lines))):
        text = lines[at][2:]
        told = re.search(r"# exit (\d+)$", text)
        status, got = run(text)
        if status != int(told.group(1) if told else 0):
            print(f"{path}:{at + 1}: '{text}' ends with status {status}: {got[0] if got else 'no output'}")
            bad = 1
            continue
        old = strip_end(lines[first:after])
        new, lost = renew(old, got)
        if new is None:
            print(f"{path}:{at + 1}: '{text}' no longer prints a line like '{lost.strip()}': mend this block by hand")
            bad = 1
        elif new != old:
            changed += 1
            print(f"{path}:{at + 1}: {'differs' if check else 'new'}: {text}")
            lines[first:first + len(old)] = new
    if changed and not check:
        with open(path + ".part", "w", encoding="utf-8") as f:
            f.write("\n".join(lines))
        os.replace(path + ".part", path)
    if not changed and not bad:
        print(f"{path}: every example prints what stands there")
    return bad or (check and changed > 0)


def main():
    args = sys.argv[1:]
    check = "--check" in args
    files = [a for a in args if not a.startswith("-")] or ["README.md"]
    return 1 if any([refresh(f, check) for f in files]) else 0


if __name__ == "__main__":
    sys.exit(main())
