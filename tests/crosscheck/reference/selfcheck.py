# SPDX-License-Identifier: MIT
"""Checks of the independent reading against itself, statics and closed forms (tests only).

Each check yields (name, error, tolerance). The planar numbers are those of two springs in a plane,
worked out from statics: elastic centre xc = (k1 x1 + k2 x2)/(k1 + k2), yaw stiffness
k1 k2 (x1 - x2)^2/(k1 + k2), angle = F (xF - xc)/stiffness.
"""
import copy

import numpy as np
import random_cases
from scipy import linalg, optimize

from .case import DEG, GRAVITY
from .corner import Corner, load_vector
from .study import Fitted, Manoeuvre, Study


def _case(wheel, points, members, joints, spring):
    """A bare case of one corner and one kit; every joint holds its bush in place."""
    return {"format": "giveway-case-1", "title": "check", "bushes": {}, "kits": [{"name": "k"}],
            "corners": {"front": {"wheel": wheel, "points_mm": points, "members": members,
                                  "joints": joints, "spring": spring}}, "loads": []}


def _bush(radial, axial, conical=0.0, torsional=0.0):
    return {"type": "rates", "radial_N_per_mm": radial, "axial_N_per_mm": axial,
            "conical_Nm_per_deg": conical, "torsional_Nm_per_deg": torsional}


def _joint(name, a, b, at, axis, bush, radial=None):
    j = {"name": name, "between": [a, b], "at": at, "axis": axis, "bush": bush}
    if radial:
        j["radial_axis"] = radial
    return j


def planar_case(centre, holds, hold_conical, places, rates):
    """The upright on lateral springs at `places`, otherwise held square by one bush."""
    lateral = [_joint(f"s{i}", "chassis", "upright", f"p{i}", [0, 0, 1], _bush([0, k], 0),
                      [1, 0, 0]) for i, k in enumerate(rates)]
    hold = _joint("hold", "chassis", "upright", "centre", holds, _bush([1e7, 0], 0, hold_conical),
                  [1, 0, 0])
    points = {f"p{i}": p for i, p in enumerate(places)}
    points.update({"centre": centre, "top": [centre[0], centre[1], centre[2] + 300]})
    wheel = {"centre_mm": centre, "loaded_radius_mm": centre[2], "static_load_N": 0.0}
    return _case(wheel, points, {}, lateral + [hold],
                 {"on": "upright", "at": "centre", "to": "top", "rate_N_per_mm": 50})


def planar_toe():
    """8000 N/mm at +0.15 m and 2000 N/mm at -0.20 m, 1 kN at three places."""
    for x, angle in ((0.0, 0.0233860), (-20.0, 0.0292325), (50.0, 0.0087698)):
        case = planar_case([x, 700, 300], [0, 0, 1], [1e5, 1e5],
                           [[150, 700, 300], [-200, 700, 300]], [8000, 2000])
        r = Fitted(Corner(case, "front", "k")).result(load_vector(hub=(0, 1000, 0)), "toe")
        yield f"planar toe, force at x = {x:g} mm", r["toe_change_deg"] - angle, 0.6e-7
        if x == 0.0:
            yield "planar toe, movement at the force", r["wheel_centre_mm"][1] - 0.1326531, 0.6e-7


def planar_camber():
    """4000 N/mm at 0.55 m height, 9000 N/mm at 0.20 m, 1 kN at the ground."""
    case = planar_case([0, 700, 300], [0, 1, 0], 0.0, [[0, 700, 550], [0, 700, 200]],
                       [4000, 9000])
    # free to roll about x and to move along y; held in pitch and yaw
    case["corners"]["front"]["joints"][-1] = _joint(
        "hold", "chassis", "upright", "centre", [1, 0, 0], _bush([0, 0], 1e7, 1e5), [0, 0, 1])
    r = Fitted(Corner(case, "front", "k")).result(load_vector((0, 1000, 0)), "camber")
    yield "planar camber", r["camber_change_deg"] + 0.0519690, 0.6e-7
    yield "planar camber, movement at the ground", r["contact_patch_mm"][1] - 0.3560091, 3e-7
    for j, want in ((0, -571.43), (1, 1571.43)):
        got = r["bushes"][j]["force_N"][1]
        yield f"planar camber, arm {j}", got - want, 6e-3


