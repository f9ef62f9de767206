# SPDX-License-Identifier: MIT
"""Seeded random cases for the cross-check: plausible corners of five kinds, odd in every detail.

All numbers are invented. Points scatter by some mm about plain layouts, axes point in odd
directions, the order of the two bodies of a joint is drawn by lot, bushes are of the kinds whose
rates are given. `python3 random_cases.py SEED` prints one case.
"""
import glob
import json
import os
import sys

import numpy as np

KINDS = ("wishbones", "two_link", "five_link", "strut", "trailing")


class Maker:
    """Draws one corner."""

    def __init__(self, rng, kind):
        self.rng, self.kind = rng, kind
        self.points, self.members, self.joints, self.bushes = {}, {}, [], {}
        self.choice = {}        # joint -> the bushes that a kit may fit there

    def u(self, a, b):
        """Uniform, rounded as a person would write it."""
        return round(float(self.rng.uniform(a, b)), 3)

    def point(self, name, xyz, spread=12.0):
        """A point about a place."""
        self.points[name] = [round(float(v + self.rng.uniform(-spread, spread)), 2) for v in xyz]
        return name

    def axis_about(self, d, spread=0.25):
        """A direction about another, of any length and sense."""
        d = np.array(d, float) / np.linalg.norm(d)
        v = (d + self.rng.normal(size=3) * spread) * self.rng.choice([-1, 1]) * self.u(0.4, 3)
        c = abs(v[2]) / np.linalg.norm(v)
        if abs(c - np.cos(np.radians(20))) < 0.01:      # keep off the rule's threshold
            v[2] *= 0.7
        return [round(float(x), 5) for x in v]

    def bush(self, name, stop=True, scale=1.0):
        """A bonded-like bush."""
        r = self.rng
        k = float(np.exp(r.uniform(np.log(1500), np.log(22000)))) * scale
        b = {"type": "rates", "axial_N_per_mm": round(k * r.uniform(0.05, 0.4), 1),
             "torsional_Nm_per_deg": self.u(0.2, 3)}
        b["radial_N_per_mm"] = (round(k, 1) if r.random() < 0.5 else
                                [round(k, 1), round(k * r.uniform(0.3, 0.9), 1)])
        b["conical_Nm_per_deg"] = (self.u(0.5, 9) if r.random() < 0.5 else
                                   [self.u(0.5, 9), self.u(0.5, 9)])
        if stop and r.random() < 0.35:
            b["stop"] = {"gap_mm": self.u(0.1, 1.0), "rate_N_per_mm": round(k * r.uniform(1, 5))}
        self.bushes[name] = b
        return name

    def ball(self, name):
        """A ball joint or a bearing, rates given."""
        k = float(self.rng.uniform(4e4, 2e5))
        b = {"radial_N_per_mm": round(k), "axial_N_per_mm": round(k * self.rng.uniform(0.4, 1))}
        if self.rng.random() < 0.5:
            b["type"] = "ball_joint"
        else:
            b.update({"type": "bearing", "ball_diameter_mm": 25, "width_mm": 20, "liner": "steel",
                      "static_rating_kN": 70, "clearance_mm": 0, "breakaway_Nm": 0})
        self.bushes[name] = b
        return name

    def joint(self, name, a, b, at, axis, kind, hard=None):
        """A joint; bodies in either order; sometimes a bracket."""
        r = self.rng
        bodies = [a, b] if r.random() < 0.5 else [b, a]
        j = {"name": name, "between": bodies, "at": at, "axis": self.axis_about(axis)}
        if r.random() < 0.4:
            j["radial_axis"] = self.axis_about(np.cross(j["axis"], r.normal(size=3)), 0.1)
        soft = self.bush(f"{name}_soft") if kind == "bush" else self.ball(f"{name}_ball")
        j["bush"] = soft
        if kind == "bush":
            firm = self.bush(f"{name}_firm", scale=2.5) if r.random() < 0.6 else \
                self.ball(f"{name}_bearing")
            self.choice[name] = [soft, firm]
        j["housing"] = bodies[0] if r.random() < 0.5 else bodies[1]
        if r.random() < 0.4:
            j["bracket_N_per_mm"] = round(float(r.uniform(8e3, 6e4)))
        self.joints.append(j)
        return j

    def member(self, name):
        """A member."""
        self.members[name] = {"mass_kg": self.u(0.8, 4)}
        return name

    # --- layouts --------------------------------------------------------------------------------

    def arm(self, name, front, rear, outer):
        """A one-piece arm: two bushes on the body, a ball joint on the upright."""
        self.member(name)
        a, b, c = (self.point(f"{name}_{k}", p) for k, p in
                   (("front", front), ("rear", rear), ("outer", outer)))
        along = np.array(self.points[a]) - np.array(self.points[b])
        self.joint(f"{name}_front", "chassis", name, a, along, "bush")
        self.joint(f"{name}_rear", "chassis", name, b,
                   along if self.rng.random() < 0.7 else [0, 0, 1], "bush")
        self.joint(f"{name}_ball", name, "upright", c, [0, 0, 1], "ball")

    def link(self, name, inner, outer, inner_body="chassis", kinds=("bush", "ball")):
        """A link with two joints."""
        self.member(name)
        a, b = self.point(f"{name}_inner", inner), self.point(f"{name}_outer", outer)
        along = np.array(self.points[b]) - np.array(self.points[a])
        cross = np.cross(along, [0, 0, 1] if self.rng.random() < 0.5 else [1, 0.2, 0.3])
        self.joint(f"{name}_in", inner_body, name, a, cross, kinds[0])
        self.joint(f"{name}_out", name, "upright", b, cross, kinds[1])

    def tie_rod(self, x=-120, z=170):
        """Ball joints at both ends, on the body or on a rack in two mounts."""
        body = "chassis"
        if self.rng.random() < 0.5:
            body = self.member("rack")
            for k, y in (("near", 260), ("far", -260)):
                at = self.point(f"rack_{k}", [x - 10, y, z])
                self.joint(f"rack_{k}", "chassis", "rack", at, [0, 1, 0.1], "bush")
        self.link("tie_rod", [x, 350, z], [x - 10, 690, z - 15], body, ("ball", "ball"))

    def spring(self, on, at, to, a=None, b=None):
        """The spring; with a and b the seat lies on the line between these two points, or nearly."""
        if a is not None:
            p, q = (np.array(self.points[k]) for k in (a, b))
            # unrounded where it lies on the line: a seat off it makes a member roll over that
            # turns freely at both ends, and then its spin is held
            off = self.rng.uniform(-15, 15, 3) if self.rng.random() < 0.3 else 0.0
            self.points["seat"] = [float(v) for v in p + self.u(0.5, 0.85) * (q - p) + off]
        else:
            self.point("seat", at)
        self.point("top", to)
        self.spring_spec = {"on": on, "at": "seat", "to": "top",
                            "rate_N_per_mm": self.u(25, 110)}

    def build(self):
        """The corner's joints."""
        kind = self.kind
        if kind == "wishbones":
            self.arm("upper", [110, 420, 480], [-120, 430, 470], [-10, 700, 500])
            self.arm("lower", [150, 350, 190], [-160, 360, 185], [5, 730, 180])
            self.tie_rod()
            self.spring("lower", [0, 580, 195], [-5, 500, 560])
        elif kind == "two_link":
            self.arm("upper", [110, 420, 480], [-120, 430, 470], [-10, 700, 500])
            self.link("lateral", [-20, 360, 190], [-15, 725, 180])
            self.link("tension", [330, 400, 195], [20, 735, 175])
            self.tie_rod(-130, 165)
            self.spring("upright", [0, 650, 330], [-5, 560, 640])
        elif kind == "five_link":
            soft = [("bush", "bush" if self.rng.random() < 0.4 else "ball") for _ in range(5)]
            self.link("upper_front", [210, 450, 460], [10, 690, 480], kinds=soft[0])
            self.link("upper_rear", [-190, 430, 450], [-20, 695, 470], kinds=soft[1])
            self.link("lower_front", [350, 420, 180], [20, 720, 170], kinds=soft[2])
            self.link("lower_rear", [-60, 330, 190], [-40, 715, 165], kinds=soft[3])
            self.link("toe_link", [-190, 340, 230], [-170, 690, 220], kinds=("bush", "ball"))
            self.spring("lower_rear", None, [-60, 520, 560], "lower_rear_inner",
                        "lower_rear_outer")
        elif kind == "strut":
            self.arm("lower", [20, 360, 190], [-290, 380, 200], [5, 730, 180])
            self.tie_rod(-130, 210)
            self._strut()
        else:
            self._trailing()

    def _strut(self):
        """A slider with a stiff top: axial rate zero along the strut, the spring on that line."""
        low, top = np.array([0, 660, 380.0]), np.array([-25, 570, 820.0])
        top = top + self.rng.uniform(-15, 15, 3)
        at = low + 0.5 * (top - low)
        for k, p in (("seat", at), ("top", top)):
            self.points[k] = [round(float(v), 6) for v in p]
        d = np.array(self.points["top"]) - np.array(self.points["seat"])
        j = self.joint("top_mount", "upright", "chassis", "top", d, "bush")
        j["axis"] = [float(x) for x in d]
        j["between"] = ["upright", "chassis"]
        j.pop("bracket_N_per_mm", None)
        for n in self.choice["top_mount"]:
            radial = self.bushes[n]["radial_N_per_mm"]
            conical = self.bushes[n].get("conical_Nm_per_deg", 0)     # none in a ball or bearing
            self.bushes[n] = {"type": "rates", "radial_N_per_mm": radial, "axial_N_per_mm": 0,
                              "conical_Nm_per_deg": conical,
                              "torsional_Nm_per_deg": 0.3 if conical else 0}
        self.spring_spec = {"on": "upright", "at": "seat", "to": "top",
                            "rate_N_per_mm": self.u(18, 40)}

    def _trailing(self):
        """The upright on one big bush in front and three lateral links, or on two bushes."""
        if self.rng.random() < 0.5:
            at = self.point("front_bush", [420, 650, 330])
            self.joint("front_bush", "chassis", "upright", at, [0, 1, 0.1], "bush")
            self.link("lower_rear", [-90, 330, 190], [-80, 690, 180])
            self.link("toe_link", [140, 380, 200], [130, 690, 195])
            self.link("upper", [-20, 450, 430], [-10, 690, 440])
        else:
            a = self.point("pivot_in", [400, 380, 330])
            b = self.point("pivot_out", [430, 700, 335])
            along = np.array(self.points[b]) - np.array(self.points[a])
            self.joint("pivot_in", "chassis", "upright", a, along, "bush")
            self.joint("pivot_out", "chassis", "upright", b, along, "bush")
        self.spring("upright", [60, 600, 280], [70, 590, 600])


