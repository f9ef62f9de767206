# SPDX-License-Identifier: MIT
"""First cases of every pair of layouts, and of every option at its ends, against what is typical (used only for tests).

    start.py GIVEWAY_BINARY [--all | --by-hand]

The bands are those of the trade (common practice; pushes also by measurements in print, published.md of the design):
toe and camber over +-50 mm of travel, roll centre and anti-dive or anti-lift at ride height, toe and camber by a push
of 1 kN towards the middle, the wheel centre's way back by 1 kN of braking, and the body's frequency. Arms that trail have
what their lengths and pivots at the height of the wheel centre make of anti-lift: of a car with braking at an end of its
range it is the slope of the contact's path that is typical. Anti-squat: independent -40 to 45 %, of a live axle, whose tube
takes the torque of the drive, 40 to 140 %.
"""
import itertools
import json
import math
import subprocess
import sys
import tempfile
from pathlib import Path

FRONT = ["strut", "double_wishbone", "five_link"]
REAR = FRONT + ["semi_trailing", "trailing_arm", "twist_beam", "live_axle"]
OPTIONS = {"--mass-kg": (600, 3500), "--front-mass-fraction": (0.35, 0.65), "--wheelbase-mm": (1900, 3600),
           "--front-track-mm": (1200, 1800), "--rear-track-mm": (1200, 1800), "--wheel-radius-mm": (250, 400),
           "--cg-height-mm": (350, 850), "--brake-front-fraction": (0.5, 0.85)}
# per layout: toe in travel, camber, roll centre, anti-dive or anti-lift, toe per kN, camber per kN; front, rear
LINKS = {"toe": (0, 0.4), "camber": ((-2.4, -0.4),) * 2, "roll_centre": ((0, 150), (10, 200)), "anti": ((-10, 60), (-10, 120)),
         "toe_kN": ((-0.12, 0.03), (-0.12, 0.15)), "camber_kN": ((0.02, 0.45), (0.02, 0.8))}
TYPICAL = {"strut": LINKS | {"camber": ((-1.6, -0.2), (-1.8, -0.2))}, "double_wishbone": LINKS, "five_link": LINKS,
           "semi_trailing": {"toe": (0, 0.8), "camber": (None, (-2.8, -0.5)), "roll_centre": (None, (20, 250)),
                             "anti": (None, (0, 160)), "slope": (None, (-44, -22)), "toe_kN": (None, (-0.25, 0.15)), "camber_kN": (None, (0.02, 1))},
           "trailing_arm": {"toe": (0, 0.25), "camber": (None, (-0.4, 0.4)), "roll_centre": (None, (-40, 60)),
                            "anti": (None, (20, 160)), "slope": (None, (-44, -22)), "toe_kN": (None, (-0.35, 0.15)), "camber_kN": (None, (0.02, 1))},
           "twist_beam": {"toe": (0, 0.25), "camber": (None, (-0.4, 0.4)), "roll_centre": (None, (40, 280)),
                          "anti": (None, (20, 160)), "slope": (None, (-44, -22)), "toe_kN": (None, (-0.45, 0.15)), "camber_kN": (None, (-0.2, 1))},
           "live_axle": {"toe": (0, 0.1), "camber": (None, (-0.25, 0.25)), "roll_centre": (None, (150, 420)),
                         "anti": (None, (-10, 160)), "toe_kN": (None, (-0.12, 0.12)), "camber_kN": (None, (-0.1, 0.3))}}
WORST = {}


def run(binary, *arguments):
    done = subprocess.run([binary, *arguments], capture_output=True, text=True)
    if done.returncode != 0:
        raise SystemExit(f"not ok - giveway {' '.join(arguments)}: {done.returncode}: {done.stderr[:400]}")
    return done.stdout


