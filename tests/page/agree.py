# SPDX-License-Identifier: MIT
"""Marks of every chart of the page in pixels, by the figures at the axes, against the page's data."""
import json
import math
import os
import re
import subprocess
import xml.etree.ElementTree as ET

from asked import FOLDER, GIVEWAY, SOURCE, check, done, plain, told

SVG = "{http://www.w3.org/2000/svg}"
COLOURS = ["#000000", "#D55E00", "#0072B2", "#009E73", "#CC79A7", "#E69F00", "#56B4E9", "#F0E442"]


def rgb(text):
    parts = re.findall(r"\d+", text or "")  # what has no colour of its own is drawn in the ink, black
    return "#%02X%02X%02X" % tuple(int(x) for x in parts[:3]) if len(parts) == 3 else "#000000"


class Picture:
    """Texts with their places, boxes and lines with their colours, and values from pixels by the ticks."""

    def __init__(self, svg, title=None):
        root = ET.fromstring(svg)
        self.title = plain(title or root.find(SVG + "title").text, "a title")
        self.described = plain(root.find(SVG + "desc").text, self.title)
        self.texts, self.boxes, self.lines, self.raw = [], [], [], ["".join(t.itertext()) for t in root.iter(SVG + "text")]
        self.walk(root)

    def walk(self, e):
        at = re.match(r"translate\(([-\d.]+),([-\d.]+)\)", e.get("transform", ""))
        for t in e.findall(SVG + "text"):
            if at:
                self.texts.append((float(at[1]), float(at[2]), plain("".join(t.itertext()), self.title), e.get("text-anchor")))
        for p in e.findall(SVG + "polygon"):
            xy = [tuple(map(float, q.split(","))) for q in p.get("points").split()]
            self.boxes.append((rgb(p.get("fill")), min(x for x, _ in xy), max(x for x, _ in xy), min(y for _, y in xy), max(y for _, y in xy)))
        for p in e.findall(SVG + "path"):
            for piece in re.findall(r"M[^M]*", p.get("d") or ""):
                xy = re.findall(r"([-\d.]+),([-\d.]+)", piece)
                self.lines.append((rgb(p.get("stroke")), [(float(x), float(y)) for x, y in xy]))
        for child in e:
            self.walk(child)

    def scale(self, across):
        """Value from a pixel: the straight line through the ticks, which are numbers in a row (or a column)."""
        groups = {}
        for x, y, s, anchor in self.texts:
            if re.fullmatch(r"-?\d+(\.\d+)?", s) and anchor == ("middle" if across else "end"):
                groups.setdefault(round(y if across else x, 1), []).append((x if across else y, float(s)))
        ticks = sorted(max(groups.values(), key=len))
        (a, va), (b, vb) = ticks[0], ticks[-1]
        # Texts stand on their base lines, a little below the middle of what they name.
        shift = 0 if across else self.below
        return lambda p: va + (p + shift - a) * (vb - va) / (b - a), abs((vb - va) / (b - a))

    below = 4.55  # 0.35 of 13 pixels


