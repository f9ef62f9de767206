# SPDX-License-Identifier: MIT
"""The demonstration corners, linear, in CalculiX: rigid bodies and springs of a general-purpose solver.

usage: corner_vs_ccx.py GIVEWAY

Every body is a *RIGID BODY, every bush six springs between its two bodies in the bush frame. The program
has no linear mode, so it is given the same corner with next to no static load and loads below a newton:
then its answer is the linear one to many digits. The spring's force is found as the program defines it:
the force along its line that brings the wheel centre to the travel asked for.
"""
import json
import math
import os
import re
import subprocess
import sys
import tempfile

import validation

HERE = os.path.dirname(os.path.abspath(__file__))
STATIC_N = 1e-6
FORCE = (-0.4, -0.25, 0.3)  # so small that what is quadratic in them is below what is compared
MOMENT = (0.002, -0.003, 0.005)
HUB = (0.15, 0.0, 0.0)
TRAVEL_MM = 2e-5
AGREE = 2e-5  # of the largest of its kind; CalculiX prints seven digits


def bare(value):
    """The case without its comments."""
    if isinstance(value, dict):
        return {k: bare(v) for k, v in value.items() if not k.startswith("//")}
    return [bare(v) for v in value] if isinstance(value, list) else value


def sub(a, b):
    return [x - y for x, y in zip(a, b)]


def dot(a, b):
    return sum(x * y for x, y in zip(a, b))


def cross(a, b):
    return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]


def unit(a):
    n = math.sqrt(dot(a, a))
    return [x / n for x in a]


def frame(joint):
    """e1, e2, e3 as the case format makes them."""
    e3 = unit(joint["axis"])
    hint = joint.get("radial_axis")
    if hint is None:
        hint = [1, 0, 0] if abs(e3[2]) > math.cos(math.radians(20)) else [0, 0, 1]
    e1 = unit(sub(hint, [dot(hint, e3) * x for x in e3]))
    return e1, cross(e3, e1), e3


def pair(value):
    return list(value) if isinstance(value, list) else [value, value]


def series(k, bracket):
    return k * bracket / (k + bracket) if bracket and k > 0 else k


def rates(giveway, path):
    """Rates of every bush in N/mm and N mm/rad, by the program's own `rates`: the corner is on trial, not they."""
    out = subprocess.run([giveway, "rates", path, "--format", "json", "--quiet"], capture_output=True, check=True)
    found = {}
    for bush in json.loads(out.stdout)["bushes"]:
        turn = [1e3 * 180 / math.pi * c for c in pair(bush["conical_Nm_per_deg"]) + [bush["torsional_Nm_per_deg"]]]
        found[bush["name"]] = pair(bush["radial_N_per_mm"]) + [bush["axial_N_per_mm"]], turn
    return found


