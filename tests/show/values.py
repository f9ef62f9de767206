# SPDX-License-Identifier: MIT
"""
Figures of `travel` and `deflect` by value: values.py PROGRAM SOURCE

Every field of CSV and every figure of the tables equals the figure of that name in JSON, to the digits printed; and
figures are held to relations that know nothing of the program: shares add up to the change, a rate is the slope of
what it is the rate of, an angle less its change is the setting.
"""
import csv
import io
import json
import math
import re
import subprocess
import sys

PROGRAM, SOURCE = sys.argv[1], sys.argv[2]
CASES = ["cases/fast-saloon.json", "cases/hatchback.json", "tests/cases/saloon-by-rule.json",
         "tests/cases/hatchback-by-rule.json", "tests/casefile/samples/other-choices.json"]
bad = 0


def run(*arguments):
    done = subprocess.run([PROGRAM, *arguments, "--quiet"], capture_output=True, text=True, cwd=SOURCE)
    if done.returncode:
        raise SystemExit(f"giveway {' '.join(arguments)}: {done.stderr}")
    return done.stdout


def verdict(what, wrong):
    global bad
    print(("not ok - " if wrong else "ok - ") + what)
    bad += bool(wrong)
    for line in wrong[:8]:
        print(f"#   {line}")


def near(a, b, tolerance):
    return abs(a - b) <= tolerance


def flat(record, prefix=""):
    """A record as CSV names it: vectors by axis, objects with their key before, `shares` without."""
    out = {}
    for key, value in record.items():
        if isinstance(value, dict):
            out.update(flat(value, prefix + ("" if key == "shares" else key + "_")))
        elif isinstance(value, list) and len(value) == 3 and not isinstance(value[0], (dict, str)):
            stem, _, unit = key.rpartition("_")
            out.update({f"{prefix}{stem}_{axis}_{unit}": v for axis, v in zip("xyz", value)})
        elif not isinstance(value, list):
            out[prefix + key] = value
    return out


def rows_of(command, document):
    if command == "deflect":
        return [flat(result) for result in document["results"]]
    return [{**{k: result[k] for k in ("kit", "corner", "load")}, **flat(point)}
            for result in document["results"] for point in result["points"]]


def csv_against_json(command, document, *arguments):
    text = run(command, *arguments, "--format", "csv")
    wrong, table = [], list(csv.DictReader(io.StringIO(text)))
    heads = text.splitlines()[0].split(",")
    wrong += [f"two columns are called {head}" for head in set(heads) if heads.count(head) > 1]
    rows = rows_of(command, document)
    if len(rows) != len(table) or not table:
        wrong.append(f"{len(table)} rows for {len(rows)} results")
    for want, got in zip(rows, table):
        for head, field in got.items():
            if head == "largest_tilt_percent_of_limit":
                continue
            value = want.get(head)
            same = field == "" if value is None else float(field) == value if isinstance(value, float | int) else field == value
            if not same:
                wrong.append(f"{head}: {field!r} for {value!r}")
    verdict(f"{command} {' '.join(arguments)}: every field of CSV is the figure of that name in JSON", wrong)


def shows(text, value):
    """A printed figure is the value to the digits printed."""
    if value is None:
        return text == "-"
    decimals = len(text.partition(".")[2])
    return near(float(text), value, 0.5000001 * 10 ** -decimals)


PATH = ["travel_mm", "toe_change_deg", None, "camber_change_deg", "caster_change_deg", "track_change_mm",
        "wheelbase_change_mm", "vertical_load_N", "wheel_rate_N_per_mm", "roll_centre_mm"]


PATH_DIGITS = [0, 3, 1, 3, 3, 1, 1, 0, 2, 1]


def digits(text):
    return len(text.rstrip("'").partition(".")[2])


def minutes(text):
    """Degrees and minutes as degrees."""
    found = re.fullmatch(r"(-?)(\d+)°(\d+(?:\.\d+)?)'", text)
    return (-1 if found[1] else 1) * (int(found[2]) + float(found[3]) / 60)


def tables(text):
    """Rows of figures below each bold line that names a corner and kit, up to the next empty line."""
    blocks = re.split(r"\n(?=\w+ corner, kit )", text)[1:]
    return [[re.split(r"\s{2,}|(?<=\d) (?=[+-]?\d)", line.strip()) for line in block.split("\n\n")[0].splitlines()[1:]]
            for block in blocks]


