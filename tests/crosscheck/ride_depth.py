# SPDX-License-Identifier: MIT
"""Friction, amplitudes, crackle and draws of the ride model: an independent reading of ride-depth, used only for tests.

A slider of strength M that slips at rms speed sigma is a dashpot sqrt(2/pi) M / sigma; a bush is taken at the sine of
equal power; both are worked out here from a state that is handed in, so that a state can be held against what it
makes of itself. SI units.
"""
import itertools
import math

import numpy as np

from friction_reference import Corner, rates_in, rates_of  # noqa: F401  (for whoever compares)
from reference.dynamic_bush import material
from reference.quadrature import integrate
from reference.road import road
from ride_reference import Model

MM = 1e-3
LEVELS = [np.array([a, b, c, a * b, a * c, b * c, a * b * c]) / math.sqrt(3)
          for a, b, c in itertools.product((-1, 1), repeat=3)]


def wound_rate(spec):
    """Torsional rate of an unbonded bush while its sleeve holds."""
    g = material(spec["material"])["shear_modulus_MPa"] * 1e6
    a, b = spec["inner_diameter_mm"] / 2 * MM, spec["outer_diameter_mm"] / 2 * MM
    rate = 4 * math.pi * g * spec["length_mm"] * MM / (1 / a ** 2 - 1 / b ** 2)
    return rate * spec.get("stiffness_factor", 1.0)


class State:
    """Dashpots by joint ("damper" among them) and amplitudes by joint."""

    def __init__(self, friction, dash, amplitude):
        self.friction, self.dash, self.amplitude = friction, dict(dash), dict(amplitude)
        self.slips, self.moves = {}, {}

    def place(self, model, joint, bush, u, turn):
        """Adds the slider of a joint to the model, and notes whose movement counts."""
        spec = model.specs[joint]
        wound = None
        if joint in self.dash and spec["type"] == "unbonded":
            wound, c = wound_rate(spec), self.dash[joint]

            def law(f):
                return 1 / (1 / (wound * bush.factor(f)) + 1 / (2j * np.pi * f * c))
            model.add(turn[2], law, ("slider", "slider"))
            self.slips[joint] = (turn[2:], lambda f: law(f) / (2j * np.pi * f * c))
        elif joint in self.dash:
            axes = turn if spec["type"] in ("bearing", "ball_joint") else turn[2:]
            for row in axes:
                model.add(row, lambda f, c=self.dash[joint]: 2j * np.pi * f * c, ("slider", "slider"))
            self.slips[joint] = (axes, lambda f: np.ones(f.shape))
        if spec["type"] in ("bonded", "unbonded"):
            a, b, length = (spec[k] * MM for k in ("inner_diameter_mm", "outer_diameter_mm", "length_mm"))
            r = (a + b) / 4
            rows = np.vstack([u, length / math.sqrt(12) * turn[:2], r * turn[2:]])
            share = None
            if wound:
                def share(f):
                    return law(f) / (wound * bush.factor(f))
            self.moves[joint] = (rows, share)

    def again(self, model):
        """The state that this one makes of itself, as (slip speeds, amplitudes); and rms speed, acceleration."""
        rows, kinds = [], []
        damper = model.spec.get("damper", {})
        own = damper.get("rate_Ns_per_mm", 0.0) * 1e3 + model.ride.get("damper_friction_Ns_per_mm", 0.0) * 1e3
        top = damper.get("top_mount_N_per_mm")
        for name, (axes, _) in self.slips.items():
            kinds += [name] * len(axes)
            rows += list(axes)
        if "damper" in self.dash:
            kinds.append("damper")
            rows.append(model.b[model.kinds.index(("damper", "damper"))])
        names = list(dict.fromkeys(kinds))

        def density(f):
            q = model.move(f)[0][0]
            s, w2 = road(model.ride, f), (2 * np.pi * f) ** 2
            travel = s * np.abs(q[:, 4] - q[:, 1]) ** 2
            columns = [travel * w2, travel * w2 ** 2, s * np.abs(q[:, 4]) ** 2]
            for name in names:
                if name == "damper":
                    c = own + self.dash[name]
                    share = np.ones(f.shape) if top is None else 1 / (1 + 2j * np.pi * f * c / (top * 1e3))
                else:
                    share = self.slips[name][1](f)
                turn = sum(np.abs(q @ rows[i]) ** 2 for i, k in enumerate(kinds) if k == name)
                columns.append(s * w2 * np.abs(share) ** 2 * turn)
            for axes, share in self.moves.values():
                moved = np.abs(q @ axes.T) ** 2
                if share is not None:
                    moved[:, 5] *= np.abs(share(f)) ** 2
                columns.append(2 * s * moved.sum(axis=1))
            return np.column_stack(columns)
        edges = [0.5 * 630 ** (i / 12) for i in range(12)] + [315.0]
        total = np.sqrt(integrate(density, edges)[1].sum(axis=0))
        self.crackle = Crackle(self, total[0], total[1])
        return dict(zip(names, total[3:3 + len(names)])), dict(zip(self.moves, total[3 + len(names):]))


