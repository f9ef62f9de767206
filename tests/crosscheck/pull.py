# SPDX-License-Identifier: MIT
"""How a car pulls whose sides are unlike, in a stop with brakes alike: pull.py PROGRAM

The steer of each axle comes from toe and camber of both wheels as `deflect` tells them; the single-track model with its
linear tyres (P. Riekert, T. E. Schunck, Ing.-Archiv 11 (1940) 210; from memory) is marched through the stop by SciPy's
solve_ivp.
Then mirrored kits pull to opposite sides, a kit that is alike on both sides does not, and text, CSV and page say
what JSON says.
"""
import csv
import io
import json
import math
import re
import subprocess
import sys
import tempfile
from pathlib import Path

from scipy.integrate import solve_ivp
from scipy.optimize import fsolve

from validation import record

G, STOP, LEAST = 9.80665, 0.5, 0.1
SLOWEST = 1.0  # m/s, where the march ends
ROOT = Path(__file__).parents[2]
FITS = {"front.{}.lateral_inner": "link_bearing", "front.{}.upper_front": "upper_offset", "front.{}.upper_rear": "upper_offset",
        "rear.{}.toe_inner": "upper_bearing"}
SIDES = {side: {name.format(side): bush for name, bush in FITS.items()} for side in ("left", "right")}
FAILED = []


def check(what, good, told=""):
    print("ok" if good else "not ok", "-", what, told)
    if not good:
        FAILED.append(what)


def spec():
    """The demonstration saloon with two kits for one side each, and a stop that tells both wheels."""
    case = json.loads((ROOT / "cases/fast-saloon.json").read_text())
    case["kits"] = case["kits"][:1] + [{"name": s, "based_on": "rubber", "fits": f} for s, f in SIDES.items()]
    case["loads"] = [{"name": "firm stop", "brake_g": STOP, "wheel": "both"}]
    case.pop("choose")
    return case


def said(program, *words):
    done = subprocess.run([program, *words], capture_output=True, text=True, encoding="utf-8")
    if done.returncode:
        raise SystemExit(done.stderr)
    return done.stdout


def steer(told, case, kit, axle):
    """Of an axle, to the left: a left wheel that toes in steers right; a top that leans left pushes to the left."""
    v = case["vehicle"]
    worth = v["camber_stiffness_N_per_deg"][axle] / v["cornering_stiffness_N_per_deg"][axle]
    of = {r["wheel"]: r for r in told["results"] if r["kit"] == kit and r["corner"] == axle}
    left, right = of["outer"], of["inner"]  # in a straight stop the left one is called outer
    return 0.5 * (right["toe_change_deg"] - left["toe_change_deg"]
                  + worth * (left["camber_change_deg"] - right["camber_change_deg"]))


def stiffness(m, inertia, a, b, speed, car):
    """Of the axles with what their bushes give: natural frequency and damping of the single track say what they are."""
    omega = 2 * math.pi * car["natural_Hz"]

    def gap(k):
        f, r = k * 1e5
        trace = (f + r) / (m * speed) + (a * a * f + b * b * r) / (inertia * speed)
        det = f * r * (a + b) ** 2 / (m * inertia * speed ** 2) - (a * f - b * r) / inertia
        return [trace / (2 * car["damping_ratio"] * omega) - 1, det / omega ** 2 - 1]

    return fsolve(gap, [1.0, 1.5]) * 1e5


def drift(case, car, front, rear):
    """Sideways at the end of the stop [m] and the greatest yaw rate [deg/s], steers in degrees."""
    v, deg = case["vehicle"], math.pi / 180
    m, base, speed = v["mass_kg"], v["wheelbase_mm"] / 1e3, car["speed_km_h"] / 3.6
    a = (1 - v["front_mass_fraction"]) * base
    b = base - a
    inertia = v.get("yaw_inertia_kgm2", m * a * b)
    cf, cr = stiffness(m, inertia, a, b, speed, car)

    def slope(t, y):
        side, yaw, heading, _ = y
        u = speed - STOP * G * t
        at_front, at_rear = cf * (front * deg - (side + a * yaw) / u), cr * (rear * deg - (side - b * yaw) / u)
        return [(at_front + at_rear) / m - u * yaw, (a * at_front - b * at_rear) / inertia, yaw,
                u * math.sin(heading) + side * math.cos(heading)]

    end = (speed - SLOWEST) / (STOP * G)
    way = solve_ivp(slope, (0, end), [0, 0, 0, 0], method="Radau", rtol=1e-9, atol=1e-12)
    return way.y[3][-1], max(way.y[1] / deg, key=abs)


