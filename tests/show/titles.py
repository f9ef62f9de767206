# SPDX-License-Identifier: MIT
"""Titles of charts, figure by figure, against what the same command prints as JSON."""
import glob
import json
import math
import os
import re
import sys
import tempfile

sys.path.insert(0, os.path.join(os.path.dirname(__file__), "../page"))
from asked import FOLDER, SOURCE, check, done, plain, told



def drawn(*args):
    """What a command prints, and {file name: title} of what it draws."""
    out = tempfile.mkdtemp(dir=FOLDER)
    results = told(*args, "-o", out, "--format-charts", "svg")
    titles = {}
    for file in glob.glob(os.path.join(out, "*.svg")):
        with open(file, encoding="utf-8") as f:
            stem = os.path.basename(file)[:-4]
            titles[stem] = plain(re.search(r"<title[^>]*>(.*?)</title>", f.read(), re.S)[1], stem)
    return results, titles


def fixed(text, value):
    """The text is the value, rounded to the digits it has."""
    digits = len(text.partition(".")[2])
    return abs(float(text) - value) <= 0.5001 * 10**-digits


def significant(text, value):
    digits = len(text.lstrip("-+0.").replace(".", ""))
    return abs(float(text) - value) <= 0.51 * 10 ** (math.floor(math.log10(abs(value))) + 1 - digits) if value else float(text) == 0


def verb(said, a, b, signed):
    """What is said of the way from a to b."""
    ratio = abs(b) / abs(a) if a else math.inf
    m = re.fullmatch(r"(grows|shrinks) by (\d+) %", said)
    if m:
        return (m[1] == "grows") == (ratio > 1) and fixed(m[2], 100 * abs(ratio - 1))
    m = re.fullmatch(r"grows to ([\d.]+) times", said)
    if m:
        return ratio > 2 and fixed(m[1], ratio)
    turned = signed and a * b < 0
    rules = {"halves": abs(ratio - 0.5) < 0.03, "doubles": abs(ratio - 2) < 0.11, "turns round": turned,
             "all but goes": ratio < 0.05, "grows": ratio > 10, "appears": abs(a) < 0.11}
    return rules[said]


def kits(title, of, values, unit, signed=False, some_open=False):
    """`of` VERB with KIT: A to B unit; values: {label: value}, the first kit first. Where some are too close to call and
    passed over, the furthest need not be the one told."""
    if not title.startswith(of):
        return False
    rest, labels = title[len(of):].lstrip(" "), list(values)
    first, far = values[labels[0]], lambda v: v - first if signed and v * first < 0 else abs(v) - abs(first)
    m = re.fullmatch(r"(?:hardly changes from kit to kit|is too close to call): (\S+)(?: to (\S+))? " + re.escape(unit), rest)
    if m:
        least, most = min(values.values()), max(values.values())
        alike = "hardly" not in rest or most - least <= max(10.0 ** -len(m[1].partition(".")[2]), 0.02 * abs(first)) * 2
        return alike and fixed(m[1], least) and fixed(m[2] or m[1], most)
    m = re.fullmatch(r"(.+?) with (.+): (\S+) to (\S+) " + re.escape(unit), rest)
    if not m or m[2] not in values:
        return False
    value = values[m[2]]
    most = max(labels[1:], key=lambda k: abs(far(values[k])))
    furthest = abs(abs(far(values[most])) - abs(far(value))) < 1e-9 or some_open
    return verb(m[1], first, value, signed) and fixed(m[3], first) and fixed(m[4], value) and furthest


def part(title, of, parts, whole, unit, kit):
    """`of` comes from the largest part; parts: {name: value}."""
    best = max(parts, key=lambda k: abs(parts[k]))
    m = re.fullmatch(re.escape(of) + r" comes (mostly|first of all) from " + re.escape(best) + r": (\S+) of (\S+) " + re.escape(unit) + " with " + re.escape(kit), title)
    if m:
        return fixed(m[2], parts[best]) and fixed(m[3], whole) and (m[1] == "mostly") == (parts[best] / whole >= 0.5) and 0 <= parts[best] / whole <= 1
    m = re.fullmatch(re.escape(of) + r" comes from " + re.escape(best) + r", of which the rest takes back a part: (\S+) to (\S+) " + re.escape(unit) + " with " + re.escape(kit), title)
    if m:
        return fixed(m[1], parts[best]) and fixed(m[2], whole) and parts[best] / whole > 1
    m = re.fullmatch(re.escape(of) + r": " + re.escape(best) + r" pulls most, against the rest: (\S+) where all is (\S+) " + re.escape(unit) + " with " + re.escape(kit), title)
    return bool(m) and fixed(m[1], parts[best]) and fixed(m[2], whole) and parts[best] * whole < 0


