# SPDX-License-Identifier: MIT
"""What `deflect` and `travel` say of axles and of the whole car, from the potential of car.py (used only for tests)."""
import numpy as np

from .car import G0, MIRROR, Bodies, camber_toe, conjugate, product, quaternion, rotate, rotation_vector, wheel_axis
from .case import static_load

AXIAL = np.array([-1.0, 1.0, -1.0])
SIDES = ("left", "right")


def newton(f, x, tries=60, what=""):
    """Root of f, which takes many points at once; Newton's matrix by differences, kept while it serves."""
    n, last, jac, least, idle = len(x), np.inf, None, (np.inf, x), 0
    for _ in range(tries):
        r = f(x[None])[0]
        size = np.max(np.abs(r))
        if size < least[0]:
            least, idle = (size, x), 0
        elif size < 2e-5:      # at the rounding of the stiffest joints
            idle += 1
            if idle == 3:
                return least[1]
        if size < 2e-7 and size >= 0.5 * last:
            return least[1]
        if jac is None or size > 1.0 or size > 0.2 * last:
            h = np.diag(np.full(n, 1e-7))
            jac = (np.concatenate([f(x + part) for part in np.array_split(h, 8)]) - r).T / 1e-7
        last = size
        step = np.linalg.solve(jac, -r)
        if not np.all(np.isfinite(step)):
            break
        x = x + step * min(1.0, 0.5 / max(np.max(np.abs(step[:n - 8])), 1e-30))
    if least[0] < 2e-5:
        return least[1]
    raise RuntimeError(f"{what}: the reference did not converge ({last:.1e})")


def mirrored(side, v, axial=False):
    """A vector of a wheel's own axes in the car's, and back."""
    return v if side == "left" else v * (AXIAL if axial else MIRROR)


class Setting:
    """Wheels as they are set, and what is read off a state against S0."""

    def __init__(self, bodies):
        self.b = bodies
        self.axis, self.q0, self.z0, self.static = {}, {}, None, {}

    def upright(self, z, key):
        """Attitude of an upright in chassis axes."""
        q, t = self.b.poses(z)
        u = self.b.wheels[key]["body"]
        return product(conjugate(q[0]), q[u])

    def point(self, z, key, x):
        """Where a point of the upright is, chassis axes."""
        q, t = self.b.poses(z)
        u = self.b.wheels[key]["body"]
        return rotate(conjugate(q[0]), rotate(q[u], x) + t[u] - t[0])

    def own(self, key, q):
        """A rotation in the wheel's own axes."""
        return q if key[1] == "left" else q * np.array([1.0, -1.0, 1.0, -1.0])

    def set(self, z, key, camber, toe):
        """The wheel's axis, in the upright's design frame, own axes."""
        q = self.own(key, self.upright(z, key))
        self.q0[key] = q
        self.axis[key] = rotate(conjugate(q), wheel_axis(camber, toe))

    def angles(self, z, key):
        """Camber, toe, caster change (rad)."""
        q = self.own(key, self.upright(z, key))
        camber, toe = camber_toe(rotate(q, self.axis[key]))
        since = rotation_vector(product(q, conjugate(self.q0[key])))
        return camber, toe, -since[1]

    def travel(self, z, key):
        """Of the wheel centre along the chassis' z."""
        x = self.b.wheels[key]["centre"] * (MIRROR if key[1] == "right" else 1.0)
        return self.point(z, key, x)[2] - x[2]

    def told(self, z, z0, key, part, spring_force, unshared, shares):
        """The result object of one wheel, in the units of the case file."""
        b, (axle, side) = self.b, key
        w = b.wheels[key]
        camber, toe, caster = self.angles(z, key)
        m = MIRROR if side == "right" else np.ones(3)
        patch = w["centre"] - np.array([0, 0, w["radius"]])

        def moved(x):
            return (self.point(z, key, x * m) - self.point(z0, key, x * m)) * m * 1e3
        deg = np.degrees(1.0)
        toe0 = np.radians(w["spec"]["static_toe_deg"])
        out = {"camber_change_deg": (camber - self.static[key]) * deg, "toe_change_deg": (toe - toe0) * deg,
               "caster_change_deg": caster * deg, "camber_deg": camber * deg, "toe_deg": toe * deg,
               "wheel_centre_mm": moved(w["centre"]), "contact_patch_mm": moved(patch),
               "spring_force_N": spring_force, "bushes": []}
        u, th, f, mo = self.joints(z, part)
        u0, th0, _, _ = self.joints(z0, part)
        d = np.concatenate([u - u0, th - th0], 1)
        share = [(fb * d).sum(1) for fb, _ in shares]
        for j, joint in enumerate(b.joints):
            if joint["axle"] != axle or (unshared and joint["side"] != side):
                continue
            name = joint["name"] if unshared or joint["side"] is None else f"{joint['side']}.{joint['name']}"
            out["bushes"].append({"joint": name, "deflection_mm": u[j] * 1e3, "rotation_deg": th[j] * deg,
                                  "force_N": f[j], "moment_Nm": mo[j], "toe_share_deg": share[0][j] * deg,
                                  "camber_share_deg": share[1][j] * deg})
        rho = [sum(r[k] * (self.travel(z, k) - self.travel(z0, k) * 0) for k in r if k[0] == axle) for _, r in shares]
        out["shares"] = {"travel_toe_deg": rho[0] * deg, "travel_camber_deg": rho[1] * deg,
                         "geometry_toe_deg": (toe - toe0 - rho[0] - share[0].sum()) * deg,
                         "geometry_camber_deg": (camber - self.static[key] - rho[1] - share[1].sum()) * deg}
        return out

    def joints(self, z, part):
        """u, theta, force, moment of every joint."""
        b = self.b
        q, t = b.poses(z)
        u, th = b.strain(q[b.ja], t[b.ja], q[b.jb], t[b.jb], part)
        r = np.hypot(u[:, 0], u[:, 1])
        gap = np.where(np.isfinite(b.gap), b.gap, 0)
        over = np.where(r > b.gap, b.stop * (r - gap) / np.where(r > 0, r, 1), 0.0)
        f = b.k * u
        f[:, :2] += over[:, None] * u[:, :2]
        return u, th, f, b.c * th