def against_march(case, told, braking, cars):
    """Of each kit: the steer from what deflect tells of both wheels, the drift from that steer."""
    for kit in SIDES:
        own = braking[kit]["brakes_alike"]
        for axle in ("front", "rear"):
            want, got = steer(told, case, kit, axle), own[f"{axle}_steer_deg"]
            check(f"{kit}: steer of the {axle} axle", abs(got - want) < 1e-6, f"{got:.8f} {want:.8f}")
        side, yaw = drift(case, cars[kit], own["front_steer_deg"], own["rear_steer_deg"])
        for key, want in (("sideways_m", side), ("yaw_rate_deg_per_s", yaw)):
            check(f"{kit}: {key}", abs(own[key] - want) < 2e-4 * abs(want), f"{own[key]:.6f} {want:.6f}")
            record("computed", "solver", "single-track model marched by SciPy's solve_ivp", f"{kit} side alone, {key}",
                   want, own[key], 2e-4 * abs(want))
        check(f"{kit}: that is told", abs(own["sideways_m"]) > LEAST)


def mirrored(braking):
    left, right, none = (braking[k]["brakes_alike"] for k in ("left", "right", "rubber"))
    for key in ("front_steer_deg", "rear_steer_deg"):
        check(f"mirrored kits, {key}", abs(left[key] + right[key]) < 1e-6 * abs(left[key]) and abs(left[key]) > 1e-3)
    for key in ("front_steer_deg", "rear_steer_deg", "yaw_rate_deg_per_s", "sideways_m"):
        # The answer of tyres and bushes is that of the left wheel for both sides: drifts agree in their side alone.
        check(f"mirrored kits pull to opposite sides, {key}", left[key] * right[key] < 0)
        check(f"a kit alike on both sides, {key}", abs(none[key]) < 1e-9)


def in_text(program, path, braking):
    text = " ".join(said(program, "compare", path, "--detail", "--quiet").split())
    for kit in SIDES:
        own = braking[kit]["brakes_alike"]
        way = "left" if own["sideways_m"] > 0 else "right"
        check(f"{kit}: warned in the text", f"it pulls {abs(own['sideways_m']):.2f} m to the {way} in a 0.5 g stop from "
              "100 km/h, brakes alike, steering held" in text)
        row = " ".join(f"{own[k]:+.{n}f}" for k, n in (("front_steer_deg", 3), ("rear_steer_deg", 3),
                                                       ("yaw_rate_deg_per_s", 2), ("sideways_m", 2)))
        table = text.split("Side drift: brakes alike")[1].split("Side drift:")[0]
        check(f"{kit}: row of the table", f"{kit} {row}" in table, row)
    check("of the kit alike on both sides nothing", "unlike: it pulls" not in text.split("left (left):")[0])


def in_csv(program, path, braking):
    rows = {r["kit"]: r for r in csv.DictReader(io.StringIO(said(program, "compare", path, "--format", "csv", "--quiet")))}
    for kit in SIDES:
        for key in ("front_steer_deg", "rear_steer_deg", "yaw_rate_deg_per_s", "sideways_m"):
            check(f"{kit}: CSV, {key}", math.isclose(float(rows[kit]["alike_" + key]), braking[kit]["brakes_alike"][key],
                                                     rel_tol=1e-9))


def on_page(program, path, braking):
    with tempfile.TemporaryDirectory() as folder:
        said(program, "report", path, "-o", folder, "--quiet")
        page = (Path(folder) / "report.html").read_text(encoding="utf-8")
    cards = re.findall(r'<article class="card.*?</article>', page, re.S)
    check("a card a kit", len(cards) == 1 + len(SIDES))
    check("no alarm on the card of the kit alike on both sides", "Pulls to" not in cards[0])
    plain = re.sub(r"<[^>]*>", "", page).replace("\u00a0", " ")
    for kit, card in zip(SIDES, cards[1:]):
        own = braking[kit]["brakes_alike"]["sideways_m"]
        way = "left" if own > 0 else "right"
        check(f"{kit}: on its card", f"Pulls to the {way} on the brakes" in card)
        check(f"{kit}: in the sentences", f"and it pulls to one side: {abs(own):.1f} m to the {way} in a 0.5 g stop from 100 km/h"
              in plain)


def main():
    program, case = sys.argv[1], spec()
    with tempfile.TemporaryDirectory() as folder:
        path = str(Path(folder) / "case.json")
        Path(path).write_text(json.dumps(case))
        told = json.loads(said(program, "deflect", path, "--format", "json", "--quiet"))
        study = json.loads(said(program, "compare", path, "--format", "json", "--quiet"))["handling"]
        braking, cars = ({h["kit"]: of(h) for h in study} for of in (lambda h: h["braking"], lambda h: h["balance"]["car"]))
        against_march(case, told, braking, cars)
        mirrored(braking)
        in_text(program, path, braking)
        in_csv(program, path, braking)
        on_page(program, path, braking)
    print(f"{len(FAILED)} comparisons failed")
    return 1 if FAILED else 0


if __name__ == "__main__":
    sys.exit(main())