def travel_text(document, *arguments):
    wrong = []
    blocks = tables(run("travel", *arguments, "--detail"))
    told = re.findall(r"of it, bushes being turned +(\S+) +N/mm +(\S+) %", run("travel", *arguments, "--detail"))
    known = [r["ride_height"] for r in document["results"] if r["ride_height"]["parasitic_rate_N_per_mm"] is not None]
    if len(told) != len(known):
        wrong.append(f"{len(told)} parasitic rates for {len(known)}")
    for rest, (rate, percent) in zip(known, told):
        share = 100 * rest["parasitic_rate_N_per_mm"] / rest["wheel_rate_N_per_mm"]
        if not shows(rate, rest["parasitic_rate_N_per_mm"]) or not shows(percent, share):
            wrong.append(f"parasitic rate {rate}, {percent} % for {rest['parasitic_rate_N_per_mm']}, {share} %")
    for result, lines in zip(document["results"], blocks):
        lines = [cells for cells in lines if len(cells) == len(PATH) and re.match(r"[-+]?\d", cells[0])]
        if len(lines) != len(result["points"]):
            wrong.append(f"{len(lines)} lines for {len(result['points'])} places")
        for point, cells in zip(result["points"], lines):
            if [digits(cell) for cell in cells] != PATH_DIGITS:
                wrong.append(f"digits of {cells}")
            for key, cell in zip(PATH, cells):
                if key is None:
                    if not near(minutes(cell), point["toe_change_deg"], 0.051 / 60):
                        wrong.append(f"toe in minutes: {cell} for {point['toe_change_deg']}")
                elif not shows(cell, point[key]):
                    wrong.append(f"{key}: {cell} for {point[key]}")
    verdict(f"travel {' '.join(arguments)}: the table is what JSON says", wrong or ([] if blocks else ["no table"]))


WHEEL = ["travel_mm", "toe_change_deg", "toe_deg", "camber_change_deg", "camber_deg", "caster_change_deg",
         ("wheel_centre_mm", 0), ("contact_patch_mm", 1), "spring_force_N"]


WHEEL_DIGITS = [1, 3, 3, 3, 3, 3, 2, 2, 0]


def deflect_text(document, *arguments):
    wrong, lines = [], []
    for block in tables(run("deflect", *arguments)):
        lines += [cells for cells in block if len(cells) == 1 + len(WHEEL) and re.match(r"[-+]?\d", cells[1])]
    if len(lines) != len(document["results"]):
        wrong.append(f"{len(lines)} lines for {len(document['results'])} results")
    for result, cells in zip(document["results"], lines):
        if cells[0] != result["load"]:
            wrong.append(f"{cells[0]} for {result['load']}")
        if [digits(cell) for cell in cells[1:]] != WHEEL_DIGITS:
            wrong.append(f"digits of {cells}")
        for key, cell in zip(WHEEL, cells[1:]):
            value = result[key[0]][key[1]] if isinstance(key, tuple) else result[key]
            if not shows(cell, value):
                wrong.append(f"{key}: {cell} for {value}")
    verdict(f"deflect {' '.join(arguments)}: the table is what JSON says", wrong)


def standing_pitch(case, results):
    """
    How far the nose is down at rest [rad]: an axle whose wheels lean by their static camber stands lower by so much.
    It is some 2e-5; where a wheel centre has sagged to along the car changes that by a tenth, 5e-6 deg of camber at most.
    """
    static = {r["corner"]: math.radians(r["static_camber_deg"]) for r in results}
    lower = {axle: (1 - math.cos(static[axle])) * corner["wheel"]["loaded_radius_mm"] for axle, corner in case["corners"].items()}
    return (lower["front"] - lower["rear"]) / case["vehicle"]["wheelbase_mm"]


def to_road(r, standing):
    """Camber to the road: by the rules camber and roll; of the whole car -asin w_z of the wheel's axis, pitched and rolled."""
    roll = r["roll_deg"] if r["wheel"] == "outer" else -r["roll_deg"]
    if standing is None:
        return r["camber_deg"] + roll
    toe, camber, roll, pitch = (math.radians(a) for a in (r["toe_deg"], r["camber_deg"], roll, r["pitch_deg"]))
    pitch += standing
    w = (math.sin(toe) * math.cos(camber), math.cos(toe) * math.cos(camber), -math.sin(camber))
    z = -math.sin(roll) * w[1] + math.cos(roll) * w[2]  # outwards: the wheel's own side goes down
    return math.degrees(-math.asin(math.cos(pitch) * z - math.sin(pitch) * w[0]))  # nose down