class Ramp(Setting):
    """One axle, its chassis fixed."""

    def __init__(self, case, axle, kit, extra=None):
        super().__init__(Bodies(case, kit, [axle], extra))
        self.case, self.axle = case, axle
        self.weight = static_load(case, axle)
        self.keys = [(axle, s) for s in SIDES]
        n = 6 * self.b.n
        still = {k: dict(force=np.array([0, 0, self.weight]), moment=np.zeros(3), hub=np.zeros(3), travel=0.0)
                 for k in self.keys}
        x = newton(lambda v: self.residual(v, still, 0.0, "travel"), np.zeros(n + 2), what="S0")
        spec = case["corners"][axle]["wheel"]
        camber, toe = np.radians(spec["static_camber_deg"]), np.radians(spec["static_toe_deg"])
        for k in self.keys:
            self.set(self.full(x), k, camber, toe)
            self.static[k] = camber
        self.part = 1.0
        if np.any(self.b.offset):
            for part in (0.25, 0.5, 0.75, 1.0):
                x = newton(lambda v: self.residual(v, still, part, "travel"), x, what="S0 with offsets")
            for k in self.keys:
                self.static[k] = self.angles(self.full(x), k)[0]
                self.set(self.full(x), k, self.static[k], toe)
        self.x0, self.z0 = x, self.full(x)
        self.p0, self.l0 = x[n:n + 2], self.b.lengths(self.z0)
        self.still = still

    def full(self, x):
        """With the chassis' five zeros."""
        n = 6 * self.b.n
        return np.concatenate([x[..., :n], np.zeros(x.shape[:-1] + (5,))], -1)

    def residual(self, x, loads, part, mode):
        """x: bodies, then two spring forces (`travel`) or two vertical loads on top (`path`)."""
        b, n = self.b, 6 * self.b.n
        z, p = self.full(x), x[..., n:n + 2]
        rate = np.array([s["rate"] for s in b.springs])
        force = p if mode == "travel" else self.p0 + rate * (self.l0 - b.lengths(z))
        g = b.gradient(z, part, force)
        q, t = b.poses(z)
        work = np.zeros_like(g)
        goes = []
        for i, key in enumerate(self.keys):
            w, l = b.wheels[key], loads[key]
            m = MIRROR if key[1] == "right" else np.ones(3)
            c = rotate(q[..., w["body"], :], np.broadcast_to(w["centre"] * m, t[..., w["body"], :].shape)) + t[..., w["body"], :]
            low = (w["centre"] - np.array([0, 0, w["radius"]])) * m
            patch = rotate(q[..., w["body"], :], np.broadcast_to(low, c.shape)) + t[..., w["body"], :]
            f = np.broadcast_to(mirrored(key[1], l["force"]), c.shape).copy()
            if mode == "path":
                f[..., 2] += p[..., i]
            zero = np.zeros_like(f)
            b.push(z, w["body"], patch, f, np.broadcast_to(mirrored(key[1], l["moment"], True), c.shape), work)
            b.push(z, w["body"], c, np.broadcast_to(mirrored(key[1], l["hub"]), c.shape), zero, work)
            goes.append(c[..., 2] - w["centre"][2] - l["travel"])
        return np.concatenate([(g - work)[..., :n], 1e6 * np.stack(goes, -1)], -1)

    def loads(self, left, other):
        """Both wheels' from the left one's, each in its own axes."""
        weight = np.array([0, 0, self.weight])
        if other == "still":
            right = self.still[self.keys[1]]
        elif other == "opposite":
            right = dict(force=weight - (left["force"] - weight), moment=-left["moment"], hub=-left["hub"],
                         travel=-left["travel"])
        else:
            right = left
        return {self.keys[0]: left, self.keys[1]: right}

    def solve(self, loads, mode="travel"):
        """From S0, in parts."""
        n = 6 * self.b.n
        x = self.x0.copy()
        if mode == "path":
            x[n:] = 0.0
            loads = {k: dict(v, force=self.still[k]["force"]) for k, v in loads.items()}
        big = max(np.max(np.abs(v["force"] - self.still[k]["force"])) / 4000 + abs(v["travel"]) / 0.03
                  for k, v in loads.items())
        steps = 1 + int(big)
        for i in range(1, steps + 1):
            f = i / steps
            now = {k: {key: (1 - f) * self.still[k][key] + f * v[key] for key in v} for k, v in loads.items()}
            x = newton(lambda v: self.residual(v, now, 1.0, mode), x, what=f"{self.axle} ramp")
        return x

    def shares_of(self, key):
        """Of one wheel, computed once."""
        store = self.__dict__.setdefault("_shares", {})
        if key not in store:
            toe = np.radians(self.case["corners"][self.axle]["wheel"]["static_toe_deg"])
            store[key] = self.b.shares(self.axle, key[1], self.static[key], toe)
        return store[key]

    def rates(self, way):
        """Of both wheels' vertical loads with their own travels, at S0, as both go (1, way) times the left's travel."""
        n = 6 * self.b.n
        x = self.x0.copy()
        x[n:] = 0.0
        f = lambda v: self.residual(v, self.still, 1.0, "path")

        def central(h):
            e = h * np.eye(len(x))
            return ((f(x + e) - f(x - e)) / (2 * h)).T
        jac = (4.0 * central(1e-4) - central(2e-4)) / 3.0
        rhs = np.zeros(len(x))
        rhs[n:] = 1e6 * np.array([1.0, way])
        d = np.linalg.solve(jac, rhs)
        return d[n] / 1.0, d[n + 1] / way, d