def demonstration():
    """The cars whose corners stand on their own: what wheels share is read by car.py."""
    folder = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "cases")
    paths = sorted(glob.glob(os.path.join(folder, "*.json")))
    assert paths, folder
    return paths


def corner(rng, kind):
    """A corner, its bushes and the choice of bushes a joint."""
    m = Maker(rng, kind)
    m.build()
    wheel = {"centre_mm": [m.u(-6, 6), m.u(755, 790), m.u(300, 330)],
             "loaded_radius_mm": m.u(295, 330), "rim_diameter_mm": 457,
             "static_load_N": m.u(2800, 5200), "static_camber_deg": m.u(-2, 0.5),
             "static_toe_deg": m.u(-0.1, 0.25), "mass_kg": 44, "tilt_inertia_kgm2": 0.7,
             "pitch_inertia_kgm2": 0.25, "tyre_vertical_N_per_mm": 230,
             "tyre_damping_Ns_per_mm": 0.1}
    spec = {"wheel": wheel, "points_mm": m.points, "members": m.members, "joints": m.joints,
            "spring": m.spring_spec,
            "damper": {"on": m.spring_spec["on"], "at": "seat", "to": "top",
                       "rate_Ns_per_mm": 2.0, "top_mount_N_per_mm": 900}}
    return spec, m