def weight_a(nominal):
    """The A weighting, less a factor, at the mid frequency of the third-octave of that name: IEC 61672-1, Annex E, with
    the rounded pole frequencies that it prints (from memory)."""
    f2 = 10 ** (round(10 * math.log10(nominal)) / 5)
    return f2**2 / ((f2 + 20.60**2) * math.sqrt((f2 + 107.7**2) * (f2 + 737.9**2)) * (f2 + 12194.0**2))


class Case:
    def __init__(self, path):
        self.path, self.json = path, json.load(open(path, encoding="utf-8"))
        self.label = {k["name"]: k.get("label", k["name"]) for k in self.json["kits"]}
        self.first = self.json["kits"][0]["name"]
        self.bush = {}
        for at in ("corners", "axles"):
            for axle, corner in self.json.get(at, {}).items():
                for j in corner.get("joints", []):
                    self.bush[axle, j["name"]] = j.get("label", j["name"])

    def joint(self, axle, name):
        side, _, plain = name.rpartition(".")
        return self.bush[axle, plain] + (f", {side}" if side else "")

    def by_kit(self, results, value, **where):
        return {self.label[r["kit"]]: value(r) for r in results if all(r.get(k) == v for k, v in where.items())}


def rule_of(rules, stem):
    """The first rule for charts of that name, and the parts of the name that it asks for; None: there is none."""
    return next(((rule, m.groups()) for pattern, rule in rules if (m := re.fullmatch(pattern, stem))), None)


def every(titles, name, rules):
    """Every chart has a rule, and every rule holds."""
    for stem, title in sorted(titles.items()):
        found = rule_of(rules, stem)
        if not found:
            check(False, f"{name} {stem}: a title that nothing holds against the results", title)
        elif found[0] is not ELSEWHERE:
            check(found[0](title, *found[1]), f"{name} {stem}: {title}")
    for pattern, _ in rules:
        check(any(re.fullmatch(pattern, s) for s in titles), f"{name}: some chart is called {pattern}")


def ELSEWHERE(*_):
    """Held against the results by tests/page/agree.py."""


def travel(case):
    d, titles = drawn("travel", case.path)
    results = d["results"]
    way = lambda key: lambda r: max(p[key] for p in r["points"]) - min(p[key] for p in r["points"])
    tilt = lambda r: 100 * max(b["tilt_deg"] / b["limit_deg"] for p in r["points"] for b in p["bearings"])
    at = lambda axle, value: case.by_kit([r for r in results if r["bearings"] or value is not tilt], value, corner=axle)
    every(titles, "travel", [
        ("toe-travel-(.*)", lambda t, a: kits(t, f"Toe swing of the {a} wheel over its travel", at(a, way("toe_change_deg")), "deg")),
        ("camber-travel-(.*)", lambda t, a: kits(t, f"Camber swing of the {a} wheel over its travel", at(a, way("camber_change_deg")), "deg")),
        ("roll-centre-travel-(.*)", lambda t, a: kits(t, f"The way of the roll centre at the {a} over the wheel's travel", at(a, way("roll_centre_mm")), "mm")),
        ("wheel-rate-travel-(.*)", lambda t, a: kits(t, f"Wheel rate at the {a}", at(a, lambda r: r["ride_height"]["wheel_rate_N_per_mm"]), "N/mm")),
        ("tilt-travel-(.*)", lambda t, a: kits(t, f"Largest tilt of a joint at the {a}, of its limit,", at(a, tilt), "%"))])


def says_load(load):
    if "brake_g" in load and load["brake_g"] and not load.get("lateral_g"):
        return f"under a {load['brake_g']:.2f} g stop"
    if load.get("lateral_g") and not load.get("brake_g") and not load.get("drive_g"):
        return f"in a {load['lateral_g']:.2f} g corner"
    return None


def contribution(case, results, title, axle, load):
    r = next(r for r in results if (r["kit"], r["corner"], r["load"]) == (case.first, axle, load["name"]) and r.get("wheel", "outer") in ("outer", "left"))
    parts = {case.joint(axle, b["joint"]): b["toe_share_deg"] for b in r["bushes"]}
    parts.update({"springs and travel": r["shares"]["travel_toe_deg"], "geometry": r["shares"]["geometry_toe_deg"]})
    said = says_load(load)
    of = f"{axle.capitalize()} toe change {said}" if said else next(iter(re.findall(r"^.*?(?= comes |:)", title)), title)
    return part(title, of, parts, r["toe_change_deg"], "deg", case.label[case.first])


