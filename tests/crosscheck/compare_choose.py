# SPDX-License-Identifier: MIT
"""Brute force against `choose` (used only for tests).

    compare_choose.py GIVEWAY_BINARY CASE.json [road]

Puts a `choose` into the case, works out every combination with the second readings of corner (or with `road` of the
whole car) and ride, written apart from the program, and finds costs, the front, its steps, the recommendations with
their order, single changes and limits from their definitions, pair by pair. Compares all of it with JSON, then text
and CSV with JSON. Angles to 1e-6 degree, decibels to 1e-3, sums of money to a hundredth of a cent.
"""
import csv
import io
import itertools
import json
import math
import os
import re
import subprocess
import sys
import tempfile

for _v in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
    os.environ.setdefault(_v, "1")
sys.dont_write_bytecode = True

import compare_corner as cc  # noqa: E402
from reference import car_study  # noqa: E402
from reference.case import kit_fits, read  # noqa: E402
from reference.study import Study  # noqa: E402
from ride_reference import Model  # noqa: E402

ANGLE, DECIBEL, MONEY = 1e-6, 1e-3, 1e-4
LIMITS = ("price", "fit_minutes", "cost", "harshness_dB", "road_noise_dB")
bad = 0


def verdict(what, wrong):
    """One line of the result."""
    global bad
    wrong = list(wrong)
    print(("not ok - " if wrong else "ok - ") + what)
    bad += bool(wrong)
    for line in wrong[:8]:
        print(f"#   {line}")


def without_friction(case):
    """Nothing rubs, so that ride is linear and takes one solution a kit; friction has its own check (ride.sh)."""
    for bush in case["bushes"].values():
        if "breakaway_Nm" in bush:
            bush["breakaway_Nm"] = 0
        if bush["type"] in ("unbonded", "bearing"):
            bush["friction_coefficient"] = 0
    for corner in case["corners"].values():
        corner["damper"].pop("friction_N", None)
    case["ride"]["amplitude_mm"] = 0.1
    return case


def case_with_choose(path, road):
    """The case on trial: 24 combinations of the car, or 4 of it on the road."""
    case = without_friction(read(path))
    case["vehicle"].pop("load_transfer", None)
    if not road:
        case["vehicle"]["load_transfer"] = "rule"
    case.pop("uncertain", None)
    case["uncertain"] = []
    among = [{"joints": ["front.arm_front"], "bushes": ["arm_front_rubber", "arm_front_poly"]},
             {"joints": ["rear.toe_inner"], "bushes": ["toe_poly", "toe_rubber"]},
             {"joints": ["front.rack_left", "front.rack_right"], "bushes": ["rack_rubber", "rack_poly", "rack_solid"]},
             {"joints": ["rear.trailing_front"], "bushes": ["trailing_poly", "trailing_bearing"]}]
    goals = [{"load": "pure braking", "figure": "toe_change_deg"},
             {"load": "roundabout", "figure": "toe_change_deg", "weight": 2.5, "wanted": -0.05},
             {"load": "trail braking", "figure": "camber_to_road_deg", "corner": "rear", "wheel": "outer", "wanted": 1.1}]
    case["choose"] = {"among": among, "goals": goals,
                      "limits": {"price": 240, "fit_minutes": 400, "harshness_dB": 2.0, "road_noise_dB": 13},
                      "hourly_rate": 77, "tell_apart": {"unsteadiness": 0.002, "harshness_dB": 0.1}}
    case["jobs"] = [{"label": "rack down and up", "joints": ["front.rack_left", "front.rack_right"], "fit_minutes": 45, "price": 3},
                    {"label": "rear wheel off", "joints": ["rear.toe_inner", "rear.trailing_front"], "fit_minutes": 12}]
    if road:
        case["choose"]["among"] = [among[0], {"joints": ["rear.toe_inner"], "bushes": ["toe_rubber", "toe_poly"]}]
        case["choose"]["goals"] = [{"load": "roundabout", "figure": "toe_change_deg"}]
        case["choose"]["limits"] = {}
    if road:  # the second reading of the whole car does not settle in every kit at more
        next(ld for ld in case["loads"] if ld["name"] == "roundabout")["lateral_g"] = 0.3
    case["loads"] = [ld for ld in case["loads"] if ld["name"] in {g["load"] for g in case["choose"]["goals"]}]
    return case