def pushed(case):
    """The case with one push sideways and one backwards on each corner in place of its loads."""
    case = dict(case)
    case["loads"] = [{"name": f"{corner} {name}", "corner": corner, "patch_force_N": force} for corner in case["corners"]
                     for name, force in (("side", [0, -1000, None]), ("back", [-1000, 0, None]))]
    for load in case["loads"]:  # both wheels pushed the same way over the car
        if load["corner"] in case.get("axles", {}) and load["name"].endswith("side"):
            load["other_wheel"] = "opposite"
    case["kits"] = case["kits"][:1]
    return case


def body_hz(case, corner, wheel_rate):
    v, w = case["vehicle"], case["corners"][corner]["wheel"]
    share = v["front_mass_fraction"] if corner == "front" else 1 - v["front_mass_fraction"]
    body = v["mass_kg"] * share / 2 - w["mass_kg"]
    k = 1 / (1 / wheel_rate + 1 / w["tyre_vertical_N_per_mm"])
    return math.sqrt(k * 1000 / body) / (2 * math.pi)


def figures(binary, folder, words):
    text = run(binary, "start", *words)
    case = json.loads(text)
    path, push = Path(folder) / "case.json", Path(folder) / "push.json"
    path.write_text(text)
    push.write_text(json.dumps(pushed(case)))
    found = {}
    travel = json.loads(run(binary, "travel", str(push), "--from-mm=-50", "--to-mm=50", "--step-mm=50", "--format", "json"))
    for r in travel["results"]:
        if r.get("load") not in (None, ""):
            continue
        low, mid, high = r["points"]
        rest = r["ride_height"]
        anti = rest.get("anti_dive_percent", rest.get("anti_lift_braking_percent"))
        if r.get("side") == "right":
            continue
        found[r["corner"]] = {"toe": max(abs(low["toe_change_deg"]), abs(high["toe_change_deg"])),
                              "camber": (high["camber_change_deg"] - low["camber_change_deg"]) / 2,
                              "roll_centre": rest["roll_centre_mm"], "anti": anti,
                              "slope": rest["brake_angle_deg"], "squat": rest.get("anti_squat_percent"),
                              "rates": (mid["wheel_rate_N_per_mm"], rest["wheel_rate_rolling_N_per_mm"]),
                              "pitch": math.radians(high["caster_change_deg"] - low["caster_change_deg"]) / 0.1,
                              "load": rest["vertical_load_N"], "radius": case["corners"][r["corner"]]["wheel"]["loaded_radius_mm"],
                              "hz": body_hz(case, r["corner"], rest["wheel_rate_rolling_N_per_mm"])}
    for corner in case.get("axles", {}):
        roll = json.loads(run(binary, "travel", str(push), "--corner", corner, "--wheels", "opposite", "--from-mm=-10", "--to-mm=10",
                              "--step-mm=10", "--format", "json"))["results"]
        centres = [r["roll_centre_mm"] for r in roll]
        found[corner]["roll_centre"] = sum(centres) / len(centres)
    for r in json.loads(run(binary, "deflect", str(push), "--format", "json"))["results"]:
        if r.get("side") == "right":
            continue
        if r["load"].endswith("side"):
            found[r["corner"]]["toe_kN"], found[r["corner"]]["camber_kN"] = r["toe_change_deg"], r["camber_change_deg"]
        else:
            found[r["corner"]]["back"] = -r["wheel_centre_mm"][0]
    return found


def outside(found, layouts, options):
    """What is not typical."""
    for i, corner in enumerate(("front", "rear")):
        bands = {k: v if k == "toe" else v[i] for k, v in TYPICAL[layouts[i]].items()} | {"hz": (1.0, 1.8), "back": (0.1, 8)}
        if not options:
            bands["hz"] = (1.3, 1.4)  # 1.35 Hz is what its springs are made for
            if i == 1 and layouts[i] in FRONT:
                bands["anti"] = (10, 60)  # links behind that are level in side view would let the tail rise under braking
        elif "slope" in bands:
            del bands["anti"]
        if found[corner]["squat"] is not None and ("rear" in options or "all" in options):
            bands["squat"] = (40, 140) if layouts[i] == "live_axle" else (-40, 45)
        for key, (low, high) in bands.items():
            value = found[corner][key]
            room = min(value - low, high - value) / (high - low)
            if room < WORST.get((layouts[i], corner, key), (9,))[0]:
                WORST[layouts[i], corner, key] = (room, value)
            if not low <= value <= high:
                yield f"{corner} {layouts[i]}: {key} {value:.4g}, typical {low} to {high}"


