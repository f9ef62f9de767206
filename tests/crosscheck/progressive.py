#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Large-strain radial curve of a long bonded ring by CalculiX (ccx): force over the linear force.

Plane strain, half a ring of CPE8R, inner face pushed along x. Yeoh with C20 = G/(4 Jm), C30 = G/(6 Jm^2); without
--chain-limit plain neo-Hookean. Writes to a temporary directory. Example:
    progressive.py --outer 20 --chain-limit 30
"""
import argparse
import math
import pathlib
import subprocess
import tempfile

RADIAL, ROUND, SHEAR, BULK = 12, 48, 1.0, 5000.0


def mesh(a, b):
    number, lines, elements = {}, [], []

    def node(i, j):
        if (i, j) not in number:
            number[i, j] = len(number) + 1
            s = i / (2 * RADIAL)
            r = a + (b - a) * (0.25 * (1 - math.cos(math.pi * s)) + 0.5 * s)
            angle = math.pi * j / (2 * ROUND)
            lines.append(f"{number[i, j]},{r * math.cos(angle):.9g},{r * math.sin(angle):.9g},0.")
        return number[i, j]

    for i in range(0, 2 * RADIAL, 2):
        for j in range(0, 2 * ROUND, 2):
            elements.append([node(i + p, j + q) for p, q in
                             ((0, 0), (2, 0), (2, 2), (0, 2), (1, 0), (2, 1), (1, 2), (0, 1))])
    return number, lines, elements


def deck(a, b, travels, chain_limit):
    number, lines, elements = mesh(a, b)
    sets = {
        "IN": [n for (i, _), n in number.items() if i == 0],
        "OUT": [n for (i, _), n in number.items() if i == 2 * RADIAL],
        "CUT": [n for (i, j), n in number.items() if j in (0, 2 * ROUND) and 0 < i < 2 * RADIAL],
    }
    text = ["*NODE", *lines, "*ELEMENT,TYPE=CPE8R,ELSET=R"]
    text += [f"{k + 1}," + ",".join(map(str, e)) for k, e in enumerate(elements)]
    for name, nodes in sets.items():
        text += [f"*NSET,NSET={name}", ",\n".join(map(str, nodes))]
    law = ["*HYPERELASTIC,NEO HOOKE", f"{SHEAR / 2},{2 / BULK}"]
    if chain_limit:
        law = ["*HYPERELASTIC,YEOH",
               f"{SHEAR / 2},{SHEAR / 4 / chain_limit},{SHEAR / 6 / chain_limit ** 2},{2 / BULK},0.,0."]
    text += ["*MATERIAL,NAME=M", *law, "*SOLID SECTION,ELSET=R,MATERIAL=M", "1.",
             "*BOUNDARY", "OUT,1,2", "CUT,2,2", "IN,2,2"]
    for x in travels:
        text += ["*STEP,NLGEOM,INC=1000", "*STATIC", "0.1,1.,1e-5,0.25", "*BOUNDARY", f"IN,1,1,{x * (b - a)}",
                 "*NODE PRINT,NSET=IN,TOTALS=ONLY,FREQUENCY=1000", "RF", "*END STEP"]
    return "\n".join(text) + "\n"


def forces(folder):
    found = []
    for line in (folder / "ring.dat").read_text().splitlines():
        words = line.split()
        if len(words) == 3:
            try:
                found.append(abs(float(words[0])))
            except ValueError:
                pass
    return found


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--inner", type=float, default=10.0)
    parser.add_argument("--outer", type=float, required=True)
    parser.add_argument("--chain-limit", type=float, default=0.0)
    options = parser.parse_args()
    travels = [0.001, 0.05, 0.1, 0.2, 0.3]
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        (folder / "ring.inp").write_text(deck(options.inner, options.outer, travels, options.chain_limit))
        subprocess.run(["ccx", "ring"], cwd=folder, check=False, stdout=subprocess.DEVNULL)
        found = forces(folder)
    for x, force in zip(travels, found):
        print(f"{x:6.3f} of the wall: force over linear {force / x / (found[0] / travels[0]):.4f}")


if __name__ == "__main__":
    main()