class Brute:
    """Every combination, each for itself."""

    def __init__(self, case, rates, road):
        self.case, self.rates, self.road = case, rates, road
        self.choose = case["choose"]
        self.among = self.choose["among"]
        self.first = kit_fits(case, case["kits"][0]["name"])
        self.known, self.rides = {}, {}

    def fits(self, options):
        """Joint and bush of a combination; None: as in the first kit."""
        out = dict(self.first)
        for choice, option in zip(self.among, options):
            for joint in choice["joints"] if option is not None else []:
                out[joint] = choice["bushes"][option]
        return out

    def of_axle(self, fits, axle):
        """What a result of that axle can depend on; on the road the whole car."""
        return json.dumps({j: b for j, b in sorted(fits.items()) if self.road or j.startswith(axle + ".")})

    def results(self, fits, axle):
        """Results of `deflect` on one axle, by load and wheel."""
        key = axle, self.of_axle(fits, axle)
        if key not in self.known:
            kit = {"name": "trial", "fits": fits}
            case = dict(self.case, kits=[self.case["kits"][0], kit])
            if self.road:
                found = list(car_study.deflect(case, self.rates, ["trial"]))
            else:
                study, found = Study(case, self.rates), []
                for load in case["loads"]:
                    if load.get("corner", axle) == axle:
                        found.append(dict(study._one(study.fitted(axle, "trial"), load), load=load["name"], corner=axle))
            self.known[key] = {(r["load"], r["corner"], r.get("wheel", "left")): r for r in found}
        return self.known[key]

    def ride(self, fits, axle):
        """Decibels over the first kit."""
        key = axle, json.dumps({j: b for j, b in sorted(fits.items()) if j.startswith(axle + ".")})
        if key not in self.rides:
            case = dict(self.case, kits=[{"name": "trial", "fits": fits}])
            self.rides[key] = Model(case, "trial", axle, self.rates).figures()
        base = Model(self.case, self.case["kits"][0]["name"], axle, self.rates).figures() if axle not in self.rides else self.rides[axle]
        self.rides[axle] = base
        return [20 * math.log10(self.rides[key][k] / base[k]) for k in ("harshness_N", "road_noise_N")]

    def figures(self, fits):
        """(load, corner, wheel, figure, value, weight, wanted) of every goal."""
        out = []
        for goal in self.choose["goals"]:
            for axle in ("front", "rear"):
                if goal.get("corner", axle) != axle:
                    continue
                for (load, corner, wheel), r in sorted(self.results(fits, axle).items()):
                    if load == goal["load"] and corner == axle and goal.get("wheel", wheel) == wheel:
                        out.append((load, corner, wheel, goal["figure"], r[goal["figure"]], goal.get("weight", 1),
                                    goal.get("wanted", 0)))
        return out

    def cost(self, fits):
        """Price and minutes of what differs from the first kit."""
        price = minutes = 0
        changed = {j for j in fits if fits[j] != self.first.get(j)}
        for joint in changed:
            bush, one = self.case["bushes"][fits[joint]], joint.startswith("front.rack")   # left and right in one corner
            price += bush["price"] * (1 if one else 2)
            minutes += bush["fit_minutes"] * (1 if one else 2)
        for job in self.case["jobs"]:
            if changed & set(job["joints"]):
                price += job.get("price", 0)
                minutes += job.get("fit_minutes", 0)
        return price, minutes

    def unsteadiness(self, fits):
        """Root of the weighted mean square."""
        f = self.figures(fits)
        return math.sqrt(sum(w * (v - x) ** 2 for *_, v, w, x in f) / sum(w for *_, w, _ in f))

    def combination(self, options):
        """Everything of one combination."""
        fits = self.fits(options)
        price, minutes = self.cost(fits)
        rides = [self.ride(fits, axle) for axle in ("front", "rear")]
        on_offer = [j for c in self.among for j in c["joints"]]
        return {"options": options, "fits": {j: fits[j] for j in on_offer}, "figures": self.figures(fits),
                "unsteadiness": self.unsteadiness(fits), "harshness_dB": max(r[0] for r in rides),
                "road_noise_dB": max(r[1] for r in rides), "price": price, "fit_minutes": minutes,
                "cost": price + self.choose["hourly_rate"] * minutes / 60}

    def own(self, name):
        """A kit of the case."""
        fits = dict(self.first, **kit_fits(self.case, name))
        price, minutes = self.cost(fits)
        rides = [self.ride(fits, axle) for axle in ("front", "rear")]
        return {"unsteadiness": self.unsteadiness(fits), "harshness_dB": max(r[0] for r in rides),
                "road_noise_dB": max(r[1] for r in rides), "price": price, "fit_minutes": minutes,
                "cost": price + self.choose["hourly_rate"] * minutes / 60}

    def within(self, m):
        """Inside all limits."""
        return all(m[k] <= limit + 1e-6 for k, limit in self.choose["limits"].items())

    def steps(self, m):
        """Unsteadiness and harshness as a person tells them apart."""
        t = self.choose["tell_apart"]
        return round(m["unsteadiness"] / t["unsteadiness"]), round(m["harshness_dB"] / t["harshness_dB"])

    def front(self, members):
        """By the definition, pair by pair."""
        out = []
        for i, a in enumerate(members):
            for j, b in enumerate(members):
                (ua, ha), (ub, hb) = self.steps(a), self.steps(b)
                if i == j or ub > ua or hb > ha or b["cost"] > a["cost"] + 0.005:
                    continue
                equal = (ua, ha) == (ub, hb) and abs(a["cost"] - b["cost"]) <= 0.005
                by = a["unsteadiness"] - b["unsteadiness"]
                if not equal or by > 1e-6 or (abs(by) <= 1e-6 and j < i):
                    break
            else:
                out.append(a)
        for a in out:
            a["step"] = not any(b is not a and b["cost"] <= a["cost"] + 0.005 and self.steps(b)[0] <= self.steps(a)[0] for b in out)
        return sorted(out, key=lambda m: m["cost"])

    def order(self, goal):
        """From the first kit, always what leaves least."""
        now, out = [None] * len(self.among), []
        todo = [i for i, c in enumerate(self.among) if any(goal["fits"][j] != self.first[j] for j in c["joints"])]
        while todo:
            best = min(todo, key=lambda i: self.unsteadiness(self.fits([goal["options"][i] if k == i else o for k, o in enumerate(now)])))
            now[best] = goal["options"][best]
            todo.remove(best)
            out.append((self.among[best]["joints"], self.among[best]["bushes"][now[best]], self.unsteadiness(self.fits(now))))
        return out