def statics_of_links(seed=11):
    """Five links on ball joints: their forces follow from six equations of statics alone."""
    rng = np.random.default_rng(seed)
    m = random_cases.Maker(rng, "five_link")
    for name, a, b in (("a", [150, 440, 460], [10, 690, 480]), ("b", [-160, 430, 450],
                       [-20, 695, 470]), ("c", [260, 380, 180], [20, 720, 170]),
                       ("d", [-60, 330, 190], [-40, 715, 165]),
                       ("e", [-190, 340, 230], [-170, 690, 220])):
        m.link(name, a, b, kinds=("ball", "ball"))
    m.spring("upright", [0, 650, 330], [-5, 560, 640])
    wheel = {"centre_mm": [0, 772, 312], "loaded_radius_mm": 312, "static_load_N": 4000}
    case = _case(wheel, m.points, m.members, m.joints, m.spring_spec)
    case["bushes"] = m.bushes
    for j in case["corners"]["front"]["joints"]:
        j.pop("bracket_N_per_mm", None)
    c = Corner(case, "front", "k")
    fit = Fitted(c)
    load = load_vector((-3000, 1500, 5000), (20e3, -30e3, 40e3), (500, -200, 300), 35)
    z, _, scale = c.solve(fit.s0, load)
    force = c.joint_values(z, scale)[2]

    def place(body, x):
        i = c.bodies.index(body)
        return c.ref[i] + z[6 * i:6 * i + 3] + c.rotation_of(z, i) @ (x - c.ref[i])

    columns, sizes = [], []
    for name in "abcde":
        # the direction of a link's force is the line through the points where its joints push:
        # the second body's material point (chassis or upright side carried by its own bush)
        ends = []
        for j in c.joints_of(name):
            second = c.joints[j]["between"][1]
            ends.append(c.at[j] if second == "chassis" else place(second, c.at[j]))
            sizes.append(np.linalg.norm(force[j]))
        d = (ends[1] - ends[0]) / np.linalg.norm(ends[1] - ends[0])
        columns.append(np.concatenate([d, np.cross(ends[1], d)]))
    seat = place("upright", c.points["seat"])
    d = (seat - c.points["top"]) / np.linalg.norm(seat - c.points["top"])
    columns.append(np.concatenate([d, np.cross(seat, d)]))
    centre = c.centre + z[:3]
    patch = c.centre + np.array([0, 0, -c.radius]) + c.patch_of(z)
    outside = np.concatenate([load[:3] + load[6:9],
                              np.cross(patch, load[:3]) + np.cross(centre, load[6:9]) + load[3:6]])
    t = linalg.solve(np.array(columns).T, -outside)
    yield "statics: spring force", t[5] - z[c.ndof], 1e-5
    yield ("statics: link forces",
           np.max(np.abs(np.repeat(np.abs(t[:5]), 2) - np.array(sizes))), 1e-5)


def trailing_arm():
    """A hinge across the car: the wheel centre goes round it, the spring holds the moment."""
    k, c_t = 1e8, 1.5
    arm = np.array([-400.0, 100.0, -30.0])
    pivot = np.array([420.0, 650.0, 330.0])
    centre = list(pivot + arm)
    seat, top = [150.0, 650.0, 300.0], [140.0, 650.0, 620.0]
    points = {"a": [420, 400, 330], "b": [420, 650, 330], "seat": seat, "top": top}
    joints = [_joint(n, "chassis", "upright", n, [0, 1, 0], _bush(k, k, 0, c_t)) for n in "ab"]
    wheel = {"centre_mm": centre, "loaded_radius_mm": 300.0, "static_load_N": 0.0}
    case = _case(wheel, points, {}, joints,
                 {"on": "upright", "at": "seat", "to": "top", "rate_N_per_mm": 40})
    c = Corner(case, "front", "k")
    c.accept = 1e-3         # round-off in so stiff a bush
    fit = Fitted(c)
    for travel in (60.0, -80.0):
        load = load_vector((-1000, 0, 3000), travel=travel)
        r = fit.result(load, "arm")
        rho, start = np.hypot(arm[0], arm[2]), np.arctan2(arm[2], -arm[0])
        phi = np.arcsin((arm[2] + travel) / rho) - start        # about +y, wheel behind the hinge
        give = max(np.linalg.norm(b["force_N"]) for b in r["bushes"]) / k    # the hinge's own
        yield (f"trailing arm, angle at {travel:g} mm", r["caster_change_deg"] + phi / DEG,
               give / rho / DEG)
        yield (f"trailing arm, wheel goes forward at {travel:g} mm",
               r["wheel_centre_mm"][0] - (-rho * np.cos(start + phi) - arm[0]), 1e-4)
        turn = np.array([[np.cos(phi), 0, np.sin(phi)], [0, 1, 0], [-np.sin(phi), 0, np.cos(phi)]])
        s = turn @ (np.array(seat) - pivot)
        p = turn @ (arm + np.array([0, 0, -300.0]))
        d = s + pivot - np.array(top)
        d /= np.linalg.norm(d)
        moment = np.cross(p, load[:3])[1] - 2 * c_t * 1000 / DEG * phi
        force = -moment / np.cross(s, d)[1]
        yield f"trailing arm, spring at {travel:g} mm", r["spring_force_N"] / force - 1, 1e-7


