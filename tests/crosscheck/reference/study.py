# SPDX-License-Identifier: MIT
"""Results in the shape of the result object (independent reading, used only for tests)."""
import numpy as np

from . import jets
from .case import DEG, GRAVITY, Unsupported
from .corner import ELL, Corner, camber_toe, caster, load_vector, wheel_axis


class Fitted:
    """A corner with a kit at S0, the wheel set; every load starts from here."""

    def __init__(self, corner):
        self.c = corner
        w = corner.wheel
        self.camber0 = w.get("static_camber_deg", 0.0) * DEG
        self.toe0 = w.get("static_toe_deg", 0.0) * DEG
        self.plain, self.s0 = corner.reference()
        self.z0 = self.s0[0]
        self.r0 = corner.rotation_of(self.z0)
        r_plain = corner.rotation_of(self.plain[0])
        carried = self.r0 @ r_plain.T @ wheel_axis(self.camber0, self.toe0)
        # as the parts give them, before toe is set again on the ramp
        self.carried = camber_toe(carried) + (caster(self.r0 @ r_plain.T),)
        self.static_camber = self.carried[0]
        self.axis0 = wheel_axis(self.static_camber, self.toe0)
        n = corner.ndof
        self.spring0 = (self.z0[n], corner.spring_length(self.z0[:n])[2])

    def wheel(self, z):
        """Camber, toe and caster change (rad) of a state."""
        turn = self.c.rotation_of(z) @ self.r0.T
        return camber_toe(turn @ self.axis0) + (caster(turn),)

    # --- shares by virtual work -----------------------------------------------------------------

    def dummy(self, which, offsets=0.0):
        """Forces in every bush of the linear corner under the unit moment, and rho."""
        c, n = self.c, self.c.ndof
        u, th = c.joint_jets(np.zeros(n), offsets)
        w = np.tile(np.repeat([1.0, 1.0 / ELL], 3), 2)
        d = np.zeros((len(c.joints), 6, n + 1))
        for j in range(len(c.joints)):
            d[j][:, c.idx[j]] += np.vstack([u.g[j], th.g[j]]) * w
            d[j][:, n] = 0.0
        d = d[:, :, :n]
        rest = c.joint_values(self.z0, 1.0)          # measured bushes enter with their tangent at S0
        rates = c.tangents(rest[0], rest[1])
        k = np.einsum("jim,jil,jln->mn", d, rates, d)
        lg = c.spring_length(np.zeros(n))[0]
        a, wheel_z = np.zeros((n + 1, n + 1)), np.zeros(n)
        wheel_z[2] = 1.0
        big = 1e4           # scale of the constraint row and column, for conditioning only
        a[:n, :n], a[:n, n], a[n, :n] = k, big * wheel_z, big * lg
        rhs = np.zeros(n + 1)
        rhs[3:6] = self._moment(which) / ELL
        sol = c.tangent_solve(a, rhs)
        return np.einsum("jil,jlm,m->ji", rates, d, sol[:n]), big * sol[n]

    def _moment(self, which):
        """Derivative of the toe or camber formula with the upright's rotation."""
        w = self.axis0
        turned = np.cross(np.eye(3), w)                 # row i: e_i x w
        if which == "toe":
            return (w[1] * turned[:, 0] - w[0] * turned[:, 1]) / (w[0] ** 2 + w[1] ** 2)
        return -turned[:, 2] / np.sqrt(1 - w[2] ** 2)

    # --- one result -----------------------------------------------------------------------------

    def result(self, load, load_name):
        """The result object of one load vector."""
        c, n = self.c, self.c.ndof
        z, _, scale = c.solve(self.s0, load)
        camber, toe, cast = self.wheel(z)
        old, new = c.joint_values(self.z0, scale), c.joint_values(z, scale)
        moved = np.hstack([new[0] - old[0], new[1] - old[1]])
        out = {"kit": c.kit, "corner": c.name, "load": load_name,
               "camber_change_deg": (camber - self.static_camber) / DEG,
               "toe_change_deg": (toe - self.toe0) / DEG, "caster_change_deg": cast / DEG,
               "camber_deg": camber / DEG, "toe_deg": toe / DEG,
               "wheel_centre_mm": list(z[:3] - self.z0[:3]),
               "contact_patch_mm": list(c.patch_of(z) - c.patch_of(self.z0)),
               "spring_force_N": z[n], "bushes": [], "shares": {}}
        if c.has_offset:
            out["static_camber_deg"] = self.static_camber / DEG
        share = {}
        for which, whole in (("toe", toe - self.toe0), ("camber", camber - self.static_camber)):
            fbar, rho = self.dummy(which)
            share[which] = np.einsum("ji,ji->j", fbar, moved) / DEG
            travel = rho * (load[9] - 0.0) / DEG
            out["shares"][f"travel_{which}_deg"] = travel
            out["shares"][f"geometry_{which}_deg"] = whole / DEG - share[which].sum() - travel
        for j, joint in enumerate(c.joints):
            out["bushes"].append({
                "joint": joint["name"], "deflection_mm": list(new[0][j]),
                "rotation_deg": list(new[1][j] / DEG), "force_N": list(new[2][j]),
                "moment_Nm": list(new[3][j] / 1000), "toe_share_deg": share["toe"][j],
                "camber_share_deg": share["camber"][j]})
        return out

    def dive(self, load):
        """Travel (mm) at which the spring's force belongs to its length."""
        z, _, _ = self.c.solve(self.s0, load, mode="dive", s0=self.spring0)
        return z[2]

    # --- travel ---------------------------------------------------------------------------------

    def path_point(self, travel):
        """State on the vertical path at a travel, the patch load there, and the wheel rate."""
        c = self.c
        load = load_vector(travel=travel)
        zp = self.z0.copy()
        zp[c.ndof] = c.static
        start = (zp, load_vector(), self.s0[2])
        z, _, scale = c.solve(start, load, self.s0[2], mode="path", s0=self.spring0)
        _, jac = c.residual(z, load, scale, "path", self.spring0)
        rhs = np.zeros(c.ndof + 1)
        rhs[c.ndof] = 1e3
        slope = c.tangent_solve(jac, rhs)
        return z, z[c.ndof], slope[c.ndof]

    def roll_centre_slope(self, along_path=False):
        """dy/dz of the contact patch at S0."""
        c = self.c
        if along_path:
            z, load = self.z0.copy(), load_vector()
            z[c.ndof] = c.static
            _, jac = c.residual(z, load, self.s0[2], "path", self.spring0)
        else:
            _, jac = c.residual(self.z0, load_vector(patch=(0, 0, c.static)), self.s0[2])
        rhs = np.zeros(c.ndof + 1)
        rhs[c.ndof] = 1e3
        d = c.tangent_solve(jac, rhs)[:6]
        _, rot = c._body_jets(self.z0, 0)
        arm = np.array([[0.0, 0.0, -c.radius]])
        patch = d[:3] + jets.rotate_constant(rot, arm).g[0][:, 3:] @ d[3:] / ELL
        return patch[1] / patch[2]