def tyre_rate(found):
    """The contact below the centre of a wheel that pitches by k a metre carries N r k^2 more than a point of the upright
    (virtual work on a rigid arm; rubber gives a twentieth of it back)."""
    for corner, f in found.items():
        more = f["load"] * f["radius"] / 1000 * f["pitch"] ** 2 / 1000
        if not abs(f["rates"][1] - f["rates"][0] - more) <= 0.05 * more + 0.03:
            yield f"{corner}: wheel rates {f['rates']}, on a tyre {more:.3f} N/mm more"


def squat_by_lines(binary, folder):
    """A live axle with ball joints for bushes: its links' lines in side view meet where it turns; the slope from the contact
    to there over that of the load transfer is its anti-squat (Gillespie 1992, chapter 7, from memory)."""
    case = json.loads(run(binary, "start", "--front", "strut", "--rear", "live_axle", "--driven", "rear", "--rear-bar-mm", "0"))
    for joint in case["corners"]["rear"]["joints"] + case["axles"]["rear"]["joints"]:
        if joint["name"] != "hub":
            joint["bush"] = "ball_joint"
    case["kits"] = case["kits"][:1]
    path = Path(folder) / "lines.json"
    path.write_text(json.dumps(case))
    sides = json.loads(run(binary, "travel", str(path), "--corner", "rear", "--from-mm=-1", "--to-mm=1", "--step-mm=1",
                           "--format", "json"))["results"]
    found = sum(side["ride_height"]["anti_squat_percent"] for side in sides) / 2  # the rod's arc yaws the axle
    p, v = case["corners"]["rear"]["points_mm"], case["vehicle"]
    (a, b), (c, d) = ((p[f"{link}_rear"], p[f"{link}_front"]) for link in ("lower", "upper"))
    low, high = ((q[2] - o[2]) / (q[0] - o[0]) for o, q in ((a, b), (c, d)))
    x = (c[2] - high * c[0] - a[2] + low * a[0]) / (low - high)
    want = 100 * (a[2] + low * (x - a[0])) / x * v["wheelbase_mm"] / v["cg_height_mm"]
    if not (len(sides) == 2 and abs(found - want) <= 0.2):
        yield f"live_axle: anti-squat {found}, by the lines of its links {want:.2f}"


def overloaded(binary, path):
    """Rubber as fitted stands the loads of a first case, or the tool would warn of a car that runs."""
    kit = json.loads(run(binary, "compare", str(path), "--kit", "rubber", "--format", "json", "--quiet"))["summary"][0]
    nearest = kit["limits"]["nearest"]
    if nearest["part_of_limit"] > 1 or kit["limits"]["judged"] < 10:
        yield f"rubber: {nearest['label']} at {nearest['part_of_limit']:.2f} of its limit, {kit['limits']['judged']} judged"


def doubted(binary, path):
    """A first case is usual in all that `check` knows to be usual."""
    done = subprocess.run([binary, "check", str(path)], text=True, capture_output=True, check=True)
    if "warning" in done.stdout + done.stderr:
        yield (done.stderr or done.stdout).splitlines()[0]


def by_hand(binary):
    """What follows from the places of a first case with a pencil."""
    with tempfile.TemporaryDirectory() as folder:
        wrong = list(squat_by_lines(binary, folder))
        for rear in REAR:
            wrong += [f"{rear}: {w}" for w in tyre_rate(figures(binary, folder, ["--front", "strut", "--rear", rear]))]
    for line in wrong:
        print(f"not ok - {line}")
    if not wrong:
        print("ok - anti-squat of a live axle, and what a contact below a pitching wheel adds to its rate")
    sys.exit(bool(wrong))