def near(a, b, key):
    """Within what two programs may differ by."""
    return abs(a - b) <= (DECIBEL if key.endswith("_dB") else MONEY if key in LIMITS else ANGLE)


def same_sums(got, want, where):
    """The six figures of a combination."""
    for key in ("unsteadiness", *LIMITS):
        if not near(got[key], want[key], key):
            yield f"{where}: {key} {got[key]} for {want[key]}"


def same_member(got, want, where):
    """All of a combination."""
    if got["fits"] != want["fits"]:
        yield f"{where}: fits {got['fits']} for {want['fits']}"
    yield from same_sums(got, want, where)
    found = [(f["load"], f["corner"], f["wheel"], f["figure"]) for f in got["figures"]]
    if sorted(found) != sorted(f[:4] for f in want["figures"]):
        yield f"{where}: figures {found}"
        return
    values = {f[:4]: f[4] for f in want["figures"]}
    for f in got["figures"]:
        v = values[f["load"], f["corner"], f["wheel"], f["figure"]]
        if not near(f["value"], v, "_deg"):
            yield f"{where}: {f} for {v}"


def check_recommended(brute, found, now, front):
    """value, quiet, steady by their rules."""
    if not front or now["unsteadiness"] - min(m["unsteadiness"] for m in front) <= 1e-6:
        verdict("nothing is recommended", [] if found is None else ["something is"])
        return
    steady = min(front, key=lambda m: (m["unsteadiness"], m["cost"]))
    best = now["unsteadiness"] - steady["unsteadiness"]
    gain = lambda m: now["unsteadiness"] - m["unsteadiness"]  # noqa: E731
    quiet = min((m for m in front if gain(m) >= best * 2 / 3 - 1e-9), key=lambda m: (brute.steps(m)[1], m["cost"], m["unsteadiness"]))
    value = max(front, key=lambda m: (gain(m) / best - m["cost"] / steady["cost"], -m["cost"]))
    for name, want in (("value", value), ("quiet", quiet), ("steady", steady)):
        got = found[name]
        wrong = list(same_member(got, want, name))
        if not near(got["gain"], gain(want), "_deg") or got["step"] != want["step"]:
            wrong.append(f"gain {got['gain']} for {gain(want)}")
        order = brute.order(want)
        if [(o["joints"], o["bush"]) for o in got["order"]] != [o[:2] for o in order]:
            wrong.append(f"order {got['order']} for {order}")
        wrong += [f"{o}" for o, w in zip(got["order"], order) if not near(o["unsteadiness"], w[2], "_deg")]
        verdict(f"{name}: what it is, its gain and the order of fitting", wrong)