def deflect(case):
    d, titles = drawn("deflect", case.path)
    loads = case.json["loads"]
    every(titles, "deflect", [
        (r"contributions-(front|rear)-(\d+)-.*", lambda t, a, n: contribution(case, d["results"], t, a, loads[int(n) - 1]))])


CAUSES = {"roll_deg": "body roll on springs", "travel_deg": "travel in roll", "tyre_deg": "roll on tyres", "jacking_deg": "jacking, dive, squat", "bushes_deg": "bushes"}


def budget(case, d, title, angle, axle, kit, load):
    h = next(h for h in d["handling"] if h["kit"] == kit)
    b = next(b for b in h["budgets"] if (b["corner"], b["load"], b["wheel"]) == (axle, load["name"], "outer"))[angle]
    # With the car's own equilibrium roll turns the camber; of toe both are 0 or left out.
    parts = {name: b[key] for key, name in CAUSES.items()}
    return part(title, f"The outer {axle} wheel's {angle} change", parts, sum(parts.values()), "deg", case.label[kit])


def sweeps(case, g):
    """Toe and camber at the end of both sweeps, from loads of that g."""
    steady = {k: v for k, v in case.json.items() if k not in ("choose",)}
    steady["loads"] = [{"name": "stop", "brake_g": g["stop"]}, {"name": "corner", "lateral_g": g["corner"]}]
    path = os.path.join(FOLDER, "sweeps.json")
    with open(path, "w", encoding="utf-8") as f:
        json.dump(steady, f)
    return told("deflect", path)["results"]


def compare(case):
    d, titles = drawn("compare", case.path, "--detail")
    corner = next(l for l in case.json["loads"] if says_load(l) and "corner" in says_load(l))
    stop = next(l for l in case.json["loads"] if says_load(l) and "stop" in says_load(l))
    ends = {"stop": max(float(g) for t in titles.values() for g in re.findall(r"braking at ([\d.]+) g", t)),
            "corner": max(float(g) for t in titles.values() for g in re.findall(r"corner at ([\d.]+) g", t))}
    swept = sweeps(case, ends)

    def sweep(title, angle, axle, load):
        at = "when braking" if load == "stop" else "of the outer wheel in a corner"
        values = {case.label[r["kit"]]: r[f"{angle}_change_deg"] for r in swept if (r["corner"], r["load"]) == (axle, load) and r.get("wheel", "outer") in ("outer", "left")}
        return kits(title, f"{axle.capitalize()} {angle} change {at} at {ends[load]:.2f} g", values, "deg", signed=True, some_open=True)

    def consistency(title, angle, axle):
        values = {case.label[h["kit"]]: next(abs(c[f"{angle}_deg"][1] - c[f"{angle}_deg"][0]) for c in h["consistency"] if c["corner"] == axle) for h in d["handling"]}
        return kits(title, f"The range of {angle} in use, outer {axle} wheel,", values, "deg")

    def lean(title, axle, kit):
        r = next(r for r in d["results"] if (r["kit"], r["corner"], r["load"]) == (kit, axle, corner["name"]))
        m = re.fullmatch(r"The body leans ([\d.]+) deg over the (front|rear) axle with (.*)", title)
        return m and fixed(m[1], abs(r["roll_deg"])) and m[2] == axle and m[3] == case.label[kit]

    def understeer(title):
        return kits(title, "Understeer", {case.label[h["kit"]]: h["balance"]["understeer_deg_per_g"] for h in d["handling"]}, "deg/g", signed=True)

    def slip(title, axle):
        values = {case.label[h["kit"]]: h["balance"][f"{axle}_deg_per_g"]["sum"] for h in d["handling"]}
        return kits(title, f"The {axle} axle's slip with its steer", values, "deg/g")

    def against_g(title):
        b = d["handling"][0]["balance"]
        points = [p for p in b["against_g"] if p["lateral_g"] < b["linear_to_g"] + 1e-9]
        a, z = points[0], points[-1]
        m = re.fullmatch(r"Understeer (grows|shrinks|hardly changes) up to (\S+) g: (\S+) to (\S+) deg/g with (.*)", title)
        key = "understeer_deg_per_g"
        way = "hardly changes" if abs(z[key] - a[key]) < 0.02 * abs(a[key]) else "grows" if z[key] > a[key] else "shrinks"
        return m and m[1] == way and fixed(m[2], z["lateral_g"]) and fixed(m[3], a[key]) and fixed(m[4], z[key]) and m[5] == case.label[case.first]

    ride = told("ride", case.path, "--detail")["results"]
    every(titles, "compare", [
        ("(toe|camber)-braking-(.*)", lambda t, q, a: sweep(t, q, a, "stop")),
        ("(toe|camber)-cornering-(.*)", lambda t, q, a: sweep(t, q, a, "corner")),
        ("grip-against-harshness-.*", ELSEWHERE),
        ("consistency-(toe|camber)-(.*)", consistency),
        ("(toe|camber)-budget-(front|rear)-(.*)", lambda t, q, a, k: budget(case, d, t, q, a, k, corner)),
        ("axle-(front|rear)-(.*)", lean),
        ("contributions-braking-(.*)", lambda t, a: contribution(case, d["results"], t, a, stop)),
        ("contributions-cornering-(.*)", lambda t, a: contribution(case, d["results"], t, a, corner)),
        ("understeer-budget", understeer),
        ("understeer-budget-(.*)", slip),
        ("understeer-against-g", against_g),
        ("transmissibility-(.*)", lambda t, a: lets_in(case, ride, t, a))])