def direct_load(load, static):
    """Load vector of a direct load of the case."""
    force = list(load.get("patch_force_N", [0, 0, 0]))
    if force[2] is None:
        force[2] = static
    return load_vector(force, 1000.0 * np.array(load.get("patch_moment_Nm", [0, 0, 0])),
                       load.get("hub_force_N", [0, 0, 0]), load.get("travel_mm", 0.0))


class Manoeuvre:
    """Quasi-static load transfer (Gillespie 1992; Milliken & Milliken 1995), SI inside."""

    def __init__(self, vehicle, load, roll_centre):
        v = vehicle
        g, m, f = GRAVITY, v["mass_kg"], v["front_mass_fraction"]
        ax = g * (load.get("drive_g", 0.0) - load.get("brake_g", 0.0))
        ay = g * load.get("lateral_g", 0.0)
        h, base = v["cg_height_mm"] / 1e3, v["wheelbase_mm"] / 1e3
        weight = {"front": m * g * f, "rear": m * g * (1 - f)}
        shift = m * ax * h / base
        axle = {"front": weight["front"] - shift, "rear": weight["rear"] + shift}
        stiff = {k: v["roll_stiffness_Nm_per_deg"][k] / DEG for k in weight}
        z = {k: roll_centre[k] / 1e3 for k in weight}
        arm = h - (z["front"] + (z["rear"] - z["front"]) * (1 - f))
        self.roll = m * ay * arm / (stiff["front"] + stiff["rear"] - m * g * arm)
        self.outer = load.get("wheel", "outer") == "outer"
        sign = 1.0 if self.outer else -1.0
        self.loads, self.dive_loads, self.roll_travel = {}, {}, {}
        for k in weight:
            track = v["track_mm"][k] / 1e3
            lateral = (stiff[k] * self.roll + weight[k] / g * ay * z[k]) / track
            fz = axle[k] / 2 + sign * lateral
            fy = -sign * weight[k] / g * ay * fz / axle[k]
            share = v["brake_front_fraction"]
            share = share if k == "front" else 1 - share
            brake = -m * g * load.get("brake_g", 0.0) * share / 2
            driven = load.get("driven", "rear")
            part = 0.5 if driven == "all" else float(driven == k)
            drive = m * g * load.get("drive_g", 0.0) * part / 2
            trail = v.get("pneumatic_trail_mm", 0.0)
            self.loads[k] = load_vector((brake, fy, fz), (0, 0, -trail * fy), (drive, 0, 0))
            self.dive_loads[k] = load_vector((brake, 0, axle[k] / 2), (0, 0, 0), (drive, 0, 0))
            self.roll_travel[k] = sign * v["track_mm"][k] / 2 * self.roll