def derivatives(seed):
    """Gradient and Hessian of the potential, loads and spring against differences."""
    case = random_cases.make(seed)
    c = Corner(case, "front", "offset")
    rng = np.random.default_rng(seed)
    y = rng.normal(size=c.ndof) * 4
    z = np.append(y, 3000.0)
    load = load_vector((1, -2e3, 4e3), (3e4, 5e4, -6e4), (2e3, 1, -4), 7)
    _, jac = c.residual(z, load, 1.0)
    worst, e = 0.0, 1e-3
    for i in range(len(z)):
        d = np.zeros(len(z))
        d[i] = e
        f = [c.residual(z + s * d, load, 1.0)[0] for s in (2, 1, -1, -2)]
        num = (8 * (f[1] - f[2]) - (f[0] - f[3])) / (12 * e)
        worst = max(worst, np.max(np.abs(num - jac[:, i])) / np.max(np.abs(jac[:, i])))
    yield f"tangent against differences, case {seed}", worst, 1e-6


def _stored(c, y, scale):
    """Energy in all bushes, N mm."""
    return c.bush_energy(*c.joint_jets(y, scale)).v.sum()


def _kinks(c, start, change):
    """Fractions of the path at which a bush meets its stop or leaves it: the rates jump there."""
    def room(f):
        z, _, scale = c.solve(start, start[1] + f * change, start[2])
        u = c.joint_values(z, scale)[0]
        return np.hypot(u[:, 0], u[:, 1]) - c.gap
    grid = np.linspace(0, 1, 9)
    rows = np.array([room(f) for f in grid])
    found = []
    for i in range(8):
        for j in np.nonzero((rows[i] > 0) != (rows[i + 1] > 0))[0]:
            found.append(optimize.brentq(lambda f, j=j: room(f)[j], grid[i], grid[i + 1]))
    return [0.0] + sorted(found) + [1.0]


def energy_balance(seed, corner="front", kit="rubber"):
    """Work of the loads and of the spring's force along a path = energy stored in the bushes."""
    c = Corner(random_cases.make(seed), corner, kit)
    fit = Fitted(c)
    n = c.ndof
    z0, load0, scale = fit.s0
    change = load_vector((-900, 700, 500), (1e4, -2e4, 3e4), (200, 100, -300), 8)
    x, w = np.polynomial.legendre.leggauss(8)
    work, state, edges = 0.0, fit.s0, _kinks(c, fit.s0, change)
    for a, b in zip(edges, edges[1:]):
        for xi, wi in zip(a + (b - a) * (x + 1) / 2, (b - a) * w / 2):
            state = c.solve(state, load0 + xi * change, scale)
            z = state[0]
            _, jac = c.residual(z, state[1], scale)
            rhs = np.zeros(n + 1)
            rhs[:6] = c.applied(z, change)[0]
            rhs[n] = 1e3 * change[9]
            dz = c.tangent_solve(jac, rhs)
            power = c.applied(z, state[1])[0] @ dz[:6] + z[n] * (c.spring_length(z)[0] @ dz[:n])
            work += wi * power
    end = c.solve(state, load0 + change, scale)[0]
    stored = _stored(c, end, scale) - _stored(c, z0, scale)
    yield f"energy balance, case {seed}", (work - stored) / abs(stored), 1e-8