def lets_in(case, results, title, axle):
    """The peak of boom: at which frequency, with which kit, and how many times that with the first, or the least."""
    curves = case.by_kit(results, lambda r: r["transmissibility"], corner=axle)
    first = case.label[case.first]
    force, hz, kit = max((f, hz, label) for label, c in curves.items() for hz, f in zip(c["frequency_Hz"], c["body_force_N_per_m"]) if 30 <= hz <= 315)
    at = curves[first]["frequency_Hz"].index(hz)
    other = min((k for k in curves if k != first), key=lambda k: curves[k]["body_force_N_per_m"][at]) if kit == first else first
    ratio = force / curves[other]["body_force_N_per_m"][at]
    m = re.fullmatch(rf"Boom at the {axle} peaks at (\S+) Hz with (.*?)(?:: (\S+) times as much as with (.*) there|, much the same as with (.*))", title)
    if not m or not significant(m[1], hz) or m[2] != kit:
        return False
    return ratio < 1.1 and m[5] == other if m[5] else m[4] == other and significant(m[3], ratio) and ratio >= 1.1


def ride(case):
    d, titles = drawn("ride", case.path, "--detail")
    results = d["results"]

    def octaves(title, axle):
        kit = max((r for r in results if r["corner"] == axle and r["kit"] != case.first), key=lambda r: abs(r["road_noise_dB"]))
        band = max(kit["third_octave"], key=lambda b: b["body_force_N"] * weight_a(b["centre_Hz"]))
        more = band["dB_from_baseline"]
        if abs(more) < 0.05:
            return title == f"At {band['centre_Hz']:g} Hz, where most is heard at the {axle} with {case.label[kit['kit']]}, as much comes through as before"
        m = re.fullmatch(rf"At (\S+) Hz, where most is heard at the {axle} with (.*), (\S+) dB (more|less) comes through", title)
        return m and float(m[1]) == band["centre_Hz"] and m[2] == case.label[kit["kit"]] and fixed(m[3], abs(more)) and (m[4] == "more") == (more > 0)

    def unknown(title, axle):
        values = {(case.label[r["kit"]], u["unknown"]): u["road_noise_dB"] for r in results if r["corner"] == axle and r["kit"] != case.first for u in r["unknowns"]}
        most = max(values, key=lambda k: abs(values[k]))
        m = re.fullmatch(rf"Of what is not known at the {axle}, most hangs on (.*): (\S+) dB with (.*)", title)
        return m and m[1] == most[1] and fixed(m[2], values[most]) and m[3] == most[0]

    every(titles, "ride", [
        ("bump-(.*)", lambda t, a: kits(t, f"The knock of a bump, fore and aft at the {a},", case.by_kit(results, lambda r: r["obstacle"]["peak_fore_aft_N"], corner=a), "N")),
        ("third-octaves-(.*)", octaves),
        ("transmissibility-(front|rear)", lambda t, a: lets_in(case, results, t, a)),
        ("transmissibility-paths-.*|paths-.*", ELSEWHERE),  # tests/cli/ride.test
        ("unknowns-(.*)", unknown)])