class Road(Setting):
    """The whole car."""

    def __init__(self, case, kit, first, extra=None):
        super().__init__(Bodies(case, kit, ["front", "rear"], extra))
        self.case, self.v = case, case["vehicle"]
        b = self.b
        self.keys = list(b.wheels)
        v = self.v
        self.mass = v["mass_kg"]
        f = v["front_mass_fraction"]
        self.stat = {"front": self.mass * G0 * f / 2, "rear": self.mass * G0 * (1 - f) / 2}
        moment = self.mass * np.array([-(1 - f) * v["wheelbase_mm"] * 1e-3, 0, v["cg_height_mm"] * 1e-3])
        left = self.mass
        for key in self.keys:
            w = b.wheels[key]
            m = w["spec"].get("mass_kg", 0.0)
            left -= m
            moment = moment - m * w["centre"] * (MIRROR if key[1] == "right" else 1.0)
        self.chassis_mass, self.centre = left, moment / left
        self.made_up = {}
        self.ramps = {}
        for axle in ("front", "rear"):
            self.ramps[axle] = Ramp(case, axle, kit, extra)
            self.made_up[axle] = 0.0
            k = v.get("roll_stiffness_Nm_per_deg", {}).get(axle)
            if not b.has_bar[axle] and k:
                l, r, _ = (self.ramps[axle] if kit == first else Ramp(case, axle, first, extra)).rates(-1.0)
                t = 2e-3 * case["corners"][axle]["wheel"]["centre_mm"][1]
                self.made_up[axle] = 0.5 * (2 * np.degrees(k) / t ** 2 - 0.5 * (l + r))
        self.stand()

    def stand(self):
        """S0: travels 0, four preloads."""
        b, n = self.b, 6 * self.b.n
        for key in self.keys:
            self.static[key] = self.ramps[key[0]].static[key]
        x = np.zeros(n + 7)
        for axle, ramp in self.ramps.items():
            for name, i in ramp.b.index.items():
                if i:
                    j = b.index[name]
                    x[6 * (j - 1):6 * j] = ramp.x0[6 * (i - 1):6 * i]
                    # the ramp's rear axle stands as far back as here, so displacements are the same
            s = 0 if axle == "front" else 2
            x[n + 3 + s:n + 5 + s] = ramp.p0
        self.still = dict(ax=0.0, ay=0.0, brake=0.0, drive={"front": 0.0, "rear": 0.0})
        self.setting = True
        x = newton(lambda y: self.residual(y, self.still), x, what="the car's S0")
        self.setting = False
        self.x0, self.z0 = x, self.full(x)
        self.p0, self.l0 = x[n + 3:n + 7], b.lengths(self.z0)
        for key in self.keys:
            toe = np.radians(b.wheels[key]["spec"]["static_toe_deg"])
            self.set(self.z0, key, self.static[key], toe)

    def full(self, x):
        """From bodies as the chassis sees them, so that a step of roll takes all of them along; its y and yaw are 0."""
        n = 6 * self.b.n
        lead = x.shape[:-1]
        own = x[..., :n].reshape(lead + (self.b.n, 6))
        zero = np.zeros(lead + (1,))
        chassis = np.concatenate([zero, x[..., n:n + 3], zero], -1)
        q, t = self.b.poses(np.concatenate([np.zeros(lead + (n,)), chassis], -1))
        q, t = q[..., :1, :], t[..., :1, :]
        far = rotate(np.broadcast_to(q, own.shape[:-1] + (4,)), own[..., :3]) + t
        turn = rotation_vector(product(np.broadcast_to(q, own.shape[:-1] + (4,)), quaternion(own[..., 3:])))
        return np.concatenate([np.concatenate([far, turn], -1).reshape(lead + (n,)), chassis], -1)

    def contact(self, q, t, key):
        """Wheel centre, contact point, load, travel; road axes."""
        w = self.b.wheels[key]
        u, axle = w["body"], key[0]
        m = MIRROR if key[1] == "right" else np.ones(3)
        shape = t[..., u, :].shape
        c = rotate(q[..., u, :], np.broadcast_to(w["centre"] * m, shape)) + t[..., u, :]
        if self.setting:
            toe = np.radians(w["spec"]["static_toe_deg"])
            axis = rotate(q[..., 0, :], np.broadcast_to(wheel_axis(self.static[key], toe) * m, shape))
        else:
            axis = rotate(q[..., u, :], np.broadcast_to(self.axis[key] * m, shape))
        lean = axis[..., 2]
        level = np.sqrt(1 - lean ** 2)
        down = -(np.array([0, 0, 1.0]) - lean[..., None] * axis) / level[..., None]
        length = c[..., 2] / level
        kt = w["spec"]["tyre_vertical_N_per_mm"] * 1e3
        load = kt * (w["radius"] + self.stat[axle] / kt - length)
        travel = rotate(conjugate(q[..., 0, :]), c - t[..., 0, :])[..., 2] - w["centre"][2]
        return c, c + length[..., None] * down, load, travel, lean

    def residual(self, x, load):
        """x: bodies; height, roll, pitch; lateral forces of front and rear (S0: four spring forces)."""
        b, n = self.b, 6 * self.b.n
        z = self.full(x)
        rate = np.array([s["rate"] for s in b.springs])
        force = x[..., n + 3:n + 7] if self.setting else self.p0 + rate * (self.l0 - b.lengths(z))
        g = b.gradient(z, 1.0, force)
        q, t = b.poses(z)
        work = np.zeros_like(g)
        acc = -np.array([load["ax"], load["ay"], G0])
        x0 = rotate(q[..., 0, :], np.broadcast_to(self.centre, t[..., 0, :].shape)) + t[..., 0, :]
        none = np.zeros_like(x0)
        b.push(z, 0, x0, none + self.chassis_mass * acc, none, work)
        travels = []
        for axle, i in (("front", 0), ("rear", 1)):
            keys = [(axle, s) for s in SIDES]
            at = [self.contact(q, t, k) for k in keys]
            both = at[0][2] + at[1][2]
            lateral = 0 * both if self.setting else x[..., n + 3 + i]
            share = self.v["brake_front_fraction"] if axle == "front" else 1 - self.v["brake_front_fraction"]
            lift = -self.made_up[axle] * (at[0][3] - at[1][3])
            up = rotate(q[..., 0, :], np.broadcast_to(np.array([0, 0, 1.0]), x0.shape))
            for k, key in enumerate(keys):
                c, patch, vertical, travel, _ = at[k]
                u = b.wheels[key]["body"]
                side = lateral * vertical / both
                f = np.stack([0 * side - 0.5 * load["brake"] * share, side, vertical], -1)
                m = np.stack([0 * side, 0 * side, -self.v["pneumatic_trail_mm"] * 1e-3 * side], -1)
                b.push(z, u, patch, f, m, work)
                b.push(z, u, c, none + b.wheels[key]["spec"].get("mass_kg", 0.0) * acc, none, work)
                drive = none + np.array([load["drive"][axle], 0, 0])
                b.push(z, u, c, drive, none, work)
                fd = b.final_drive[axle]
                b.push(z, fd, t[..., fd, :], none, np.cross(patch - c, drive), work)
                bar = up * (lift if k == 0 else -lift)[..., None]
                b.push(z, u, c, bar, none, work)
                b.push(z, 0, c, -bar, none, work)
                travels.append(travel)
        r = g - work
        if self.setting:
            return np.concatenate([r[..., :n], r[..., n + 1:n + 4], 1e6 * np.stack(travels, -1)], -1)
        return np.concatenate([r[..., :n], r[..., n:n + 5]], -1)

    def solve(self, m):
        """A manoeuvre of the case."""
        n = 6 * self.b.n
        lateral, brake, drive = (m.get(k, 0.0) for k in ("lateral_g", "brake_g", "drive_g"))
        driven = m.get("driven", "rear")
        weight = self.mass * G0
        share = {a: (0.5 if driven == "all" else float(driven == a)) for a in ("front", "rear")}
        steps = 1 + int(max(lateral, brake, drive) / 0.12)
        x = before = np.concatenate([self.x0[:n + 3], np.zeros(2)])
        for i in range(1, steps + 1):        # the g grow together; each step starts where the last two point to
            f = i / steps
            self.load = dict(ax=f * (drive - brake) * G0, ay=-f * lateral * G0, brake=f * weight * brake,
                             drive={a: 0.5 * f * weight * drive * share[a] for a in share})
            start, before = (2 * x - before if i > 1 else x), x
            x = newton(lambda y: self.residual(y, self.load), start, what=str(m))
        return x

    def result(self, x, key, unshared):
        """The result object of one wheel."""
        n, deg = 6 * self.b.n, np.degrees(1.0)
        z = self.full(x)
        q, t = self.b.poses(z)
        q0, t0 = self.b.poses(self.z0)
        axle, side = key
        at = {s: self.contact(q, t, (axle, s)) for s in SIDES}
        lateral = x[n + 3 + (axle == "rear")] * at[side][2] / (at["left"][2] + at["right"][2])
        i = [(s["axle"], s["side"]) for s in self.b.springs].index(key)
        rate = self.b.springs[i]["rate"]
        force = self.p0[i] + rate * (self.l0[i] - self.b.lengths(z)[i])
        share = self.v["brake_front_fraction"] if axle == "front" else 1 - self.v["brake_front_fraction"]
        out = self.told(z, self.z0, key, 1.0, force, unshared, self.all_shares(key))
        m = MIRROR if side == "right" else np.ones(3)
        am = AXIAL if side == "right" else np.ones(3)
        out.update({"roll_deg": -(x[n + 1] - self.x0[n + 1]) * deg, "pitch_deg": (x[n + 2] - self.x0[n + 2]) * deg,
                    "heave_mm": 1e3 * ((rotate(q[0], self.centre) + t[0])[2] - (rotate(q0[0], self.centre) + t0[0])[2]),
                    "travel_mm": at[side][3] * 1e3, "dive_mm": 500 * (at["left"][3] + at["right"][3]),
                    "camber_to_road_deg": -np.arcsin(at[side][4]) * deg,
                    "patch_force_N": np.array([-0.5 * self.load["brake"] * share, lateral, at[side][2]]) * m,
                    "hub_force_N": np.array([self.load["drive"][axle], 0, 0]),
                    "patch_moment_Nm": np.array([0, 0, -self.v["pneumatic_trail_mm"] * 1e-3 * lateral]) * am})
        return out

    def all_shares(self, key):
        """The ramp's linear axle, its joints put where this car has them."""
        out = []
        ramp = self.ramps[key[0]]
        where = {(j["axle"], j["side"], j["name"]): i for i, j in enumerate(ramp.b.joints)}
        for fb, rho in ramp.shares_of(key):
            rows = np.zeros((len(self.b.joints), 6))
            for i, j in enumerate(self.b.joints):
                k = where.get((j["axle"], j["side"], j["name"]))
                if k is not None:
                    rows[i] = fb[k]
            out.append((rows, rho))
        return out