def unpacked(text, digits):
    """Whole numbers, low digit first; the upper half of the digits goes on; odd ones are negative; a blank is none."""
    out, value, place, half = [], 0, 1, len(digits) // 2
    for character in text:
        if character == " ":
            out.append(None)
            continue
        digit = digits.index(character)
        value, place = value + digit % half * place, place * half
        if digit < half:
            out.append(-(value + 1) // 2 if value % 2 else value // 2)
            value, place = 0, 1
    return out


def picture_of(text, axle, digits):
    if text is None:
        return None
    numbers, parts, joints = iter(unpacked(text, digits)), 6 * (len(axle["bodies"]) - 1), len(axle["joints"])
    take = lambda n: [next(numbers) for _ in range(n)]
    read = {"angles_deg": [v / 1e4 for v in take(4)], "lean": [take(1)[0] / 1e3, take(1)[0] / 10],
            "height": take(parts), "adds": take(parts), "share": take(joints)}
    return {**read, "given": list(numbers)}


def data_of(text):
    """The numbers of the page's script, with those that stand in short written out."""
    data = json.loads(re.search(r'id="data">(.*?)</script>', text, re.S)[1])
    for states in data["grid"]["states"]:
        for key, steps in data["grid"]["steps"].items():
            states[key] = [None if v is None else v / steps for v in unpacked(states[key], data["digits"])]
    for of in data["drawing"]["pictures"]:
        axle = next(a for a in data["drawing"]["axles"] if a["index"] == of["axle"])
        for key in ("loads", "states"):
            of[key] = [picture_of(p, axle, data["digits"]) for p in of[key]]
    return data


def read_page(file):
    text = open(file, encoding="utf-8").read()
    charts = {}
    for m in re.finditer(r'<figure class="chart" data-chart="([^"]+)".*?<figcaption>(.*?)<span class="what">.*?(<svg.*?</svg>)', text, re.S):
        svg = m[3] if "xmlns=" in m[3][:400] else m[3].replace("<svg", '<svg xmlns="http://www.w3.org/2000/svg"', 1)
        charts[m[1]] = Picture(svg, re.sub(r"<[^>]+>", "", m[2]))
    return charts, data_of(text), len(text.encode())


def numbers(text):
    return [float(x) for x in re.findall(r"[-+]?\d+(?:\.\d+)?", text)]


def sums(picture, name, want, half_digit):
    """The figures beyond the bars, from the top down."""
    found = [s for _, _, s, _ in sorted(picture.texts, key=lambda t: t[1]) if re.match(r"(sum )?-?\d+\.\d\d( \u00b1 [\d.]+)?$", s) and ("sum" in s or "\u00b1" in s or not picture.is_tick(s))]
    got = [numbers(s)[0] for s in found]
    check(len(got) == len(want) and all(abs(g - w) <= half_digit + 1e-9 for g, w in zip(got, want)), f"{name}: the sums are those of the page's data", f"{got} {want}")


def is_tick(self, s):
    return any(t[2] == s and t[3] == "middle" for t in self.texts)


Picture.is_tick = is_tick


def rows_of_boxes(picture):
    """Boxes right of the names, gathered into rows; keys stand above the plot and are squares."""
    rows = {}
    for colour, x0, x1, y0, y1 in picture.boxes:
        if 18 < y1 - y0 < 26 and x1 - x0 < 790:
            rows.setdefault(round(y0), []).append((colour, x0, x1))
    return [rows[y] for y in sorted(rows)]


def sided(data, axle, key):
    """Left is where y is positive."""
    joints = next(a for a in data["drawing"]["axles"] if a["index"] == axle)["joints"]
    said = [(j["label"][-6:] == ", left", j["at"][1] > 0) for j in joints if re.search(r", (left|right)$", j["label"]) and abs(j["at"][1]) > 1]
    check(all(left == above for left, above in said), f"{key}: left and right are where they are said to be", said)


def contributions(charts, data, name, load):
    for axle in (0, 1):
        key = f"{name}-{'front' if axle == 0 else 'rear'}"
        results = [r for r in data["results"] if r["axle"] == axle and r["load"] == load]
        if key not in charts or not results:
            continue
        picture = charts[key]
        sums(picture, key, [r["toe_change_deg"] for r in results], 0.005)
        value, fine = picture.scale(True)
        rows = rows_of_boxes(picture)
        # What lies right of zero less what lies left of it is the change; each hair of white is a pixel.
        ends = [(min(b[1] for b in r), max(b[2] for b in r)) for r in rows]
        got = [value(b) + value(a) for a, b in ends]
        check(len(got) == len(results) and all(abs(g - r["toe_change_deg"]) < 3 * fine for g, r in zip(got, results)),
              f"{key}: bars to both sides of zero make the change", f"{got} {[r['toe_change_deg'] for r in results]}")
        shares = [s[0] for s in results[0]["shares"]]
        most = max(shares + [results[0]["travel_toe_deg"]], key=abs)
        check(any(abs(n - most) <= 0.0051 for n in numbers(picture.title)), f"{key}: the title names the largest part", f"{picture.title}: {most}")
        names = {j["joint"]: j["label"] for j in next(a for a in data["drawing"]["axles"] if a["index"] == axle)["joints"] if j["own"]}
        first = max(range(len(shares)), key=lambda j: abs(shares[j]))
        if abs(shares[first]) > abs(results[0]["travel_toe_deg"]):
            check(names[first] in picture.title, f"{key}: the title names the bush of that part", f"{picture.title}: {names[first]}")
        keys = [s for _, _, s, _ in picture.texts if s in names.values()]
        check(keys and len(keys) == len(set(keys)), f"{key}: no two parts have one name", sorted(keys))
        check(len(set(names.values())) == len(names), f"{key}: each joint of the axle has a name of its own", sorted(names.values()))
        sided(data, axle, key)
        widest = max((b for b in rows[0]), key=lambda b: b[2] - b[1])
        rest = results[0]["toe_change_deg"] - results[0]["travel_toe_deg"] - sum(sorted(shares, key=abs)[-6:])
        if abs(rest) < abs(most):
            check(abs(abs(value(widest[2]) - value(widest[1])) - abs(most)) < 2.5 * fine, f"{key}: the widest bar is as wide as that part", f"{value(widest[2]) - value(widest[1])} {most}")


def settings(data):
    """The setting of toe and camber is what a load's angle has besides its change."""
    wrong = []
    for s in data["grid"]["states"]:
        for r in (r for r in data["results"] if (r["kit"], r["axle"]) == (s["kit"], s["axle"])):
            for angle in ("toe", "camber"):
                want = r[angle + "_deg"] - r[angle + "_change_deg"]
                if abs(s[angle + "_set_deg"] - want) > 1e-3:
                    wrong.append(f"{s['kit']}, {s['axle']}: {angle} {s[angle + '_set_deg']} for {want}")
    check(data["grid"]["states"] and not wrong, "the settings of the page's data", wrong[:3])


def sweeps(charts, data, name, quantity, braking):
    grid = data["grid"]
    for axle in (0, 1):
        key = f"{name}-{'front' if axle == 0 else 'rear'}"
        if key not in charts:
            continue
        picture = charts[key]
        across, _ = picture.scale(True)
        up, fine = picture.scale(False)
        wrong, looked = [], 0
        for s in (s for s in grid["states"] if s["axle"] == axle):
            n = grid["n_brake"] if braking else grid["n_lateral"]
            step = (grid["brake_to_g"] if braking else grid["lateral_to_g"]) / (n - 1)
            line = max((l for c, l in picture.lines if c == COLOURS[s["kit"] % 8]), key=len, default=[])
            for i in range(n):
                v = s[quantity + "_deg"][i * grid["n_lateral"] if braking else i]
                near = min(line, key=lambda p: abs(across(p[0]) - i * step), default=None)
                if v is None or near is None or abs(across(near[0]) - i * step) > 0.006:
                    continue
                looked += 1
                if abs(up(near[1]) - (v - s[quantity + "_set_deg"])) > 1.5 * fine + 1e-3:
                    wrong.append((s["kit"], i, up(near[1]), v - s[quantity + "_set_deg"]))
        check(looked >= 20 and not wrong, f"{key}: its lines run through the page's solved states", f"{looked} {wrong[:3]}")


def octaves(charts, data):
    for axle in (0, 1):
        key = f"third-octaves-{'front' if axle == 0 else 'rear'}"
        if key not in charts:
            continue
        picture = charts[key]
        up, fine = picture.scale(False)
        spectra = [s for s in data["sound"]["spectra"] if s["axle"] == axle and s["kit"] > 0]
        wrong, looked = [], 0
        for s in spectra:
            line = max((l for c, l in picture.lines if c == COLOURS[s["kit"] % 8]), key=len, default=[])
            want = s["difference_dB"]
            if len(line) != len(want):
                wrong.append((s["kit"], len(line)))
                continue
            looked += len(line)
            wrong += [(s["kit"], b, up(y), want[b]) for b, (_, y) in enumerate(line) if abs(up(y) - want[b]) > 1.5 * fine]
        check(looked and not wrong, f"{key}: its lines are the differences that are heard", wrong[:3])
        check(any(abs(n - abs(d)) < 0.051 for n in numbers(picture.title) for s in spectra for d in s["difference_dB"]), f"{key}: the title tells one of them", picture.title)


def bumps(charts, ride):
    for corner in ("front", "rear"):
        key = f"bump-{corner}"
        if key not in charts:
            continue
        picture = charts[key]
        value, fine = picture.scale(True)
        items = [r for r in ride["results"] if r["corner"] == corner]
        want = [w for r in items for w in (r["obstacle"]["peak_fore_aft_N"], r["obstacle"]["peak_vertical_N"])]
        got = [numbers(s)[0] for _, _, s, _ in sorted(picture.texts, key=lambda t: t[1]) if re.match(r"\d+ N(,|$)", s)]
        check(len(got) == len(want) and all(abs(g - w) <= 0.5001 for g, w in zip(got, want)), f"{key}: figures of both peaks, kit by kit", f"{got} {want}")
        bars = sorted((b for b in picture.boxes if 10 < b[4] - b[3] < 16), key=lambda b: b[3])
        wide = [value(b[2]) - value(b[1]) for b in bars]
        check(len(wide) == len(want) and all(abs(g - w) < 2 * fine for g, w in zip(wide, want)), f"{key}: bars as long as the peaks", f"{wide} {want}")
        fore = want[::2]
        far = max(fore, key=lambda w: abs(w - fore[0]))
        if abs(far - fore[0]) > max(1, 0.02 * fore[0]):
            check(numbers(picture.title)[-2:] == [round(fore[0]), round(far)], f"{key}: the title goes from the first kit to the furthest", picture.title)
        colours = [b[0] for b in bars[2::2]]
        check(colours == [COLOURS[i % 8] for i in range(1, len(items))], f"{key}: a kit's own colour", colours)


def trades(charts, data, told_ride, kits):
    looked = 0
    for axle in (0, 1):
        corner = "front" if axle == 0 else "rear"
        key = f"grip-against-harshness-{corner}"
        if key not in charts:
            continue
        found = re.findall(r"([-\d.]+), ([-\d.]+)\. ", charts[key].described + " ")
        points = [(float(a), float(b)) for a, b in found]
        best = None
        for load in {r["load"] for r in data["results"]}:
            of_load = [r for r in data["results"] if r["axle"] == axle and r["load"] == load]
            want = [(next(t["harshness_dB"] for t in told_ride if t["kit"] == kits[r["kit"]] and t["corner"] == corner), abs(r["toe_change_deg"]))
                    for r in of_load]
            if len(want) == len(points) and all(math.isclose(p[1], w[1], rel_tol=6e-3, abs_tol=1e-4) and math.isclose(p[0], w[0], rel_tol=6e-3, abs_tol=5e-3) for p, w in zip(points, want)):
                best, order = want, [r["kit"] for r in of_load]
        check(best is not None, f"{key}: its points are toe and harshness of one load", points)
        said = re.match(r"With (.+) the (front|rear) is ([.\d]+) deg steadier and (?:no|([.\d]+) dB (less )?)(?: )?harsh", charts[key].title)
        if best and said:
            of = next(k["index"] for k in data["kits"] if k["label"] == said[1])
            kit = order.index(of)
            dB = best[kit][0] - best[0][0]
            check(said[2] == corner and abs(best[0][1] - best[kit][1] - float(said[3])) <= 0.0051
                  and abs(dB - float(said[4] or 0) * (-1 if said[5] else 1)) <= 0.0501, f"{key}: the title tells what is gained, and what harshness that costs", charts[key].title)
        looked += bool(said)
    check(looked, "a chart of grip against harshness tells a kit that is steadier")


def leans(charts, data, load):
    for axle in (0, 1):
        key = f"camber-budget-{'front' if axle == 0 else 'rear'}"
        results = [r for r in data["results"] if r["axle"] == axle and r["load"] == load]
        if key in charts and results and "camber_to_road_deg" in results[0]:
            sums(charts[key], key, [r["camber_to_road_deg"] for r in results], 0.005)


def still(file, name):
    """The first picture, which needs no script: bodies moved in the body's axes, which leans about its roll centre."""
    text = open(file, encoding="utf-8").read()
    data = data_of(text)
    start, drawing = data["start"], data["drawing"]
    axle = next(a for a in drawing["axles"] if a["index"] == start["axle"])
    of = next(p for p in drawing["pictures"] if p["kit"] == start["kit"] and p["axle"] == start["axle"])
    under = of["loads"][start["load"]]
    roll, rise = math.radians(under["lean"][0]), under["lean"][1]
    about = axle["wheel"][2] - axle["radius"] + of["roll_centre_mm"] if of["roll_centre_mm"] is not None else axle["wheel"][2]

    def placed(body, at):
        if body:
            of_body = lambda key, i: under[key][6 * (body - 1) + i]
            moves = [(of_body("height", i) + of_body("adds", i)) / 10 / (1 if i < 3 else 1e3) for i in range(6)]
            r = [a - m for a, m in zip(at, axle["bodies"][body]["mark"])]
            angle = math.sqrt(sum(t * t for t in moves[3:]))
            k = [t / angle if angle else 0 for t in moves[3:]]
            cross = [k[1] * r[2] - k[2] * r[1], k[2] * r[0] - k[0] * r[2], k[0] * r[1] - k[1] * r[0]]
            along = sum(x * y for x, y in zip(k, r)) * (1 - math.cos(angle))
            at = [m + x * math.cos(angle) + c * math.sin(angle) + e * along + d
                  for m, x, c, e, d in zip(axle["bodies"][body]["mark"], r, cross, k, moves)]
        over = at[2] - about
        return [at[0], at[1] * math.cos(roll) + over * math.sin(roll), about + over * math.cos(roll) - at[1] * math.sin(roll) + rise]

    half = (abs(axle["wheel"][1]) + 250) / 206  # millimetres a pixel: 440 wide, 14 free at either edge
    want = []
    for joint in axle["joints"]:
        for body in (joint["a"], joint["b"]):
            want += [placed(body, p) for p in (axle["bodies"][body]["mark"], joint["at"])] if body else []
    for key, across in (("behind", 2), ("above", 0)):
        path = re.search(r'id="%s">.*?class="loaded" d="([^"]*)"' % key, text, re.S)[1]
        got = [tuple(map(float, p)) for p in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", path)]
        middle = axle["wheel"][2] + 120 if across == 2 else axle["wheel"][0]
        off = max(math.dist(g, (220 - w[1] / half, 125 - (w[across] - middle) / half)) for g, w in zip(got, want))
        check(len(got) >= len(want) > 20 and off < 0.12, f"{name}: the first picture from {key} stands where its data say", (off, len(got), len(want)))
    return roll


def drawn(data):
    """The drawing's own record of a load against its results: both wheels' angles, how far each bush gives, its share."""
    looked, wrong = 0, []
    for r in data["results"]:
        of = next(p for p in data["drawing"]["pictures"] if p["kit"] == r["kit"] and p["axle"] == r["axle"])["loads"][r["load"]]
        axle = next(a for a in data["drawing"]["axles"] if a["index"] == r["axle"])
        if abs(of["angles_deg"][0] - r["toe_deg"]) > 0.000051 or abs(of["angles_deg"][2] - r["camber_deg"]) > 0.000051:
            continue  # it tells the inner wheel, which is the right one
        for i, joint in enumerate(axle["joints"]):
            if joint["own"]:
                share, given = r["shares"][joint["joint"]][:2]
                looked += 1
                if abs(of["given"][i] / 100 - given) > 0.0051 or (joint["at"][1] >= 0 and abs(of["share"][i] / 1000 - share) > 0.00051):
                    wrong.append((r["kit"], r["load"], joint["label"], of["given"][i], given, of["share"][i], share))
    check(looked > 100 and not wrong, "what bushes give and share in the drawing is what the results tell", (looked, wrong[:3]))


def same(page, files, stems):
    """What -o writes tells the same: its sentence, and every figure that is read aloud."""
    looked = 0
    for stem, picture in page.items():
        if not stem.startswith(stems):
            continue
        file = os.path.join(files, stem + ".svg")
        if not os.path.exists(file):
            check(False, f"{stem} is written by -o too")
            continue
        other = Picture(open(file, encoding="utf-8").read())
        looked += 1
        check(picture.title == other.title, f"{stem}: one sentence in both", f"{picture.title} | {other.title}")
        a, b = (sorted(t.strip() for t in re.findall(r"[^.]+?: (?:from |sum )?[-+\d.]+[^A-Za-z]*", p.described)) for p in (picture, other))
        check(a and a == b, f"{stem}: the same figures in both", [x for x in zip(a, b) if x[0] != x[1]][:2])
    check(looked, f"charts that both draw: {', '.join(stems)}")


def on_case(name):
    case, out = os.path.join(SOURCE, name + ".json"), os.path.join(FOLDER, os.path.basename(name))
    for command in (["report", case, "--for", "workshop"], ["compare", case], ["ride", case]):
        subprocess.run([GIVEWAY, *command, "-o", out, "--quiet", "--format-charts", "svg"] if command[0] != "report" else [GIVEWAY, *command, "-o", out, "--quiet"], check=True, capture_output=True)
    charts, data, _ = read_page(os.path.join(out, "report.html"))
    compared, ride = told("compare", case), told("ride", case)
    kits = [k["name"] for k in compared["kits"]]
    stop = next((l["index"] for l in data["loads"] if l["slides"] and l["brake_g"] > 0 and not l["lateral_g"]), None)
    corner = next((l["index"] for l in data["loads"] if l["slides"] and l["lateral_g"] > 0 and not l["brake_g"]), None)
    contributions(charts, data, "contributions-braking", stop)
    contributions(charts, data, "contributions-cornering", corner)
    leans(charts, data, corner)
    still(os.path.join(out, "report.html"), name)
    trades(charts, data, compared["ride"], kits)
    octaves(charts, data)
    bumps(charts, ride)
    settings(data)
    drawn(data)
    below = [s for c in charts.values() for s in c.raw if "\u2212" in s]
    check(len(below) > 5, f"{name}: charts of the page have figures below zero, with minus signs", below)
    sweeps(charts, data, "toe-braking", "toe", True)
    sweeps(charts, data, "camber-cornering", "camber", False)
    same(charts, out, ("contributions", "grip-against", "toe-braking", "camber-cornering", "third-octaves", "paths", "bump"))


def in_a_bend():
    """The first picture of a car that leans."""
    with open(os.path.join(SOURCE, "cases/fast-saloon.json"), encoding="utf-8") as f:
        case = json.load(f)
    case.pop("choose")
    case["loads"] = [load for load in case["loads"] if "lateral_g" in load]
    bend = os.path.join(FOLDER, "bend.json")
    with open(bend, "w", encoding="utf-8") as f:
        json.dump(case, f)
    subprocess.run([GIVEWAY, "report", bend, "-o", os.path.join(FOLDER, "bend"), "--quiet"], check=True, capture_output=True)
    roll = still(os.path.join(FOLDER, "bend", "report.html"), "bend")
    check(abs(roll) > math.radians(1), "a car in a bend leans in its first picture", roll)


in_a_bend()
for case in ("cases/fast-saloon", "cases/hatchback", "tests/cases/saloon-by-rule", "tests/cases/hatchback-by-rule"):
    on_case(case)
done()