def rates(case):
    at = {hz: {b["name"]: b for b in told("rates", case.path, "--frequency-Hz", str(hz))["bushes"]} for hz in (1, 500)}

    def along(title, of, value, unit, name):
        a, b = (value(at[hz][name]["dynamic"]) for hz in (1, 500))
        label = case.json["bushes"][name].get("label", name)
        m = re.fullmatch(rf"{of} of {re.escape(label)} (rises|falls) from (\S+) to (\S+) {re.escape(unit)} between 1 and 500 Hz", title)
        if m:
            return (m[1] == "rises") == (b > a) and significant(m[2], a) and significant(m[3], b)
        m = re.fullmatch(rf"{of} of {re.escape(label)} stays at (\S+) {re.escape(unit)} from 1 to 500 Hz", title)
        return m and significant(m[1], a) and abs(b - a) < 0.01 * a

    every(drawn("rates", case.path)[1], "rates", [
        ("stiffness-(.*)", lambda t, n: along(t, "Dynamic stiffness", lambda d: d["radial_N_per_mm"][0], "N/mm", n)),
        ("loss-angle-(.*)", lambda t, n: along(t, "Loss angle", lambda d: d["loss_angle_deg"], "deg", n))])


def align(case):
    d, titles = drawn("align", case.path)
    results = {(r["corner"], r["kit"]): r for r in d["results"]}

    def adjuster(title, axle, kit):
        r = results[axle, kit]
        values = {(i, q): s[f"{q}_deg_per_mm"] for i, s in enumerate(r["sensitivity"]) for q in ("camber", "toe", "caster")}
        i, q = max(values, key=lambda k: abs(values[k]))
        m = re.fullmatch(rf"{axle.capitalize()} axle: (.*) moves (\S+) most, (\S+) deg a mm", title)
        return m and r["sensitivity"][i].get("joint", r["sensitivity"][i].get("member")) in m[1].split() and m[2] == q and fixed(m[3], values[i, q])

    def as_set(title, q, axle, kit):
        loads = results[axle, kit]["loads"]
        of = lambda l, when: l[f"{q}_change_{when}_deg"]
        l = max(loads, key=lambda l: abs(of(l, "after") - of(l, "before")))
        m = re.fullmatch(rf"As set, the {q} change at the {axle} axle goes from (\S+) to (\S+) deg in (.*)", title)
        return m and m[3] == l["load"] and fixed(m[1], of(l, "before")) and fixed(m[2], of(l, "after"))

    every(titles, "align", [
        ("adjusters-(front|rear)-(.*)", adjuster), ("align-(toe|camber)-(front|rear)-(.*)", as_set)])


def choose(case):
    d, titles = drawn("choose", case.path)

    def steadiest(title):
        best = min(d["front"], key=lambda f: f["unsteadiness"])
        m = re.fullmatch(r"The steadiest on offer takes unsteadiness from (\S+) to (\S+) deg, for (\S+) dB of harshness", title)
        return m and fixed(m[1], d["now"]["unsteadiness"]) and fixed(m[2], best["unsteadiness"]) and fixed(m[3], best["harshness_dB"])

    def ladder(title):
        steps = sorted((f["cost"], f["unsteadiness"]) for f in d["front"] if f["step"])
        gain = [(a[1] - b[1]) / (b[0] - a[0]) for a, b in zip(steps, steps[1:])]
        i = max(range(len(gain)), key=lambda k: gain[k])
        m = re.fullmatch(r"Money buys most on the step to (\S+) (\S+): unsteadiness from (\S+) to (\S+) deg", title)
        return m and fixed(m[1], steps[i + 1][0]) and m[2] == case.json["shop"]["currency"] and fixed(m[3], steps[i][1]) and fixed(m[4], steps[i + 1][1])

    every(titles, "choose", [("choose-front", steadiest), ("choose-ladder", ladder)])