def shared(case, axle):
    """True where the wheels of an axle share parts."""
    a = case.get("axles", {}).get(axle, {})
    return bool(a.get("members") or a.get("joints"))


def lopsided(case, axle, bodies):
    """True where the axle is not its own mirror image."""
    for j in bodies.joints:
        if j["axle"] != axle:
            continue
        if j["side"] is None and j["at"][1] != 0.0:
            return True
        for other in bodies.joints:
            same = other["axle"] == axle and other["name"] == j["name"]
            if same and (np.any(other["k"] != j["k"]) or np.any(other["c"] != j["c"]) or other["stop"] != j["stop"] or
                         other["offset"] != j["offset"]):
                return True
    return False


def vec(load, key):
    """A vector of a direct load."""
    return np.array(load.get(key, [0, 0, 0]), float)


def deflect(case, extra=None, kits=None, loads=None):
    """Every result of `deflect`, in no order."""
    first = case["kits"][0]["name"]
    for kit in (k["name"] for k in case["kits"]):
        if kits and kit not in kits:
            continue
        ramps, road = {}, None
        for load in case["loads"]:
            if loads and load["name"] not in loads:
                continue
            base = {"kit": kit, "load": load["name"]}
            if "corner" not in load:
                if road is None:
                    road = Road(case, kit, first, extra)
                x = road.solve(load)
                for axle in ("front", "rear"):
                    for side, wheel in zip(SIDES, ("outer", "inner")):
                        if load.get("wheel", "outer") in (wheel, "both"):
                            yield dict(base, corner=axle, wheel=wheel, **road.result(x, (axle, side), not shared(case, axle)))
                continue
            axle = load["corner"]
            if axle not in ramps:
                ramps[axle] = Ramp(case, axle, kit, extra)
            ramp = ramps[axle]
            force = [ramp.weight if v is None else v for v in load.get("patch_force_N", [0, 0, 0])]
            left = dict(force=np.array(force, float), moment=vec(load, "patch_moment_Nm"), hub=vec(load, "hub_force_N"),
                        travel=load.get("travel_mm", 0.0) * 1e-3)
            other = load.get("other_wheel", "same")
            x = ramp.solve(ramp.loads(left, other))
            n = 6 * ramp.b.n
            both = other != "same" or lopsided(case, axle, ramp.b)
            for i, side in enumerate(SIDES if both else SIDES[:1]):
                key = (axle, side)
                told = ramp.told(ramp.full(x), ramp.z0, key, 1.0, x[n + i], not shared(case, axle), ramp.shares_of(key))
                yield dict(base, corner=axle, **({"side": side} if both else {}), **told)


