# SPDX-License-Identifier: MIT
"""Axles with shared parts, linear, in CalculiX: as corner_vs_ccx.py, with both wheels and all that they share.

usage: axle_vs_ccx.py GIVEWAY

The left wheel is loaded, the right one stands still ("other_wheel": "still"); each spring's force is what brings
its own wheel centre to its travel. A live axle with a Panhard rod, which is no mirror image of itself, is among them.
"""
import json
import math
import os
import subprocess
import sys
import tempfile

import corner_vs_ccx as one
import validation

HOLD = 1e10  # N mm/rad about the line of a link that spins freely: a seat or a drop link may lie a little off it
CASES = (("fast-saloon.json", "front"), ("fast-saloon.json", "rear"), ("hatchback.json", "rear"),
         ("live-axle.json", "rear"))
one.STATIC_N = 1e-8  # the spring of the wheel that stands still carries no more than the loads send it


def image(v):
    return [v[0], -v[1], v[2]]


class Axle(one.Model):
    """Deck for both wheels of one axle: bodies of the corners are left.NAME and right.NAME."""

    def __init__(self, corner, shared, axle, fits, bushes):
        self.axle, self.nodes, self.bodies, self.joints = axle, [], {}, []
        self.own = {"upright"} | set(k for k in corner.get("members", {}) if not k.startswith("//"))
        hub = list(map(float, corner["wheel"]["centre_mm"]))
        self.hub, points = hub, corner["points_mm"]
        patch = [hub[0], hub[1], hub[2] - corner["wheel"]["loaded_radius_mm"]]
        self.wheels = []
        for side, turn in (("left", list), ("right", image)):
            self.wheels.append({"hub": self.attach(side + ".upright", turn(hub)),
                                "patch": self.attach(side + ".upright", turn(patch)), "side": side})
            for joint in corner["joints"]:
                between = [self.sided(b, side) for b in joint["between"]]
                bush = bushes[fits.get("%s.%s" % (axle, joint["name"]), joint["bush"])]
                self.put(joint, between, turn(self.place(joint, points)), turn, *bush)
        for joint in shared["joints"]:
            at = self.place(joint, shared["points_mm"])
            bush = bushes[fits.get("%s.%s" % (axle, joint["name"]), joint["bush"])]
            self.put(joint, joint["between"], at, list, *bush)
            if at[1] != 0 and joint.get("mirrored", True):
                swap = [b.replace("left.", "?").replace("right.", "left.").replace("?", "right.")
                        for b in joint["between"]]
                self.put(joint, swap, image(at), image, *bush)
        for wheel, turn in zip(self.wheels, (list, image)):
            seat, top = (points[corner["spring"][key]] for key in ("at", "to"))
            wheel["seat"] = self.attach(self.sided(corner["spring"]["on"], wheel["side"]), turn(seat))
            wheel["along"] = one.unit(one.sub(turn(seat), turn(top)))
        self.spins = []
        for body in self.bodies:
            on = [j for j in self.joints if body in j["bodies"]]
            if body != "chassis" and not body.endswith("upright") and not any(c > 0 for j in on for c in j["c"]):
                first, *others = (self.nodes[j["a"] - 1] for j in on)
                line = one.unit(one.sub(others[0], first))
                off = [one.cross(one.sub(p, first), line) for p in others]
                if max(math.sqrt(one.dot(x, x)) for x in off) < 1:  # all in one line: a link
                    self.spins.append((body, line, self.node(self.hub)))

    def hold_spins(self, element, rot):
        """A link with two ball joints spins about its line: that is held, and carries nothing."""
        out = []
        for body, line, node in self.spins:
            turn = rot[body.replace(".", "_")][1]
            terms = [(node, 1, -1.0)] + [(turn, d + 1, line[d]) for d in range(3) if abs(line[d]) > 1e-14]
            element += 1
            out += ["*EQUATION", "%d" % len(terms), ", ".join("%d, %d, %.13e" % t for t in terms),
                    "*ELEMENT, TYPE=SPRING1, ELSET=S%d" % element, "%d, %d" % (element, node),
                    "*SPRING, ELSET=S%d" % element, "1", "%.6e" % HOLD, "*BOUNDARY", "%d, 2, 3" % node]
        return out

    @staticmethod
    def place(joint, points):
        at = joint["at"]
        return list(map(float, points[at] if isinstance(at, str) else at))

    def sided(self, body, side):
        return side + "." + body if body in self.own else body

    def put(self, joint, between, place, turn, k, c):
        a, b = (self.attach(body, place) for body in between)
        self.joints.append({"bodies": between, "a": a, "b": b, "frame": [turn(e) for e in one.frame(joint)],
                            "k": [one.series(x, joint.get("bracket_N_per_mm")) for x in k], "c": c,
                            "u": self.node(place), "theta": self.node(place)})

    def deck(self):
        """The same deck; sets cannot have a dot in their names, and the uprights are two."""
        for j in self.joints:
            j["bodies"] = [b.replace(".", "_") for b in j["bodies"]]
        self.bodies = {b.replace(".", "_"): n for b, n in self.bodies.items()}
        self.bodies["upright"] = self.bodies["left_upright"]
        del self.bodies["left_upright"]
        for j in self.joints:
            j["bodies"] = ["upright" if b == "left_upright" else b for b in j["bodies"]]
        self.hub_node, self.patch_node = self.wheels[0]["hub"], self.wheels[0]["patch"]
        out = super().deck()
        names = list(self.bodies)
        first = len(self.nodes) - 2 * len(names)
        right = first + 2 * names.index("right_upright") + 2
        self.wheels[0]["turn"], self.wheels[1]["turn"] = self.rot_upright, right
        at = out.index("*NSET, NSET=SHOWN") + 1
        out[at] += ", %d, %d, %d" % (self.wheels[1]["hub"], self.wheels[1]["patch"], right)
        return out

    def run(self, directory, factors):
        """Displacements under the load with these spring forces, and under a force of one in each spring."""
        if not hasattr(self, "made"):
            self.made = self.deck()
        unit = [[(w["seat"], d + 1, w["along"][d]) for d in range(3)] for w in self.wheels]
        left = self.wheels[0]
        outside = [(left["patch"], d + 1, one.FORCE[d]) for d in range(3)]
        outside += [(left["hub"], d + 1, one.HUB[d]) for d in range(3)]
        outside += [(left["turn"], d + 1, 1e3 * one.MOMENT[d]) for d in range(3)]
        for f, spring in zip(factors, unit):
            outside += [(node, d, f * size) for node, d, size in spring]
        name = os.path.join(directory, "axle")
        with open(name + ".inp", "w") as f:
            f.write("\n".join(self.made + sum((self.step(x) for x in [outside] + unit), [])) + "\n")
        run = subprocess.run(["ccx", "axle"], cwd=directory, capture_output=True, text=True)
        if run.returncode or not os.path.exists(name + ".dat"):
            raise RuntimeError(run.stdout[-600:])
        return self.read(name + ".dat")

    def solve(self, directory):
        """As for the corner: what is left to correct shrinks every round."""
        force, wanted = [0.0, 0.0], (one.TRAVEL_MM, 0.0)
        for _ in range(3):
            load, *spring = self.run(directory, force)
            (a, b), (c, d) = ([s[w["hub"]][2] for s in spring] for w in self.wheels)
            p, q = (wanted[i] - load[w["hub"]][2] for i, w in enumerate(self.wheels))
            det = a * d - b * c
            rest = ((p * d - b * q) / det, (a * q - c * p) / det)
            force = [f + r for f, r in zip(force, rest)]
        return one.combine(one.combine(load, spring[0], rest[0]), spring[1], rest[1]), force