def check_swaps(brute, found, now):
    """Every single change."""
    want = []
    for i, choice in enumerate(brute.among):
        for b, bush in enumerate(choice["bushes"]):
            if all(brute.first[j] == bush for j in choice["joints"]):
                continue
            m = brute.combination([b if k == i else None for k in range(len(brute.among))])
            want.append((choice["joints"], bush, now["unsteadiness"] - m["unsteadiness"], brute.within(m), m))
    want.sort(key=lambda s: -s[2])
    wrong = []
    if [(s["joints"], s["bush"]) for s in found] != [w[:2] for w in want]:
        wrong.append(f"{[(s['joints'], s['bush']) for s in found]} for {[w[:2] for w in want]}")
    for s, w in zip(found, want):
        wrong += same_sums(s, w[4], w[1])
        if not near(s["gain"], w[2], "_deg") or s["within_limits"] != w[3]:
            wrong.append(f"{w[1]}: gain {s['gain']} for {w[2]}")
    verdict(f"{len(want)} single changes, the greatest gain first", wrong)


def check_json(brute, found):
    """All of it against brute force."""
    every = [brute.combination(list(o)) for o in itertools.product(*(range(len(c["bushes"])) for c in brute.among))]
    inside = [m for m in every if brute.within(m)]
    front = brute.front(inside)
    now = brute.combination([None] * len(brute.among))
    counts = (found["combinations"], found["within_limits"], found["failed"])
    verdict(f"{len(every)} combinations, {len(inside)} within the limits", [] if counts == (len(every), len(inside), 0) else [str(counts)])
    verdict("what is fitted now", same_member(found["now"], now, "now"))
    wrong = [] if len(found["front"]) == len(front) else [f"{len(found['front'])} members for {len(front)}"]
    for i, (got, want) in enumerate(zip(found["front"], front)):
        wrong += same_member(got, want, f"member {i}")
        if got["step"] != want["step"]:
            wrong.append(f"member {i}: step {got['step']}")
    verdict(f"a front of {len(front)}, {sum(m['step'] for m in front)} of them steps", wrong)
    check_recommended(brute, found["recommended"], now, front)
    check_swaps(brute, found["swaps"], now)
    wrong = [] if [k["kit"] for k in found["kits"]] == [k["name"] for k in brute.case["kits"][1:]] else ["other kits"]
    for k in found["kits"]:
        wrong += same_sums(k, brute.own(k["kit"]), k["kit"])
    verdict("the case's own kits among them", wrong)
    least = {k: min(m[k] for m in every) for k in LIMITS}
    verdict("the least of every limit", [f"{k}: {found['least'][k]} for {v}" for k, v in least.items() if not near(found["least"][k], v, k)])
    wrong = []
    for k in brute.choose["limits"]:
        free = [m for m in every if all(m[q] <= x + 1e-6 for q, x in brute.choose["limits"].items() if q != k)]
        want = min(m["unsteadiness"] for m in free)
        if not near(found["without_limit"][k], want, "_deg"):
            wrong.append(f"{k}: {found['without_limit'][k]} for {want}")
    verdict("the steadiest without each limit alone", wrong)