def spread(case):
    d, titles = drawn("spread", case.path, "--draws", "100", "--ride")
    loaded = [r for r in d["results"] if r.get("load")]

    def least_sure(title, of, axle, key):
        bands = [(r[key]["high"] - r[key]["low"], r) for r in loaded if r["corner"] == axle]
        m = re.fullmatch(rf"{axle.capitalize()} {of} is least sure in (.*) with (.*): a band of (\S+) (deg|mm)", title)
        widest = max(w for w, _ in bands)
        named = m and max(w for w, r in bands if r["load"] == m[1].split(",")[0] and case.label[r["kit"]] == m[2])
        return m and named == widest and fixed(m[3], widest) and m[4] == key.rpartition("_")[2]

    def open_ones(title, of, results, key):
        bands = [r[key] for r in results if key in r]
        wide = sum(b["low"] <= 0 <= b["high"] for b in bands)
        return title == (f"{of}: too close to call in {wide} of {len(bands)}" if wide else f"{of}: sure in all {len(bands)}")

    def unsteadiness(title):
        values = {case.label[k["kit"]]: k["unsteadiness_deg"]["nominal"] for k in d["summary"]}
        return kits(title, "Unsteadiness over all loads", values, "deg", some_open=True)

    def next_one(title):
        first = d["measure_next"][0]
        m = re.fullmatch(r"Measure next: (.*) makes (\S+) % of what is not sure of toe", title)
        return m and fixed(m[2], 100 * first["share"]) and first["of"].split(".")[-1].split("[")[0] in m[1] and first["share"] == max(f["share"] for f in d["measure_next"])

    rides = [r for r in d["results"] if not r.get("load") and r["kit"] != case.first]
    every(titles, "spread", [
        ("spread-toe-(front|rear)", lambda t, a: least_sure(t, "toe change", a, "toe_change_deg")),
        ("spread-camber-(front|rear)", lambda t, a: least_sure(t, "camber change", a, "camber_change_deg")),
        ("spread-fore-aft-(front|rear)", lambda t, a: least_sure(t, "wheel's movement fore and aft", a, "wheel_fore_aft_mm")),
        ("spread-toe-difference-(front|rear)", lambda t, a: open_ones(t, f"{a.capitalize()} toe change less the first kit's", [r.get("difference", {}) for r in loaded if r["corner"] == a], "toe_change_deg")),
        ("spread-harshness", lambda t: open_ones(t, "Harshness over the first kit", rides, "harshness_dB")),
        ("spread-road-noise", lambda t: open_ones(t, "Road noise over the first kit", rides, "road_noise_dB")),
        ("spread-unsteadiness", unsteadiness),
        ("spread-measure-next", next_one)])


def match(case):
    d, titles = drawn("match", case.path, "--readings", os.path.join(SOURCE, "cases/hatchback-ramp.csv"))

    def far(title, axle, key, of, unit):
        values = [v for r in d["readings"] if r["corner"] == axle for v in r["values"] if v["figure"] == key]
        rms = lambda when: math.sqrt(sum((v[when] - v["reading"]) ** 2 for v in values) / len(values))
        m = re.fullmatch(rf"{axle.capitalize()} {of} of the case: (\S+) {unit} from the readings, (\S+) before", title)
        return m and significant(m[1], rms("after")) and significant(m[2], rms("before"))

    every(titles, "match", [
        ("match-(front|rear)-toe", lambda t, a: far(t, a, "toe_change_deg", "toe change", "deg")),
        ("match-(front|rear)-camber", lambda t, a: far(t, a, "camber_change_deg", "camber change", "deg")),
        ("match-(front|rear)-fore-aft", lambda t, a: far(t, a, "wheel_fore_aft_mm", "way fore and aft", "mm")),
        ("match-(front|rear)-wheel-rate", lambda t, a: far(t, a, "wheel_rate_N_per_mm", "wheel rate", "N/mm"))])


ON = {"saloon": (travel, deflect, compare, ride, rates, align, choose), "hatchback": (match, spread)}
def softened(case):
    """The first kit booms most: the other one's bushes are softer rubber."""
    of = {"soft": "nr-50", "softer": "nr-35"}
    bushes = {name: dict(case.json["bushes"]["upper_rubber"], material=material) for name, material in of.items()}
    soft = {**case.json, "bushes": {**case.json["bushes"], **bushes}}
    soft["kits"] = [case.json["kits"][0]] + [
        {"name": name, "label": f"{name.capitalize()} rubber", "fits": {"front.upper_front": name, "front.upper_rear": name}} for name in of]
    soft.pop("choose"), soft.pop("jobs")
    path = os.path.join(FOLDER, "soft.json")
    with open(path, "w", encoding="utf-8") as f:
        json.dump(soft, f)
    return Case(path)


known = {of.__name__ for commands in ON.values() for of in commands}
check(sys.argv[4:] and set(sys.argv[4:]) <= known, "what is to be looked at is known", sys.argv[4:])
for name, commands in ON.items():
    case = Case(os.path.join(SOURCE, "cases", {"saloon": "fast-saloon.json", "hatchback": "hatchback.json"}[name]))
    for of in commands:
        if of.__name__ in sys.argv[4:]:
            of(case)
            if of is ride:
                ride(softened(case))
done()