def deflect_relations(case, document):
    wrong, setting = [], {}
    read = json.load(open(f"{SOURCE}/{case}"))
    for r in document["results"]:
        alike = [other for other in document["results"] if other["kit"] == r["kit"]]
        standing = standing_pitch(read, alike) if "axles" in read else None
        where = f"{r['kit']} {r['corner']} {r['load']}"
        for angle in ("toe", "camber"):
            parts = sum(b[f"{angle}_share_deg"] for b in r["bushes"])
            parts += r["shares"][f"travel_{angle}_deg"] + r["shares"][f"geometry_{angle}_deg"]
            if not near(parts, r[f"{angle}_change_deg"], 1e-9):
                wrong.append(f"{where}: shares of {angle} add up to {parts}, not {r[f'{angle}_change_deg']}")
        if not near(r["camber_deg"] - r["camber_change_deg"], r["static_camber_deg"], 1e-9):
            wrong.append(f"{where}: camber less its change is not the static camber")
        toe = setting.setdefault((r["kit"], r["corner"]), r["toe_deg"] - r["toe_change_deg"])
        if not near(r["toe_deg"] - r["toe_change_deg"], toe, 1e-9):
            wrong.append(f"{where}: toe less its change differs from load to load")
        if "wheel" in r:
            if not near(r["camber_to_road_deg"], to_road(r, standing), 1e-9 if standing is None else 5e-6):
                wrong.append(f"{where}: camber to the road {r['camber_to_road_deg']} is not camber and roll")
            if abs(r["dive_mm"]) > 1e-9 and not any(b in r["load"] for b in ("sweep", "corner")) and abs(r["roll_deg"]) < 1e-9:
                if not near(r["dive_mm"], r["travel_mm"], 1e-6):
                    wrong.append(f"{where}: without roll the travel {r['travel_mm']} is the dive {r['dive_mm']}")
    verdict(f"deflect {case}: shares add up, angles less their changes are the setting, roll leans the wheel", wrong)


def slope(points, i, key):
    """By parabola through three neighbours."""
    figure = key if callable(key) else lambda p: p[key]
    return (figure(points[i + 1]) - figure(points[i - 1])) / (points[i + 1]["travel_mm"] - points[i - 1]["travel_mm"])


RATES = [("vertical_load_N", "wheel_rate_N_per_mm", 1.0), ("toe_deg", "toe_rate_deg_per_m", 1000.0),
         ("camber_deg", "camber_rate_deg_per_m", 1000.0)]


def travel_relations(case, document):
    wrong = []
    for r in document["results"]:
        points, where = r["points"], f"{r['kit']} {r['corner']}"
        for key, rate, times in RATES:
            largest = max(abs(p[rate]) for p in points)
            for i in range(2, len(points) - 2):
                two = times * slope(points, i, key)
                if not near(two, points[i][rate], 0.02 * largest):
                    wrong.append(f"{where} at {points[i]['travel_mm']}: {rate} {points[i][rate]}, slope {two}")
        for i in range(2, len(points) - 2):
            across, above = points[i]["front_view_swing_arm_mm"], points[i]["front_view_centre_above_wheel_centre_mm"]
            outward = slope(points, i, lambda p: p["wheel_centre_mm"][1])
            if across is not None and not near(outward, above / across, 0.01):
                wrong.append(f"{where} at {points[i]['travel_mm']}: the wheel centre goes out by {outward}, its instant centre says {above / across}")
        rest = r["ride_height"]
        for p in points:
            for angle in ("toe", "camber"):
                setting = rest[f"{angle}_deg"] - rest[f"{angle}_change_deg"]
                if not near(p[f"{angle}_deg"] - p[f"{angle}_change_deg"], setting, 1e-9):
                    wrong.append(f"{where}: {angle} less its change is not the setting")
            if not near(p["track_change_mm"], 2 * p["contact_patch_mm"][1], 1e-9):
                wrong.append(f"{where}: the track is not both patches")
            forward = p["wheel_centre_mm"][0] * (1 if r["corner"] == "front" else -1)
            if not near(p["wheelbase_change_mm"], forward, 1e-9):
                wrong.append(f"{where}: the wheelbase is not the wheel centre's movement")
        for b, bearing in enumerate(r["bearings"]):
            most = max(p["bearings"][b]["tilt_deg"] for p in points)
            if not near(most, bearing["tilt_deg"], 1e-9) or bearing["holds"] != (most <= bearing["limit_deg"]):
                wrong.append(f"{where} {bearing['joint']}: tilt {bearing['tilt_deg']}, largest of the places {most}")
            if not near(bearing["margin_deg"], bearing["limit_deg"] - bearing["tilt_deg"], 1e-9):
                wrong.append(f"{where} {bearing['joint']}: margin")
        if "parasitic_rate_N_per_mm" in rest and rest["parasitic_rate_N_per_mm"] is not None:
            if not 0 <= rest["parasitic_rate_N_per_mm"] < rest["wheel_rate_N_per_mm"]:
                wrong.append(f"{where}: the bushes' part of the wheel rate is {rest['parasitic_rate_N_per_mm']}")
    verdict(f"travel {case}: rates are slopes, track and wheelbase follow the wheel, tilt is the largest of all", wrong)


def main():
    for case in CASES:
        document = json.loads(run("deflect", case, "--format", "json"))
        csv_against_json("deflect", document, case)
        deflect_text(document, case)
        deflect_relations(case, document)
        document = json.loads(run("travel", case, "--format", "json"))
        csv_against_json("travel", document, case)
        travel_text(document, case)
        fine = json.loads(run("travel", case, "--step-mm", "2", "--format", "json"))
        travel_relations(case, fine)
    sys.exit(1 if bad else 0)


main()