class Model:
    """Deck for one corner with one kit, in N and mm."""

    def __init__(self, corner, axle, fits, bushes):
        self.corner, self.axle = corner, axle
        self.nodes, self.lines, self.loads = [], [], []
        self.points = {name: list(map(float, p)) for name, p in corner["points_mm"].items()}
        self.bodies = {}
        self.hub = list(map(float, corner["wheel"]["centre_mm"]))
        self.patch = [self.hub[0], self.hub[1], self.hub[2] - corner["wheel"]["loaded_radius_mm"]]
        self.hub_node, self.patch_node = self.attach("upright", self.hub), self.attach("upright", self.patch)
        self.seat_node = self.attach(corner["spring"]["on"], self.points[corner["spring"]["at"]])
        line = sub(self.points[corner["spring"]["at"]], self.points[corner["spring"]["to"]])
        self.along = unit(line)
        self.joints = []
        for joint in corner["joints"]:
            self.add_joint(joint, *bushes[fits.get("%s.%s" % (axle, joint["name"]), joint["bush"])])

    def node(self, place):
        self.nodes.append(place)
        return len(self.nodes)

    def attach(self, body, place):
        n = self.node(place)
        self.bodies.setdefault(body, []).append(n)
        return n

    def add_joint(self, joint, k, c):
        """Two springs' worth of dummy nodes: what the bush strains, by equations in its frame."""
        place = self.points[joint["at"]]
        a, b = (self.attach(body, place) for body in joint["between"])
        self.joints.append({"name": joint["name"], "bodies": joint["between"], "a": a, "b": b, "frame": frame(joint),
                            "k": [series(x, joint.get("bracket_N_per_mm")) for x in k], "c": c,
                            "u": self.node(place), "theta": self.node(place)})

    def deck(self):
        out = ["*NODE, NSET=ALL"]
        rot = {}
        bodies = [b for b in self.bodies]
        for body in bodies:
            rot[body] = (self.node(self.hub), self.node(self.hub))
        out += ["%d, %.12g, %.12g, %.12g" % (i + 1, *p) for i, p in enumerate(self.nodes)]
        for body in bodies:
            out.append("*NSET, NSET=B_%s" % body.upper())
            out += ["%d," % n for n in self.bodies[body]]
            out.append("*RIGID BODY, NSET=B_%s, REF NODE=%d, ROT NODE=%d" % (body.upper(), *rot[body]))
        element, idle = 0, []
        for j in self.joints:
            ra, rb = (rot[body][1] for body in j["bodies"])
            for first, node, rate in ((0, "u", j["k"]), (1, "theta", j["c"])):
                p, q = (rb, ra) if first else (j["b"], j["a"])
                for i in range(3):
                    if rate[i] <= 0:
                        idle.append((j[node], i + 1))
                        continue
                    e = j["frame"][i]
                    terms = [(j[node], i + 1, -1.0)]
                    terms += [(p, d + 1, e[d]) for d in range(3) if abs(e[d]) > 1e-14]
                    terms += [(q, d + 1, -e[d]) for d in range(3) if abs(e[d]) > 1e-14]
                    out += ["*EQUATION", "%d" % len(terms)]
                    flat = ["%d, %d, %.13e" % t for t in terms]
                    out += [", ".join(flat[k:k + 4]) for k in range(0, len(flat), 4)]
                    element += 1
                    out += ["*ELEMENT, TYPE=SPRING1, ELSET=S%d" % element, "%d, %d" % (element, j[node]),
                            "*SPRING, ELSET=S%d" % element, "%d" % (i + 1), "%.12e" % rate[i]]
        out += ["*BOUNDARY", "%d, 1, 3" % rot["chassis"][0], "%d, 1, 3" % rot["chassis"][1]]
        out += ["%d, %d, %d" % (n, d, d) for n, d in idle]
        self.rot_upright = rot["upright"][1]
        out += self.hold_spins(element, rot)
        out += ["*NSET, NSET=SHOWN", "%d, %d, %d" % (self.hub_node, self.patch_node, self.rot_upright)]
        out += ["*NSET, NSET=STRAIN"] + ["%d, %d," % (j["u"], j["theta"]) for j in self.joints]
        return out

    def hold_spins(self, element, rot):
        """A free spin of a link about its own line carries nothing; a whisper of a spring keeps the matrix regular."""
        out = []
        for body in self.bodies:
            if body in ("chassis", "upright"):
                continue
            for i in range(3):
                element += 1
                out += ["*ELEMENT, TYPE=SPRING1, ELSET=S%d" % element, "%d, %d" % (element, rot[body][1]),
                        "*SPRING, ELSET=S%d" % element, "%d" % (i + 1), "1.0e-3"]
        return out

    def step(self, loads):
        out = ["*STEP", "*STATIC", "*CLOAD, OP=NEW"]
        out += ["%d, %d, %.13e" % load for load in loads if load[2] != 0.0]  # a field has 20 characters
        return out + ["*NODE PRINT, NSET=SHOWN", "U", "*NODE PRINT, NSET=STRAIN", "U", "*END STEP"]

    def run(self, directory, factor):
        """Displacements under the load with `factor` of the spring's force, and under a spring force of one."""
        deck = self.deck()
        spring = [(self.seat_node, d + 1, self.along[d]) for d in range(3)]
        outside = [(self.patch_node, d + 1, FORCE[d]) for d in range(3)]
        outside += [(self.hub_node, d + 1, HUB[d]) for d in range(3)]
        outside += [(self.rot_upright, d + 1, 1e3 * MOMENT[d]) for d in range(3)]
        outside += [(node, d, factor * size) for node, d, size in spring]
        name = os.path.join(directory, "corner")
        with open(name + ".inp", "w") as f:
            f.write("\n".join(deck + self.step(outside) + self.step(spring)) + "\n")
        run = subprocess.run(["ccx", "corner"], cwd=directory, capture_output=True, text=True)
        if run.returncode or not os.path.exists(name + ".dat"):
            raise RuntimeError(run.stdout[-600:])
        return self.read(name + ".dat")

    def solve(self, directory):
        """Displacements at the travel asked for, and the spring's force there.

        The results are printed to seven digits, so the force is found in rounds, each of which starts from
        the load with the force of the last: what is left to correct, and its rounding, shrinks every time.
        """
        factor = 0.0
        for _ in range(3):
            load, spring = self.run(directory, factor)
            rest = (TRAVEL_MM - load[self.hub_node][2]) / spring[self.hub_node][2]
            factor += rest
        return combine(load, spring, rest), factor

    def read(self, path):
        """One dictionary of node displacements a step."""
        steps, current, last = [], {}, None
        for line in open(path):
            time = re.search(r"time\s+([0-9.E+-]+)", line)
            if time and time.group(1) != last:
                last = time.group(1)
                current = {}
                steps.append(current)
            words = line.split()
            if len(words) == 4 and words[0].isdigit():
                current[int(words[0])] = [float(w) for w in words[1:]]
        return steps