class Crackle:
    """The jumps of friction: how often, and what they push."""

    def __init__(self, state, speed, acceleration):
        self.state = state
        self.rate = acceleration / (math.pi * speed)
        self.a = math.sqrt(math.pi / 2) * acceleration

    def spectrum(self, f):
        return 2 * self.rate / math.pi ** 2 / (f ** 2 + (self.rate / (math.pi - 2)) ** 2)

    def ramp(self, strength, winds_up, way, f):
        if not winds_up:
            return np.ones(f.shape, complex)
        x = 2 * np.pi * f * 2 * math.sqrt(strength / (winds_up * way * self.a))
        return 2 * ((1 + 1j * x) * np.exp(-1j * x) - 1) / x ** 2

    def push(self, model, f):
        """Generalised force per unit of the process, and what of it stands in the damper."""
        state, push, in_damper = self.state, np.zeros((len(f), model.n), complex), None
        for name, (axes, _) in state.slips.items():
            strength, turn = state.friction.strength[name], state.friction.turns[name]
            way = np.linalg.norm(turn)
            if name in state.sticks or way == 0:
                continue
            winds_up = wound_rate(model.specs[name]) if model.specs[name]["type"] == "unbonded" else 0.0
            ramp = self.ramp(strength, winds_up, way, f)
            push -= strength * ramp[:, None] * (turn / way @ axes)
        if "damper" in state.dash and "damper" not in state.sticks:
            d = model.spec["damper"]
            force, way = d["friction_N"], state.friction.lengthening
            top, c = d.get("top_mount_N_per_mm", 0.0) * 1e3, d["rate_Ns_per_mm"] * 1e3
            c += model.ride.get("damper_friction_Ns_per_mm", 0.0) * 1e3
            ramp = self.ramp(force, top, abs(way), f)
            if top:
                ramp = ramp * top / (top + 2j * np.pi * f * c)
            row = model.b[model.kinds.index(("damper", "damper"))]  # its shortening
            in_damper = -math.copysign(force, way) * ramp
            push -= in_damper[:, None] * row
        return push, in_damper


SLOWEST = {True: 5e-4, False: 1e-3}


def dashpot(strength, speed, damper):
    slowest = SLOWEST[damper]
    return math.sqrt(2 / math.pi) * strength / max(speed, slowest), not speed > slowest


class Depth:
    """One kit in one corner in its settled state; the state is started from what is told, or from nowhere."""

    def __init__(self, case, kit, corner, rates, friction_rates, told=None):
        self.args = (case, kit, corner, rates)
        self.friction = Corner(case, kit, corner, friction_rates)
        parts = self.friction.friction()[0]
        self.friction.strength = {n: m for n, (m, _) in parts.items() if m > 1e-9}
        own = "amplitude_mm" not in case["ride"]
        if told:
            dash = {s["joint"]: s.get("damping_Nms_per_rad", s.get("damping_Ns_per_mm", 0.0) * 1e3) for s in told["sliders"]}
            amplitude = {a["joint"]: a["amplitude_mm"] * MM for a in told["amplitudes"]} if own else {}
        else:
            dash = {n: dashpot(m, 0.2, n == "damper")[0] for n, m in self.friction.strength.items()}
            amplitude = {}
        self.own = own
        self.start(dash, amplitude)

    def start(self, dash, amplitude):
        self.state = State(self.friction, dash, amplitude)
        self.model = Model(*self.args, state=self.state)
        self.speeds, self.moved = self.state.again(self.model)
        found = {n: dashpot(self.friction.strength[n], v, n == "damper") for n, v in self.speeds.items()}
        self.dash = {n: c for n, (c, _) in found.items()}
        self.state.sticks = {n for n, (_, stuck) in found.items() if stuck}

    def settle(self, passes=60):
        """Plain iteration, damped; how far the last step went."""
        for _ in range(passes):
            dash = {n: math.sqrt(self.dash[n] * self.state.dash.get(n, self.dash[n])) for n in self.dash}
            step = max([abs(math.log(self.dash[n] / self.state.dash[n])) for n in self.dash] +
                       [abs(math.log(x / self.state.amplitude.get(n, 1e-4))) for n, x in self.moved.items() if self.own] + [0])
            if step < 1e-7:
                return step
            self.start(dash, self.moved if self.own else {})
        return step

    def figures(self):
        return self.model.figures(self.crackle())

    def crackle(self):
        return self.state.crackle if set(self.state.dash) - self.state.sticks else None

    def draw(self, u):
        """Figures in one draw: sliders, amplitudes and reversals stay."""
        state = State(self.friction, self.state.dash, self.state.amplitude)
        state.sticks = self.state.sticks
        model = Model(*self.args, state=state, draw=u)
        crackle = self.crackle()
        if crackle:
            other = Crackle.__new__(Crackle)
            other.state, other.rate, other.a = state, crackle.rate, crackle.a
            crackle = other
        return model.figures(crackle)


def spread(kit, base, nominal):
    """Range of a dB figure over the draws."""
    dB = np.array([20 * math.log10(a / b) for a, b in zip(kit, base)])
    mean, sd = dB.mean(), dB.std()
    return [min(nominal, mean - 1.645 * sd), max(nominal, mean + 1.645 * sd)]