MODES = {"together": 1.0, "opposite": -1.0, "one": 0.0}      # the other wheel's travel for the left one's


def travel(case, extra, axle, kit, wheels, places):
    """Points of `travel` of both wheels (or of the left one alone), and what is told of rolling."""
    ramp = case.setdefault("// ramps", {}).setdefault((axle, kit), None) or Ramp(case, axle, kit, extra)
    case["// ramps"][axle, kit] = ramp
    way = MODES[wheels]
    n, none = 6 * ramp.b.n, np.zeros(3)
    both = wheels != "together" or lopsided(case, axle, ramp.b)
    sides = [(s, {"points": []}) for s in (SIDES if both else SIDES[:1])]
    for at in places:
        left = dict(force=none, moment=none, hub=none, travel=at * 1e-3)
        right = dict(left, travel=way * at * 1e-3)
        x = ramp.solve({ramp.keys[0]: left, ramp.keys[1]: right}, "path")
        for i, (side, out) in enumerate(sides):
            told = ramp.told(ramp.full(x), ramp.z0, (axle, side), 1.0, 0.0, False, ramp.shares_of((axle, side)))
            point = {k: told[k] for k in ("camber_change_deg", "toe_change_deg", "caster_change_deg", "camber_deg", "toe_deg",
                                          "wheel_centre_mm", "contact_patch_mm")}
            out["points"].append(dict(point, travel_mm=at * (1.0 if i == 0 else way),
                                      vertical_load_N=x[n + i] + ramp.weight))
            if both:
                out["points"][-1]["other_travel_mm"] = at * (way if i == 0 else 1.0)
    if wheels == "opposite":
        rolling(ramp, sides)
    return sides


def rolling(ramp, sides):
    """Derivatives at S0 along the path on which the wheels go opposite ways, by differences of the angles."""
    l, r, d = ramp.rates(-1.0)
    half = ramp.b.wheels[ramp.keys[0]]["centre"][1]
    h = 1e-4
    deg = np.degrees(1.0)
    up, down = (ramp.full(ramp.x0 + s * h * d) for s in (1.0, -1.0))
    for side, out in sides:
        key = (ramp.axle, side)
        m = MIRROR if side == "right" else np.ones(3)
        w = ramp.b.wheels[key]
        low = (w["centre"] - np.array([0, 0, w["radius"]])) * m
        moved = (ramp.point(up, key, low) - ramp.point(down, key, low)) * m
        a, b = ramp.angles(up, key), ramp.angles(down, key)
        out.update({"roll_centre_mm": 1e3 * half * moved[1] / moved[2],
                    "roll_camber_deg_per_deg": half * (a[0] - b[0]) / (2 * h),
                    "roll_steer_deg_per_deg": half * (a[1] - b[1]) / (2 * h),
                    "roll_stiffness_Nm_per_deg": half ** 2 * (l + r) / deg})