class Study:
    """Every result of `deflect` for a case."""

    def __init__(self, case, extra=None):
        self.case, self.extra, self.fitted_kits, self.centres = case, extra, {}, None

    def fitted(self, corner, kit):
        """The corner with the kit at S0, solved once."""
        if (corner, kit) not in self.fitted_kits:
            self.fitted_kits[corner, kit] = Fitted(Corner(self.case, corner, kit, self.extra))
        return self.fitted_kits[corner, kit]

    def roll_centres(self, along_path=False):
        """Roll-centre heights, mm: as given, else from the corner with the first kit."""
        v, first = self.case["vehicle"], self.case["kits"][0]["name"]
        out = {}
        for k in ("front", "rear"):
            given = v.get("roll_centre_height_mm", {}).get(k)
            if given is None:
                slope = self.fitted(k, first).roll_centre_slope(along_path)
                given = v["track_mm"][k] / 2 * slope
            out[k] = given
        return out

    def deflect(self):
        """The list of results."""
        results = []
        for kit in self.case["kits"]:
            for name in self.case["corners"]:
                for load in self.case["loads"]:
                    if load.get("corner", name) == name:
                        results.append(self._one(self.fitted(name, kit["name"]), load))
        return results

    def _one(self, fit, load):
        if "corner" in load:
            return fit.result(direct_load(load, fit.c.static), load["name"])
        self.centres = self.centres or self.roll_centres()
        man = Manoeuvre(self.case["vehicle"], load, self.centres)
        name = fit.c.name
        dive = fit.dive(man.dive_loads[name])
        vector = man.loads[name].copy()
        vector[9] = man.roll_travel[name] + dive
        r = fit.result(vector, load["name"])
        sign = 1 if man.outer else -1
        r.update({"wheel": "outer" if man.outer else "inner", "roll_deg": man.roll / DEG,
                  "travel_mm": vector[9], "dive_mm": dive, "patch_force_N": list(vector[:3]),
                  "hub_force_N": list(vector[6:9]), "patch_moment_Nm": list(vector[3:6] / 1000),
                  "camber_to_road_deg": r["camber_deg"] + sign * man.roll / DEG})
        return r

    # --- travel and align -----------------------------------------------------------------------

    def travel(self, corner, kit, travels):
        """Rows along the vertical path, as physics of the wheel rate describes it.

        Each has the travel, the three changes (degrees), the patch load, the wheel rate, and its
        parasitic part: what the rate loses when every rotational rate is zero, S0 and all (not a
        number where the corner without these rates is a mechanism: a rack that rolls in its
        mounts and takes the tie rod along).
        """
        whole = self.fitted(corner, kit)
        try:
            bare = Fitted(Corner(self.case, corner, kit, self.extra, rotations=False))
        except Unsupported:
            bare = None
        rows = []
        for t in travels:
            z, load, rate = whole.path_point(t)
            camber, toe, cast = whole.wheel(z)
            rows.append({"travel_mm": t, "wheel_rate_N_per_mm": rate,
                         "camber_change_deg": (camber - whole.static_camber) / DEG,
                         "toe_change_deg": (toe - whole.toe0) / DEG,
                         "caster_change_deg": cast / DEG, "patch_load_N": load,
                         "parasitic_N_per_mm": rate - bare.path_point(t)[2] if bare else np.nan})
        return rows

    def sensitivity(self, corner, kit, change, step=0.05):
        """d(camber, toe, caster)/dmm in degrees, by central differences of fourth order.

        `change(corner_object, mm)` applies the adjuster.
        """
        def at(mm):
            c = Corner(self.case, corner, kit, self.extra)
            change(c, mm)
            return np.array(Fitted(c).carried) / DEG
        return (8 * (at(step) - at(-step)) - (at(2 * step) - at(-2 * step))) / (12 * step)

    def align(self, corner, kit):
        """Sensitivities of every adjuster of the case: degrees of camber, toe, caster a mm."""
        rows = []
        for a in self.case["align"][corner]["adjusters"]:
            if a["kind"] == "offset":
                for i, along in enumerate(("e1", "e2")):
                    rows.append((f"offset {a['joint']} {along}", self.sensitivity(
                        corner, kit, lambda c, mm, a=a, i=i: c.add_offset(
                            a["joint"], mm * (i == 0), mm * (i == 1)))))
            elif a["kind"] == "length":
                rows.append((f"length {a['member']}", self.sensitivity(
                    corner, kit, lambda c, mm, a=a: c.add_length(a["member"], mm))))
            else:
                rows.append((f"shim {a['joint']}", self.sensitivity(
                    corner, kit, lambda c, mm, a=a: c.add_shim(a["joint"], a["along"], mm))))
        return rows