def numbers(line):
    """The figures of a line of a table."""
    return [float(x) for x in re.findall(r"(?<![\w.])[-+]?\d+\.?\d*(?![\w.])", line)]


def rounds_to(shown, value, places):
    """A figure as it is printed."""
    return abs(shown - value) <= 0.5000001 * 10 ** -places


def check_text(found, text):
    """The tables of the text against JSON, to the digits printed."""
    columns = (("unsteadiness", 3), ("gain", 3), ("harshness_dB", 1), ("road_noise_dB", 1), ("price", 2), ("fit_minutes", 0), ("cost", 2))
    lines, wrong = text.splitlines(), []
    now = found["now"]["unsteadiness"]
    rows = [("now", dict(found["now"], gain=0))] + [(n, m) for n, m in (found["recommended"] or {}).items()]
    rows += [(f"kit {k['kit']}", dict(k, gain=now - k["unsteadiness"])) for k in found["kits"]]
    for name, m in rows:
        line = next((ln for ln in lines if re.match(rf"  (\w+, )*{name}[ ,]", ln) and len(numbers(ln)) == 7), "")
        for x, (key, places) in zip(numbers(line), columns):
            if not rounds_to(x, m[key], places):
                wrong.append(f"{name}: {key} {x} for {m[key]}")
        if not line:
            wrong.append(f"no line of {name}")
    verdict("the table of recommendations in words", wrong)
    at = next(i for i, ln in enumerate(lines) if ln == "what more money buys")
    ladder = [ln for ln in lines[at:lines.index("the front")] if re.match(r" +\d+\.\d\d  ", ln)]
    steps = [m for m in found["front"] if m["step"]]
    wrong = [] if len(ladder) == len(steps) else [f"{len(ladder)} lines for {len(steps)} steps"]
    for line, m in zip(ladder, steps):
        if not all(rounds_to(x, v, p) for x, v, p in zip(numbers(line)[:3], (m["cost"], m["unsteadiness"], m["harshness_dB"]), (2, 3, 1))):
            wrong.append(line)
    verdict("the ladder in words", wrong)
    front = [ln for ln in lines[lines.index("the front"):] if len(numbers(ln)) == 7 and not re.search(r"front\.|rear\.", ln)]
    wrong = [] if len(front) == len(found["front"]) else [f"{len(front)} lines of the front"]
    for line, m in zip(front, found["front"]):
        values = dict(m, gain=now - m["unsteadiness"])
        wrong += [f"{key}: {line}" for x, (key, p) in zip(numbers(line), columns) if not rounds_to(x, values[key], p)]
    verdict("the whole front in words", wrong)
    order = [("gain", 3), ("harshness_dB", 1), ("road_noise_dB", 1), ("cost", 2)]
    swaps = [ln for ln in lines[lines.index("single changes of what is fitted"):] if len(numbers(ln)) == 4 and re.match("  (front|rear)", ln)]
    wrong = [] if len(swaps) == len(found["swaps"]) else [f"{len(swaps)} lines of single changes"]
    for line, s in zip(swaps, found["swaps"]):
        wrong += [f"{key}: {line}" for x, (key, p) in zip(numbers(line), order) if not rounds_to(x, s[key], p)]
        if s["bush"] not in line or s["joints"][0] not in line:
            wrong.append(line)
    verdict("single changes in words", wrong)