def reciprocity(seed):
    """Maxwell-Betti about S0 with the spring following its rate: patch y against hub x."""
    c = Corner(random_cases.make(seed), "front", "rubber")
    fit = Fitted(c)
    base = fit.s0[1]

    def slope(extra, read, size):
        z = [c.solve(fit.s0, base + s * size * extra, fit.s0[2], "dive", fit.spring0)[0]
             for s in (1, -1)]
        return (read(z[0]) - read(z[1])) / (2 * size)

    def limit(extra, read):        # the second-order part of the differences taken out
        return (4 * slope(extra, read, 5.0) - slope(extra, read, 10.0)) / 3
    a = limit(load_vector((0, 1, 0)), lambda z: z[0])
    b = limit(load_vector(hub=(1, 0, 0)), lambda z: c.patch_of(z)[1])
    yield f"reciprocity, case {seed}", (a - b) / max(abs(a), abs(b)), 1e-7


def _mirror_x(case):
    """The same case with front and rear of the car exchanged."""
    out = copy.deepcopy(case)

    def flip(v):
        v[0] = -v[0]
    for spec in out["corners"].values():
        flip(spec["wheel"]["centre_mm"])
        spec["wheel"]["static_toe_deg"] *= -1
        for p in spec["points_mm"].values():
            flip(p)
        for j in spec["joints"]:
            flip(j["axis"])
            if "radial_axis" not in j and abs(j["axis"][2]) / np.linalg.norm(j["axis"]) > 0.9396:
                j["radial_axis"] = [-1, 0, 0]
            elif "radial_axis" in j:
                flip(j["radial_axis"])
    for b in out["bushes"].values():
        if "offset_clock_deg" in b:
            b["offset_clock_deg"] *= -1      # e2 = e3 x e1 changes side in a mirror
    return out


def invariance(seed):
    """A shifted origin changes nothing; a mirror across the axle turns toe and caster round."""
    case = random_cases.make(seed)
    load = load_vector((-2500, 800, 4200), (1e4, 2e4, 5e4), (100, 0, 0), 25)
    back = load * np.array([-1, 1, 1, 1, -1, -1, -1, 1, 1, 1])
    moved = copy.deepcopy(case)
    shift = np.array([1234.5, -77.0, 431.0])
    for spec in moved["corners"].values():
        spec["wheel"]["centre_mm"] = list(np.array(spec["wheel"]["centre_mm"]) + shift)
        for k, p in spec["points_mm"].items():
            spec["points_mm"][k] = list(np.array(p) + shift)
    keys = ("camber_change_deg", "toe_change_deg", "caster_change_deg")
    rows = []
    for k, v in ((case, load), (moved, load), (_mirror_x(case), back)):
        r = Fitted(Corner(k, "front", "offset")).result(v, "x")
        shares = [[b["toe_share_deg"], b["camber_share_deg"]] for b in r["bushes"]]
        rows.append((np.array([r[q] for q in keys]), np.array(shares)))
    turn = np.array([1, -1, -1])
    yield f"origin, case {seed}", np.max(np.abs(rows[0][0] - rows[1][0])), 1e-8
    yield f"origin, shares, case {seed}", np.max(np.abs(rows[0][1] - rows[1][1])), 1e-8
    yield f"mirror, case {seed}", np.max(np.abs(rows[0][0] - turn * rows[2][0])), 1e-8
    yield (f"mirror, shares, case {seed}",
           np.max(np.abs(rows[0][1] - rows[2][1] * np.array([-1, 1]))), 1e-8)


def small_shares(seed):
    """Without preload and for small loads the shares are the whole change: to second order."""
    case = random_cases.make(seed)
    case["corners"]["front"]["wheel"]["static_load_N"] = 0.0
    fit = Fitted(Corner(case, "front", "rubber"))
    load = load_vector((-2500, 800, 900), (1e4, 2e4, 5e4), (100, 0, 0), 25)
    left = []
    for size in (1e-4, 5e-5):
        r = fit.result(size * load, "x")
        left.append([r["shares"][f"geometry_{k}_deg"] / size for k in ("toe", "camber")])
    left = np.array(left)
    yield f"linear shares add up, case {seed}", np.max(np.abs(2 * left[1] - left[0])), 1e-4


