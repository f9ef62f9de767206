# SPDX-License-Identifier: MIT
"""One eighth of a rubber bush as a three-dimensional model for CalculiX, and its rates.

Cartesian displacements and 20-node bricks with reduced integration (C3D20R), with a finite bulk modulus:
nothing in common with the program's own cylindrical elements but the geometry. A rate is 8 times the work
of the inner sleeve's reactions on its unit motion.
"""
import math
import os
import re
import subprocess

# Antisymmetric about the planes y = 0, x = 0 and z = 0; unit motion at (x, y, z).
LOADS = {
    "radial1": ((False, True, False), lambda x, y, z: (1.0, 0.0, 0.0)),
    "radial2": ((True, False, False), lambda x, y, z: (0.0, 1.0, 0.0)),
    "axial": ((False, False, True), lambda x, y, z: (0.0, 0.0, 1.0)),
    "torsional": ((True, True, False), lambda x, y, z: (-y, x, 0.0)),
    "conical1": ((True, False, True), lambda x, y, z: (0.0, -z, y)),
    "conical2": ((False, True, True), lambda x, y, z: (z, 0.0, -x)),
}
LOCAL = ((0, 0, 0), (2, 0, 0), (2, 2, 0), (0, 2, 0), (0, 0, 2), (2, 0, 2), (2, 2, 2), (0, 2, 2),
         (1, 0, 0), (2, 1, 0), (1, 2, 0), (0, 1, 0), (1, 0, 2), (2, 1, 2), (1, 2, 2), (0, 1, 2),
         (0, 0, 1), (2, 0, 1), (2, 2, 1), (0, 2, 1))