def check_csv(found, text):
    """Every field of CSV is the figure of that name in JSON."""
    rows, wrong = list(csv.DictReader(io.StringIO(text))), []
    if len(rows) != len(found["front"]):
        wrong.append(f"{len(rows)} rows")
    for row, m in zip(rows, found["front"]):
        wrong += [f"{k}: {row[k]} for {m[k]}" for k in ("unsteadiness", *LIMITS) if abs(float(row[k]) - m[k]) > 1e-12]
        wrong += [f"{j}: {row[j]} for {b}" for j, b in m["fits"].items() if row[j] != b]
        for f in m["figures"]:
            head = f"{f['load']}, {f['corner']}, {f['wheel']}: {f['figure']}"
            if abs(float(row[head]) - f["value"]) > 1e-12:
                wrong.append(f"{head}: {row[head]} for {f['value']}")
        if row["step"] != str(m["step"]).lower():
            wrong.append(f"step {row['step']}")
        for name, r in (found["recommended"] or {}).items():
            if (row[name] == "true") != (r["fits"] == m["fits"]):
                wrong.append(f"{name}: {row[name]}")
    verdict("CSV against JSON", wrong)


def check_charts(found, front, ladder):
    """What the charts tell a screen reader, which is taken from their marks: each named point, and the ladder's ends."""
    wrong, places = [], {"now": found["now"]}
    for name, r in found["recommended"].items():
        places.setdefault(name, r)
    for name, m in places.items():
        at = re.search(rf"[. ,]{name}(?:, \w+)*: (-?[\d.e-]+), (-?[\d.e-]+)\.", front)
        if not at or not near3(float(at[1]), m["harshness_dB"]) or not near3(float(at[2]), m["unsteadiness"]):
            wrong.append(f"{name}: {at and at.groups()} for {m['harshness_dB']}, {m['unsteadiness']}")
    shown = [(float(x), float(y)) for x, y in re.findall(r": (-?[\d.e-]+), (-?[\d.e-]+)\.", front)]
    for m in found["front"]:
        if not any(near3(x, m["harshness_dB"]) and near3(y, m["unsteadiness"]) for x, y in shown):
            wrong.append(f"no point at {m['harshness_dB']}, {m['unsteadiness']}: {shown}")
    rest = any(all(m["fits"] != r["fits"] for r in found["recommended"].values()) for m in found["front"])
    if rest != ("not recommended" in front):
        wrong.append("a word for the rest of the front")
    verdict("the chart of the front", wrong)
    steps = [m for m in found["front"] if m["step"]]
    at = re.search(r"from (\S+) at (\S+) to (\S+) at (\S+);", ladder)
    want = (steps[0]["unsteadiness"], steps[0]["cost"], steps[-1]["unsteadiness"], steps[-1]["cost"])
    ticks = re.findall(r"<text>(-?[\d.]+)</text>", ladder)
    wrong = [] if all(near3(float(a), b) for a, b in zip(at.groups(), want)) else [f"{at.groups()} for {want}"]
    wrong += [f"a tick at {t}" for t in ticks if t.startswith("-")] + ([] if "0" in ticks else [f"no tick at 0: {ticks}"])
    verdict("the chart of the ladder, whose money begins at 0", wrong)