def direct_loads(m, name):
    """Direct loads on one corner, each a mixture."""
    rng, f = m.rng, lambda s: round(float(rng.uniform(-s, s)), 1)
    out = [{"name": "pure braking", "corner": name, "patch_force_N": [-m.u(1500, 4500), 0, None]},
           {"name": "all at once", "corner": name,
            "patch_force_N": [f(4000), f(4500), m.u(500, 7500)],
            "patch_moment_Nm": [f(60), f(120), f(150)],
            "hub_force_N": [f(2500), f(800), f(800)], "travel_mm": m.u(-50, 50)}]
    travel = float(rng.choice([-80, -60, 60, 80]))
    out.append({"name": "long travel", "corner": name, "travel_mm": travel,
                "patch_force_N": [0, f(2000), None]})
    return out


def kits(m_by_corner, rng):
    """A baseline, a firmer kit, and one with off-centre bushes."""
    firm, off = {}, {}
    extra = {}
    for name, m in m_by_corner.items():
        for joint, names in m.choice.items():
            if rng.random() < 0.7:
                firm[f"{name}.{joint}"] = names[1]
        link = [j for j in m.choice if j not in ("top_mount", "rack_near", "rack_far")]
        for joint in rng.choice(link, size=min(2, len(link)), replace=False):
            pick = m.choice[joint][0]
            b = dict(m.bushes[pick], offset_mm=m.u(0.5, 4), offset_clock_deg=m.u(-180, 180))
            new = f"{pick}_off"
            extra[f"{name}_{new}"] = b
            off[f"{name}.{joint}"] = f"{name}_{new}"
    return [{"name": "rubber", "fits": {}},
            {"name": "firm", "based_on": "rubber", "fits": firm},
            {"name": "offset", "based_on": "rubber", "fits": off}], extra