def combine(first, second, factor):
    return {n: [x + factor * y for x, y in zip(first[n], second[n])] for n in first}


def reduced_case(case, axle):
    """The same corner with next to no static load and one small load."""
    small = json.loads(json.dumps(case))
    small.pop("vehicle", None)
    small.pop("align", None)
    small.pop("choose", None)
    small.pop("jobs", None)
    small["corners"] = {axle: small["corners"][axle]}
    wheel = small["corners"][axle]["wheel"]
    wheel["static_load_N"] = STATIC_N
    wheel["static_camber_deg"] = wheel["static_toe_deg"] = 0.0
    small["loads"] = [{"name": "small", "corner": axle, "patch_force_N": FORCE, "patch_moment_Nm": MOMENT,
                       "hub_force_N": HUB, "travel_mm": TRAVEL_MM}]
    for kit in small["kits"]:
        kit["fits"] = {k: v for k, v in kit.get("fits", {}).items() if k.startswith(axle + ".")}
    return small


def fits_of(case, kit):
    fits = {}
    if "based_on" in kit:
        fits = fits_of(case, next(k for k in case["kits"] if k["name"] == kit["based_on"]))
    return {**fits, **kit.get("fits", {})}


def close(worst, where, what, got, want):
    """Vectors agree to AGREE of the larger of them."""
    size = max(map(abs, list(want) + list(got))) or 1.0
    off = max(abs(g - w) for g, w in zip(got, want)) / size
    worst[what] = max(worst.get(what, 0.0), off)
    validation.record("computed", "solver", "CalculiX, rigid bodies and springs, linear",
                      f"{where}: {what}, difference over size", 0.0, off, AGREE)
    return off <= AGREE


def check(giveway, case, axle, kit, worst):
    where = f"{case['title'].split(' (')[0]}, {axle}, {kit['name']}"
    small = reduced_case(case, axle)
    with tempfile.TemporaryDirectory() as directory:
        path = os.path.join(directory, "small.json")
        json.dump(small, open(path, "w"))
        run = subprocess.run([giveway, "deflect", path, "--kit", kit["name"], "--format", "json", "--quiet"],
                             capture_output=True, check=True)
        ours = json.loads(run.stdout)["results"][0]
        model = Model(small["corners"][axle], axle, fits_of(case, kit), rates(giveway, path))
        theirs, force = model.solve(directory)
    turn = [math.degrees(x) for x in theirs[model.rot_upright]]
    # S0 carries STATIC_N only: what it moves is below what is compared.
    ok = close(worst, where, "camber, toe, caster", [ours[k] for k in ("camber_change_deg", "toe_change_deg", "caster_change_deg")],
               [-turn[0], -turn[2], -turn[1]])
    ok &= close(worst, where, "wheel centre", ours["wheel_centre_mm"], theirs[model.hub_node])
    ok &= close(worst, where, "contact patch", ours["contact_patch_mm"], theirs[model.patch_node])
    ok &= close(worst, where, "spring force", [ours["spring_force_N"]], [force])
    got, want = [], []
    for j, bush in zip(model.joints, ours["bushes"]):
        got += bush["force_N"]
        want += [k * u for k, u in zip(j["k"], theirs[j["u"]])]
    ok &= close(worst, where, "forces in the bushes", got, want)
    return ok


def main():
    giveway = os.path.abspath(sys.argv[1])
    passed = failed = 0
    worst = {}
    for name in ("saloon-by-rule.json", "hatchback-by-rule.json"):
        case = bare(json.load(open(os.path.join(HERE, "..", "cases", name))))
        shifted = {n for n, b in case["bushes"].items() if b.get("offset_mm")}
        for axle in case["corners"]:
            for kit in case["kits"]:
                if shifted & set(fits_of(case, kit).values()):
                    continue  # off-centre bushes are no small displacement from the design position
                ok = check(giveway, case, axle, kit, worst)
                passed, failed = passed + ok, failed + (not ok)
                if not ok:
                    print("%s, %s corner, kit %s: differs" % (name, axle, kit["name"]))
    for what, off in worst.items():
        print("%-24s worst difference %.1e of its size" % (what, off))
    print("%d passed, %d failed" % (passed, failed))
    return failed != 0


if __name__ == "__main__":
    sys.exit(main())