def main():
    binary, every = sys.argv[1], "--all" in sys.argv
    if "--by-hand" in sys.argv:
        return by_hand(binary)
    trials = [(f, r, []) for f, r in itertools.product(FRONT, REAR)]
    for n, (option, ends) in enumerate(OPTIONS.items()):
        for end in ends:
            for r in range(7) if every else [n % 7, (n + 3) % 7]:
                trials.append((FRONT[r % 3], REAR[r], [option, str(end)]))
    trials += [("strut", "semi_trailing", ["--mass-kg", "600", "--front-mass-fraction", "0.65", "--cg-height-mm", "850"]),
               ("double_wishbone", "trailing_arm", ["--brake-front-fraction", "0.5", "--wheelbase-mm", "3600",
                                                    "--cg-height-mm", "350", "--wheel-radius-mm", "400"]),
               ("five_link", "trailing_arm", ["--brake-front-fraction", "0.85", "--wheelbase-mm", "1900",
                                              "--cg-height-mm", "850", "--wheel-radius-mm", "250"]),
               ("five_link", "five_link", ["--mass-kg", "3500", "--wheelbase-mm", "3600", "--cg-height-mm", "350"])]
    # rack ahead or behind, on the body or on a subframe; bars thin and thick
    for n, (front, frame, rack, bars) in enumerate(itertools.product(
            FRONT, ("none", "both"), ("ahead", "behind", "none"), ((0, 0), (12, 18), (22, 12)))):
        if every or n % 7 == 0:
            rear = ("strut", "double_wishbone", "five_link", "semi_trailing", "trailing_arm")[n % 5]
            trials.append((front, rear, ["--subframe", frame, "--rack", rack, "--front-bar-mm", str(bars[0]),
                                         "--rear-bar-mm", str(bars[1])]))
    trials.append(("strut", "live_axle", ["--subframe", "front", "--rear-bar-mm", "18"]))
    trials += [(FRONT[n % 3], rear, ["--driven", driven]) for n, rear in enumerate(REAR) for driven in ("rear", "all")]
    wrong = []
    with tempfile.TemporaryDirectory() as folder:
        for front, rear, options in trials:
            words = ["--front", front, "--rear", rear, *options]
            found = figures(binary, folder, words)
            wrong += [f"{' '.join(words)}: {w}" for w in outside(found, (front, rear), options)]
            if not options:
                wrong += [f"{' '.join(words)}: {w}" for look in (overloaded, doubted) for w in look(binary, Path(folder) / "case.json")]
        path = Path(folder) / "whole.json"
        for rear in REAR:
            path.write_text(run(binary, "start", "--front", FRONT[REAR.index(rear) % 3], "--rear", rear))
            for verb in ("check", "compare", "ride", "travel", "align", "rates", "deflect"):
                run(binary, verb, str(path), "--quiet")
            run(binary, "choose", str(path), "--quiet", "--draws", "100", "--corner", "rear")
            run(binary, "spread", str(path), "--quiet", "--draws", "100")
            run(binary, "report", str(path), "--quiet", "--out", str(Path(folder) / f"report-{rear}"))
            run(binary, "match", str(path), "--quiet", "--sheet", str(Path(folder) / f"{rear}.csv"))
    for line in wrong:
        print(f"not ok - {line}")
    for key, (room, value) in sorted(WORST.items(), key=lambda kv: kv[1][0])[:5] if every else []:
        print("# nearest to its band:", *key, f"{value:.4g}, {100 * room:.0f} % of the band left")
    if not wrong:
        print(f"ok - {len(trials)} first cases are typical of their layouts, and every command runs on them")
    sys.exit(bool(wrong))


if __name__ == "__main__":
    main()