def reduced(case, axle):
    small = one.reduced_case(case, axle)
    small["axles"] = {axle: case["axles"][axle]}
    small["loads"][0]["other_wheel"] = "still"
    small["corners"][axle]["damper"] = {**small["corners"][axle]["damper"], "friction_N": 0}
    return small


def check(giveway, case, axle, kit, worst):
    where = f"{case['title'].split(' (')[0]}, {axle} axle, {kit['name']}"
    small = reduced(case, axle)
    with tempfile.TemporaryDirectory() as directory:
        path = os.path.join(directory, "small.json")
        json.dump(small, open(path, "w"))
        run = subprocess.run([giveway, "deflect", path, "--kit", kit["name"], "--format", "json", "--quiet"],
                             capture_output=True)
        if run.returncode:
            raise RuntimeError(run.stderr.decode())
        ours = json.loads(run.stdout)["results"]
        model = Axle(small["corners"][axle], small["axles"][axle], axle, one.fits_of(case, kit),
                     one.rates(giveway, path))
        theirs, force = model.solve(directory)
    ok = len(ours) == 2
    got = {"angles": [], "places": [], "springs": []}
    want = {"angles": [], "places": [], "springs": force}
    for r, w in zip(ours, model.wheels):
        sign = 1 if w["side"] == "left" else -1
        turn = [math.degrees(x) for x in theirs[w["turn"]]]
        ok &= r["side"] == w["side"]
        got["angles"] += [r[k] for k in ("camber_change_deg", "toe_change_deg", "caster_change_deg")]
        want["angles"] += [-sign * turn[0], -sign * turn[2], -turn[1]]
        got["places"] += r["wheel_centre_mm"] + r["contact_patch_mm"]
        for node in ("hub", "patch"):
            want["places"] += theirs[w[node]] if sign == 1 else image(theirs[w[node]])
        got["springs"].append(r["spring_force_N"])
    for what in got:
        ok &= one.close(worst, where, what + " of both wheels", got[what], want[what])
    return ok


def main():
    giveway = os.path.abspath(sys.argv[1])
    passed = failed = 0
    worst = {}
    for name, axle in CASES:
        case = one.bare(json.load(open(os.path.join(one.HERE, "..", "..", "cases", name))))
        shifted = {n for n, b in case["bushes"].items() if b.get("offset_mm")}
        for kit in case["kits"]:
            if shifted & set(one.fits_of(case, kit).values()):
                continue
            ok = check(giveway, case, axle, kit, worst)
            passed, failed = passed + ok, failed + (not ok)
            if not ok:
                print("%s, %s axle, kit %s: differs" % (name, axle, kit["name"]))
    for what, off in worst.items():
        print("%-24s worst difference %.1e of its size" % (what, off))
    print("%d passed, %d failed" % (passed, failed))
    return failed != 0


if __name__ == "__main__":
    sys.exit(main())