def vehicle(m, corners):
    """A vehicle whose weight on each axle is what the wheels say, where they say it."""
    load = {k: corners[k]["wheel"]["static_load_N"] for k in corners}
    front = load.get("front", 4000.0)
    rear = load.get("rear", 3600.0)
    mass = 2 * (front + rear) / 9.80665
    v = {"mass_kg": mass, "front_mass_fraction": front / (front + rear),
         "cg_height_mm": m.u(480, 600), "wheelbase_mm": m.u(2450, 2900),
         "track_mm": {"front": m.u(1500, 1560), "rear": m.u(1500, 1570)},
         "brake_front_fraction": m.u(0.6, 0.75),
         "roll_stiffness_Nm_per_deg": {"front": m.u(500, 1100), "rear": m.u(350, 900)},
         "cornering_stiffness_N_per_deg": {"front": 1500, "rear": 1500},
         "camber_stiffness_N_per_deg": {"front": 60, "rear": 60},
         "pneumatic_trail_mm": m.u(15, 40),
         "load_transfer": "rule"}
    if len(corners) == 1 or m.rng.random() < 0.5:
        v["roll_centre_height_mm"] = {"front": m.u(20, 120), "rear": m.u(40, 160)}
    return v


def manoeuvres(m):
    """Some of the manoeuvres of the case format."""
    return [{"name": "trail braking", "brake_g": m.u(0.2, 0.6), "lateral_g": m.u(0.2, 0.6),
             "wheel": str(m.rng.choice(["outer", "inner"]))},
            {"name": "corner exit", "drive_g": m.u(0.1, 0.4), "lateral_g": m.u(0.1, 0.4),
             "driven": str(m.rng.choice(["front", "rear", "all"]))}]


def measured(spec, rng):
    """A bush of given rates as a press might have found it: progressive, lopsided, some ways still by rate."""
    def curve(rate, reach, sides):
        x = np.sort(rng.uniform(0.05, 1.0, 3)) * reach
        points = [[round(float(v), 4), round(float(rate * v * (1 + 0.8 * (v / reach) ** 2)), 3)] for v in x]
        if sides == 2:
            y = np.sort(rng.uniform(0.05, 1.0, 2)) * reach
            points = [[round(-float(v), 4), round(-float(rate * v * (1 + 0.5 * v / reach)), 3)] for v in y[::-1]] + points
        return {"points": points}

    def pair(v):
        return v if isinstance(v, list) else [v, v]
    out = {k: v for k, v in spec.items() if k not in ("stop", "type")} | {"type": "measured"}
    for key, reach, unit in (("radial", 1.2, "N_per_mm"), ("conical", 6.0, "Nm_per_deg")):
        rates, how = pair(spec[f"{key}_{unit}"]), rng.integers(0, 3)
        if how == 0 and key == "conical":
            continue
        del out[f"{key}_{unit}"]
        if how == 1:
            out[f"{key}_e1"], out[f"{key}_e2"] = (curve(r, reach, 1 + int(rng.integers(0, 2))) for r in rates)
        else:
            out[key] = curve(rates[0], reach, 1 + int(rng.integers(0, 2)))
    for key, reach, unit in (("axial", 3.0, "N_per_mm"), ("torsional", 9.0, "Nm_per_deg")):
        if rng.random() < 0.5 and spec[f"{key}_{unit}"] > 0:
            out[key] = curve(out.pop(f"{key}_{unit}"), reach, 2)
    return out


def with_curves(case, seed):
    """The case with some of its bushes measured."""
    rng = np.random.default_rng(1000 + seed)
    for name, spec in case["bushes"].items():
        if spec["type"] == "rates" and rng.random() < 0.6:
            case["bushes"][name] = measured(spec, rng)
    return case


def make(seed):
    """One case, a function of its seed alone."""
    rng = np.random.default_rng(seed)
    names = ["front"] if seed % 3 else ["front", "rear"]
    corners, makers, bushes, loads = {}, {}, {}, []
    for i, name in enumerate(names):
        kind = KINDS[(seed + 2 * i) % len(KINDS)]
        corners[name], m = corner(rng, kind)
        makers[name] = m
        for j in corners[name]["joints"]:
            j["bush"] = f"{name}_{j['bush']}"
        bushes.update({f"{name}_{k}": b for k, b in m.bushes.items()})
        m.choice = {j: [f"{name}_{n}" for n in v] for j, v in m.choice.items()}
        m.bushes = {f"{name}_{k}": b for k, b in m.bushes.items()}
        loads += direct_loads(m, name)
        for load in loads[-3:]:
            load["name"] += f" {name}"
    kit_list, extra = kits(makers, rng)
    bushes.update(extra)
    m = makers["front"]
    kinds = ", ".join(KINDS[(seed + 2 * i) % len(KINDS)] for i in range(len(names)))
    return {"format": "giveway-case-1", "title": f"random case {seed} ({kinds}), invented",
            "vehicle": vehicle(m, corners), "corners": corners, "bushes": bushes,
            "kits": kit_list, "loads": loads + (manoeuvres(m) if seed % 3 == 0 else [])}


if __name__ == "__main__":
    json.dump(make(int(sys.argv[1])), sys.stdout, indent=1)
    print()