def check_sums(brute, found):
    """What printed figures say of each other, and what is counted up from the case: quick, so it comes first."""
    goals, wrong = {(g["load"], g["figure"]): g for g in brute.choose["goals"]}, []
    every = [("now", found["now"])] + [(f"member {i}", m) for i, m in enumerate(found["front"])]
    for name, m in every:
        price, minutes = brute.cost(dict(brute.first, **m["fits"]))
        want = {"price": price, "fit_minutes": minutes, "cost": price + brute.choose["hourly_rate"] * minutes / 60}
        wrong += [f"{name}: {k} {m[k]} for {v}" for k, v in want.items() if not near(m[k], v, k)]
        told = [(goals[f["load"], f["figure"]], f["value"]) for f in m["figures"]]
        square = sum(g.get("weight", 1) * (v - g.get("wanted", 0)) ** 2 for g, v in told)
        u = math.sqrt(square / sum(g.get("weight", 1) for g, _ in told))
        wrong += [] if near(m["unsteadiness"], u, "_deg") else [f"{name}: unsteadiness {m['unsteadiness']} for {u}"]
    verdict("sums of money and of figures", wrong)
    now = {f[:4]: f[4] for f in brute.figures(brute.first)}
    wrong = [f"{f} for {now}" for f in found["now"]["figures"]
             if not near(f["value"], now[f["load"], f["corner"], f["wheel"], f["figure"]], "_deg")]
    verdict("the figures of what is fitted now", wrong)
    gain, wrong = {(tuple(s["joints"]), s["bush"]): s["gain"] for s in found["swaps"]}, []
    for name, r in (found["recommended"] or {}).items():
        steps = [(tuple(o["joints"]), o["bush"]) for o in r["order"]]
        best = max(gain[s] for s in steps)
        if gain[steps[0]] < best or not near(r["order"][0]["unsteadiness"], found["now"]["unsteadiness"] - best, "_deg"):
            wrong.append(f"{name}: {steps[0]} first, {gain}")
    verdict("first comes the single change that gains most", wrong)


def near3(shown, value):
    """Three significant digits, as a picture describes itself."""
    return abs(shown - value) <= 0.5000001 * 10 ** (math.floor(math.log10(abs(value) or 1)) - 2)


def check_jobs(case, found):
    """Work that recommendations share: joints that get another bush than now, minutes saved by doing it once."""
    wrong = []
    for name, r in found["recommended"].items():
        want = []
        for job in case["jobs"]:
            n = sum(r["fits"].get(j) != found["now"]["fits"].get(j) for j in job["joints"] if j in r["fits"])
            if n:
                want.append({"label": job["label"], "joints": n, "fit_minutes": job["fit_minutes"], "price": job.get("price", 0),
                             "saved_minutes": (n - 1) * job["fit_minutes"]})
        wrong += [] if r["jobs"] == want else [f"{name}: {r['jobs']} for {want}"]
    verdict("work that is shared", wrong)


def main():
    """Compare, and say how it went."""
    binary, path, road = sys.argv[1], sys.argv[2], len(sys.argv) > 3
    case = case_with_choose(path, road)
    with tempfile.TemporaryDirectory() as folder:
        name = os.path.join(folder, "case.json")
        with open(name, "w", encoding="utf-8") as f:
            json.dump(case, f)
        rates, why = cc.run(binary, "rates", name)
        if rates is None:
            raise SystemExit(why)

        def choose(*how):
            done = subprocess.run([binary, "choose", name, "--quiet", *how], capture_output=True, text=True)
            if done.returncode:
                raise SystemExit(f"choose: {done.stderr}")
            return done.stdout
        found = json.loads(choose("--format", "json"))
        brute = Brute(case, {b["name"]: b for b in rates["bushes"]}, road)
        check_sums(brute, found)
        check_text(found, choose("--detail"))
        check_csv(found, choose("--format", "csv"))
        check_jobs(case, found)
        choose("-o", folder)
        check_charts(found, *(open(os.path.join(folder, f"choose-{which}.svg"), encoding="utf-8").read().replace("\u2212", "-") for which in ("front", "ladder")))
        check_json(brute, found)  # last: it takes by far the longest
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