def spring_modes(seed):
    """Dive, the vertical path and the wheel rate agree with plain solves at given travel."""
    c = Corner(random_cases.make(seed), "front", "rubber")
    fit = Fitted(c)
    load = load_vector((-1200, 0, c.static + 900))
    dive = fit.dive(load)
    load[9] = dive
    z = c.solve(fit.s0, load)[0]
    rate = c.spring["rate_N_per_mm"]

    def lag(state):
        law = fit.spring0[0] + rate * (fit.spring0[1] - c.spring_length(state)[2])
        return (state[c.ndof] - law) / max(1.0, abs(law))
    yield f"dive keeps the spring's law, case {seed}", lag(z), 1e-8
    _, fz, slope = fit.path_point(20.0)
    z = c.solve(fit.s0, load_vector((0, 0, fz), travel=20.0))[0]
    yield f"vertical path keeps the spring's law, case {seed}", lag(z), 1e-8
    h = 0.05
    num = (fit.path_point(20 + h)[1] - fit.path_point(20 - h)[1]) / (2 * h)
    yield f"wheel rate against differences, case {seed}", slope / num - 1, 1e-5


def adjusters(seed):
    """Without preload, what an adjuster does is its misfit times the bush forces of the linear
    corner under the unit moment (virtual work)."""
    case = random_cases.make(seed)
    case["corners"]["front"]["wheel"]["static_load_N"] = 0.0
    study = Study(case)
    fit = study.fitted("front", "rubber")
    c = fit.c
    member = next(b for b in c.bodies[1:] if len(c.joints_of(b)) == 2)
    joint = next(q["name"] for q in c.joints if "chassis" in q["between"])
    for what, change in (("length", lambda k, mm: k.add_length(member, mm)),
                         ("shim", lambda k, mm: k.add_shim(joint, [1, 2, 0.5], mm)),
                         ("offset", lambda k, mm: k.add_offset(joint, 0.6 * mm, -0.8 * mm))):
        got = study.sensitivity("front", "rubber", change)
        moved = Corner(case, "front", "rubber")
        change(moved, 1.0)
        gap = np.einsum("jki,jk->ji", c.frame, moved.misfit[1] - moved.misfit[0])
        for i, which in enumerate(("camber", "toe")):
            want = -np.einsum("ji,ji->", fit.dummy(which)[0][:, :3], gap) / DEG
            yield f"{what}, {which}, case {seed}", got[i] - want, 1e-6


def load_transfer():
    """Sums over the four wheels: weight, lateral force, overturning moment."""
    rng = np.random.default_rng(5)
    m = random_cases.Maker(rng, "strut")
    corners = {"front": {"wheel": {"static_load_N": 4100.0}},
               "rear": {"wheel": {"static_load_N": 3500.0}}}
    v = random_cases.vehicle(m, corners)
    centre = {"front": 60.0, "rear": 110.0}
    load = {"name": "x", "brake_g": 0.3, "lateral_g": 0.6}
    man = [Manoeuvre(v, dict(load, wheel=w), centre) for w in ("outer", "inner")]
    total = sum(man[i].loads[k] * (1, 1, 1, 1, 1, 1, 1, 1, 1, 1) for i in (0, 1)
                for k in ("front", "rear"))
    mass = v["mass_kg"]
    yield "loads: weight", total[2] / (mass * GRAVITY) - 1, 1e-12
    yield "loads: braking", total[0] / (-0.3 * mass * GRAVITY) - 1, 1e-12
    side = sum(abs(man[i].loads[k][1]) for i in (0, 1) for k in ("front", "rear"))
    yield "loads: lateral", side / (0.6 * mass * GRAVITY) - 1, 1e-12
    h = v["cg_height_mm"] / 1e3
    arm = h - (0.06 + 0.05 * (1 - v["front_mass_fraction"]))
    over = sum((man[0].loads[k][2] - man[1].loads[k][2]) / 2 * v["track_mm"][k] / 1e3
               for k in ("front", "rear"))
    want = mass * 0.6 * GRAVITY * h + mass * GRAVITY * arm * man[0].roll
    yield "loads: overturning", over / want - 1, 1e-12


def all_checks():
    """Every check, cheap ones first."""
    yield from load_transfer()
    yield from planar_toe()
    yield from planar_camber()
    yield from statics_of_links()
    yield from trailing_arm()
    for seed in (1, 2, 7):
        yield from adjusters(seed)
    for seed in (1, 2, 3, 4, 5):
        yield from derivatives(seed)
        yield from energy_balance(seed)
        yield from reciprocity(seed)
        yield from invariance(seed)
        yield from small_shares(seed)
        yield from spring_modes(seed)