def graded(start, end, cells, ends, smallest=None, ratio=2.0):
    """Corner positions of cells that shrink towards 'start', 'end' or 'both'."""
    if ends == "both":
        middle = 0.5 * (start + end)
        half = graded(start, middle, cells // 2, "start", smallest, ratio)
        return half + [start + end - x for x in reversed(half[:-1])]
    if ends == "end":
        return [start + end - x for x in reversed(graded(start, end, cells, "start", smallest, ratio))]
    steps = [ratio ** k for k in range(cells)]
    total = sum(steps)
    edges = [start]
    for step in steps:
        edges.append(edges[-1] + (end - start) * step / total)
    edges[-1] = end
    return edges


def with_middles(edges):
    """Edges and the middles between them."""
    nodes = [edges[0]]
    for a, b in zip(edges, edges[1:]):
        nodes += [0.5 * (a + b), b]
    return nodes


class Eighth:
    """Mesh: corners in r, theta and z, material of each cell by a function of its middle."""

    def __init__(self, shape, fine=1.0):
        self.s = shape
        a, b, h = shape["a"], shape["b"], 0.5 * shape["length"]
        wall = b - a
        alpha = math.radians(shape.get("half_angle", 0.0))
        floor = b - shape["depth"] if shape.get("depth") else a
        cuts = [a] + ([floor] if a < floor < b else []) + [b]
        sleeve = shape.get("interleaf")
        if sleeve:
            cuts = [a, sleeve[0] - sleeve[1] / 2, sleeve[0] + sleeve[1] / 2, b]
        across = [a]
        for i, (low, high) in enumerate(zip(cuts, cuts[1:])):
            rigid = sleeve and i == 1
            n = round(fine * (4 if len(cuts) == 2 else 3))
            across += [high] if rigid else graded(low, high, 2 * n, "both", ratio=1.9)[1:]
        self.r = with_middles(across)
        self.theta = with_middles(self.angles(alpha, floor > a, wall / (0.5 * (a + b)), fine))
        count, reach, step = 0, 0.0, 0.03 * min(wall, h)
        while reach < h * 0.999:
            reach, step, count = reach + step, step * 1.8, count + 1
        self.z = with_middles(graded(0.0, h, round(fine * count), "end", ratio=1.8 ** (1 / fine)))
        self.alpha, self.floor = alpha, floor
        self.build()

    @staticmethod
    def angles(alpha, crosses, layer, fine):
        """Corners round the angle: even without an opening, graded to its face with one."""
        quarter = 0.5 * math.pi
        even = lambda arc: max(2, math.ceil(fine * arc / math.radians(16)))  # noqa: E731
        if alpha == 0.0:
            return [quarter * k / even(quarter) for k in range(even(quarter) + 1)]

        def cells(arc):
            n, reach, step = 0, 0.0, 0.06 * layer
            while reach < arc:
                reach, step, n = reach + min(step, math.radians(18)), step * 1.7, n + 1
            return round(fine * max(n, 3))
        edges = graded(alpha, quarter, cells(quarter - alpha), "start", ratio=1.5)
        if crosses:
            edges = graded(0.0, alpha, cells(alpha), "end", ratio=1.5)[:-1] + edges
        return edges

    def end(self, r):
        """Half length at radius r."""
        a, b = self.s["a"], self.s["b"]
        x = 2 * (r - a) / (b - a) - 1
        return 0.5 * self.s["length"] - self.s.get("dish", 0.0) * (1 - x * x)

    def material(self, r, theta):
        """RUBBER, SLEEVE or None at the middle of a cell."""
        sleeve = self.s.get("interleaf")
        if sleeve and abs(r - sleeve[0]) < sleeve[1] / 2:
            return "SLEEVE"
        if self.alpha and theta < self.alpha and r > self.floor:
            return None
        return "RUBBER"

    def build(self):
        """Numbers the nodes that cells use."""
        self.cells, self.number, h = {"RUBBER": [], "SLEEVE": []}, {}, 0.5 * self.s["length"]
        for k in range(0, len(self.z) - 1, 2):
            for j in range(0, len(self.theta) - 1, 2):
                for i in range(0, len(self.r) - 1, 2):
                    what = self.material(self.r[i + 1], self.theta[j + 1])
                    if what:
                        ids = [self.node(i + o[0], j + o[1], k + o[2]) for o in LOCAL]
                        self.cells[what].append(ids)
        self.at = {}
        for (i, j, k), n in self.number.items():
            r, t = self.r[i], self.theta[j]
            self.at[n] = (r * math.cos(t), r * math.sin(t), self.z[k] / h * self.end(r))

    def node(self, i, j, k):
        """Number of the node (i, j, k)."""
        return self.number.setdefault((i, j, k), len(self.number) + 1)

    def constraints(self, load):
        """Lines of *BOUNDARY for one load: {(node, direction): value}."""
        (anti_y, anti_x, anti_z), motion = LOADS[load]
        held = {}
        for (i, j, k), n in self.number.items():
            if i in (0, len(self.r) - 1):
                m = motion(*self.at[n]) if i == 0 else (0.0, 0.0, 0.0)
                held.update({(n, d + 1): m[d] for d in range(3)})
                continue
            for here, anti, normal in ((j == 0 and self.theta[0] == 0.0, anti_y, 2),
                                       (j == len(self.theta) - 1, anti_x, 1), (k == 0, anti_z, 3)):
                if here:
                    for d in (1, 2, 3):
                        if (d == normal) != anti:
                            held[(n, d)] = 0.0
        return held

    def deck(self, loads):
        """Text of the input."""
        g, bulk = self.s["g"], self.s["k"]
        young, poisson = 9 * bulk * g / (3 * bulk + g), (3 * bulk - 2 * g) / (2 * (3 * bulk + g))
        out = ["*NODE, NSET=ALL"]
        out += [f"{n},{x:.12g},{y:.12g},{z:.12g}" for n, (x, y, z) in sorted(self.at.items())]
        at = 1
        for what, cells in self.cells.items():
            if not cells:
                continue
            out.append(f"*ELEMENT, TYPE=C3D20R, ELSET={what}")
            for ids in cells:
                words = [str(at)] + [str(n) for n in ids]
                out += [",".join(words[:12]) + ",", ",".join(words[12:])]
                at += 1
            e, nu = (young, poisson) if what == "RUBBER" else (2e5 * young, 0.3)
            out += [f"*MATERIAL, NAME=M{what}", "*ELASTIC", f"{e:.12g},{nu:.12g}",
                    f"*SOLID SECTION, ELSET={what}, MATERIAL=M{what}"]
        inner = [str(n) for (i, _, _), n in self.number.items() if i == 0]
        out += ["*NSET, NSET=INNER"] + [",".join(inner[k:k + 12]) for k in range(0, len(inner), 12)]
        for load in loads:
            out += ["*STEP", "*STATIC", "*BOUNDARY, OP=NEW"]
            out += [f"{n},{d},{d},{v:.12g}" for (n, d), v in sorted(self.constraints(load).items())]
            out += ["*NODE PRINT, NSET=INNER", "RF", "*END STEP"]
        return "\n".join(out) + "\n"

    def rates(self, ccx, folder, name, loads):
        """Runs CalculiX; rates in N/mm and N mm/rad by load."""
        with open(os.path.join(folder, name + ".inp"), "w", encoding="ascii") as f:
            f.write(self.deck(loads))
        env = dict(os.environ, OMP_NUM_THREADS="1", CCX_NPROC_EQUATION_SOLVER="1")
        done = subprocess.run([ccx, "-i", name], cwd=folder, env=env, capture_output=True, text=True, check=False)
        path = os.path.join(folder, name + ".dat")
        if done.returncode or not os.path.exists(path):
            raise RuntimeError("CalculiX failed: " + done.stdout[-400:])
        blocks = re.split(r"forces \(fx,fy,fz\)[^\n]*\n", open(path, encoding="ascii").read())[1:]
        result = {}
        for load, block in zip(loads, blocks):
            work = 0.0
            for line in block.splitlines():
                words = line.split()
                if len(words) == 4 and words[0].isdigit():
                    m = LOADS[load][1](*self.at[int(words[0])])
                    work += sum(float(f) * u for f, u in zip(words[1:], m))
            result[load] = 8 * work
        if len(result) != len(loads):
            raise RuntimeError("CalculiX gave fewer results than asked for")
        return result
