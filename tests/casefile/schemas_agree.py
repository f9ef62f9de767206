# SPDX-License-Identifier: MIT
"""
Reader and schema over the same samples: schemas_agree.py SAY_FAULTS FOLDER_OF_KEPT_SAMPLES

Three sorts of samples: those that the unit tests hand to the reader, the sound ones of the source tree, and each of
these spoilt at each place in turn. Where the schema accepts what the reader refuses, every fault must be one that a
schema cannot express; these are listed with the reason. Nothing that the reader accepts may be refused.
"""
import copy
import json
import math
import re
import subprocess
import sys
import tempfile
from pathlib import Path

from jsonschema import Draft202012Validator

from schemas import SOURCE, Tally, errors, leaves, load

# Faults that only the reader can find: what its message says, and why no schema can.
NAMES = "a name that must stand elsewhere in the file: a schema compares no two places"
SUMS = "two numbers of the file are compared: a schema knows only constants"
READER_ONLY = [
    (r"this key is given more than once", "a parser keeps one of two equal keys before a schema sees them"),
    (r"expected the name of a bush under", NAMES),
    (r"expected the name of a point under", NAMES),
    (r"expected the name of a kit", NAMES),
    (r"expected the name of a load, found", NAMES),
    (r"expected the name of a material", "the names are those of the material files"),
    (r"expected \"chassis\", \"upright\" or one of \"members\"", NAMES),
    (r"the (front|rear) corner has no joint", NAMES),
    (r"expected \"chassis\", a member of the axle, or a body of a corner", NAMES),
    (r"expected \"chassis\" or a member of this axle", NAMES),
    (r"say of which side", NAMES),
    (r"both wheels share .*, so it has no side", NAMES),
    (r"expected \"upright\" or a member of the (front|rear) corner after", NAMES),
    (r"the axle has a member of this name too", NAMES),
    (r"names are unique within a corner and its axle", NAMES),
    (r"is one joint, not one of each side", NAMES),
    (r"y is below 0: write the joint of the left side", "depends on \"mirrored\" and on a point that a name leads to"),
    (r"give it for front and rear: without both corners", "depends on corners, tyres and loads together"),
    (r"there is no (front|rear) corner", NAMES),
    (r"there is another (joint|kit|load) of this name", NAMES),
    (r"there is one of that name: rename", NAMES),
    (r"kits go round in a circle", NAMES),
    (r"no joint names this member", NAMES),
    (r"expected a joint that names the upright", NAMES),
    (r"no chain of joints leads from", NAMES),
    (r"are all at the same place", SUMS),
    (r"are the same place, so that it has no direction", SUMS),
    (r"expected a direction across \"axis\"", "the angle between two vectors"),
    (r"expected one of the two bodies of \"between\"", NAMES),
    (r"must name in \"housing\"", "depends on the bush that a name leads to"),
    (r"uncertain\[\d+\][a-z_.0-9\[\]]*: (leads to nothing|expected a path|the same path|uncertain\[|this is|expected a "
     r"figure above 0|expected \"|expected a bush or|three numbers|the compound|a hardness of|nothing gives way)",
     "what a path leads to, and which unit suits that"),
    (r"choose\S*: (a choice fits both|this choice is of|this joint stands|this bush stands|expected the name of a load|this load (acts on|does "
     r"not tell)|the wheels of a|camber to the road is|a bush on offer needs|a kit's bush is on offer|the kits differ in "
     r"no|without \"ride\"|the first kit fits|goals are all in|the weights are all 0)", NAMES),
    (r"the case has no joint", NAMES),
    (r"expected a joint like", NAMES),
    (r"caster is given on one side", "a key of one object that depends on another object"),
    (r"a caster angle is reached from|the target has caster_change_deg as well", "a key that depends on another object"),
    (r"differs by more than 1 %", SUMS),
    (r"expected more than inner_diameter_mm", SUMS),
    (r"expected less than half of length_mm", SUMS),
    (r"expected at most the .* mm of rubber", SUMS),
    (r"expected less than the .* mm of rubber", SUMS),
    (r"expected a sleeve with rubber on both sides", SUMS),
    (r"expected at most half of diameter_mm", SUMS),
    (r"expected less than diameter_mm", SUMS),
    (r"expected less than ball_diameter_mm", SUMS),
    (r"expected less than mass_kg", SUMS),
    (r"its sidewall would be softer than the whole tyre", SUMS),
    (r"expected the least and then the greatest", SUMS),
    (r"expected more than temperature_min_C", SUMS),
    (r"in \"interference_um\" instead", "the ranges of diameter of ISO 286"),
    (r"expected a member with two joints", NAMES),
    (r"the member is only .* mm long", SUMS),
    (r"expected (at least|more than) min_mm", SUMS),
    (r"expected a joint on the chassis", NAMES),
    (r"larger than the housing", SUMS),
    (r"are more than the \d+ that are allowed", "comments are not counted"),
    (r"cannot be read: ", "another file"),
    (r"rise strictly from point to point", SUMS),
    (r"two points or more, \(0, 0\) not counted", SUMS),
    (r"expected a file of", "what stands in another file"),
    (r"a test across a bush that has no rate", SUMS),
    (r"points of gauge", "what the material files hold"),
    (r"the material \".*\" has no", "what a material file holds"),
]

# Places of every-key.json spoilt by hand, for faults that no unit test of the reader and no blind change meets.
BY_HAND = [
    (("bushes", "rubber", "press_fit", "sleeve_wall_mm"), 23),
    (("bushes", "rubber", "press_fit", "bore_mm"), 45),
    (("bushes", "rubber", "press_fit", "diameter_mm"), 600),
    (("bushes", "poly", "press_fit", "interference_um"), [60, 20]),
    (("bushes", "poly", "material"), "bare"),
    (("align", "front", "adjusters", 0, "max_mm"), 40),
    (("vehicle", "tyre_table", "front"), "nowhere.csv"),
    (("bushes", "pressed", "axial", "points"), [[0, 0], [2, 500], [1, 600]]),
    (("bushes", "pressed", "axial", "points"), [[0, 0], [2, 500]]),
    (("bushes", "pressed", "radial", "file"), "rig.csv"),
    (("bushes", "pressed", "dynamic", "file"), "press.csv"),
    (("bushes", "turned", "radial_N_per_mm"), 0),
    (("corners", "front", "wheel", "tyre_belt_Hz"), 20),
    (("corners", "front", "wheel", "tyre_mass_kg"), 300),
]

FOLDER = "src/casefile/schema"
CASE = load(f"{FOLDER}/giveway-case-1.schema.json")
MATERIAL = load(f"{FOLDER}/giveway-material-1.schema.json")
SCHEMAS = {"case": Draft202012Validator(CASE), "material": Draft202012Validator(MATERIAL)}


class Samples:
    """Compares verdicts, and remembers which faults were excused and which were not."""

    def __init__(self):
        self.used, self.wrong, self.count = set(), [], 0

    def compare(self, kind, name, document, faults):
        self.count += 1
        said = errors(SCHEMAS[kind], document)
        if said and not faults:
            self.wrong.append(f"{name}: the reader takes it, the schema does not: {said[0]}")
        if faults and not said:
            for fault in faults:
                if not self.excused(fault):
                    self.wrong.append(f"{name}: the schema takes it, the reader does not: {fault}")

    def excused(self, fault):
        for pattern, _ in READER_ONLY:
            if re.search(pattern, fault):
                self.used.add(pattern)
                return True
        return False


class Reader:
    """The program's own reader, asked with a file: one process answers all (say_faults.c)."""

    def __init__(self, program):
        self.process = subprocess.Popen([program], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
        self.folder = tempfile.TemporaryDirectory()
        self.case = Path(self.folder.name) / "case.json"
        self.plain = Path(self.folder.name) / "plain.json"
        self.plain.write_text('{"format":"giveway-case-1","title":"t","bushes":{}}')
        self.materials = Path(self.folder.name) / "materials"
        self.materials.mkdir()
        self.others = Path(self.folder.name) / "others"
        self.others.mkdir()
        (self.others / "bare.json").write_text('{"format":"giveway-material-1","name":"bare"}')
        for folder in ("cases", "tests/casefile/samples"):
            for table in (SOURCE / folder).glob("*.csv"):
                (Path(self.folder.name) / table.name).write_bytes(table.read_bytes())
        (Path(self.folder.name) / "parts").mkdir()
        shelf = SOURCE / "tests/casefile/samples/parts/shop.json"
        (Path(self.folder.name) / "parts" / shelf.name).write_bytes(shelf.read_bytes())
        for table in (SOURCE / "cases").glob("*.csv"):
            (Path(self.folder.name) / table.name).write_bytes(table.read_bytes())

    def faults(self, kind, document):
        text = json.dumps(document)
        if kind == "case":
            self.case.write_text(text)
            return self.ask(self.case, self.others)
        (self.materials / "own.json").write_text(text)
        return self.ask(self.plain, self.materials)

    def ask(self, path, materials):
        self.process.stdin.write(f"{path}\t{materials}\n")
        self.process.stdin.flush()
        said = []
        while line := self.process.stdout.readline():
            if line == "\n":
                return said
            said.append(line.rstrip("\n"))
        raise SystemExit(f"the reader ended with {self.process.wait()}")


def kept_samples(folder, samples):
    """Every text that a unit test has handed to the reader."""
    for path in sorted(folder.rglob("*.json")):
        kind = path.name.split("-")[0]
        document = json.loads(path.read_text(encoding="utf-8-sig", errors="replace"))
        faults = path.with_suffix(".faults").read_text(errors="replace").splitlines()
        samples.compare(kind, f"{path.parent.name}/{path.stem}", document, faults)


def sound_samples():
    """Those of the source tree: kind, name, document."""
    for folder, kind in (("tests/casefile/samples", "case"), ("cases", "case"), ("tests/cases", "case"), ("materials", "material")):
        for path in sorted((SOURCE / folder).glob("*.json")):
            yield kind, path.stem, json.loads(path.read_text())


def places(document, path=()):
    """Every place below the top, as a path."""
    entries = document.items() if isinstance(document, dict) else enumerate(document)
    for key, value in entries:
        if str(key).startswith("//"):
            continue
        yield path + (key,)
        if isinstance(value, (dict, list)):
            yield from places(value, path + (key,))


def value_at(document, path):
    for step in path:
        document = document[step]
    return document


def changed(document, path, value):
    copied = copy.deepcopy(document)
    holder = value_at(copied, path[:-1])
    if value is None:
        del holder[path[-1]]
    else:
        holder[path[-1]] = value[0]
    return copied


def spoilt(document, path):
    """The document with one place spoilt, in each way that makes sense there."""
    value = value_at(document, path)
    yield "left out", changed(document, path, None)
    yield "null", changed(document, path, [None])
    if isinstance(value, dict):
        yield "with a key nobody knows", changed(document, path, [{**value, "zzzz": 1}])
    if isinstance(value, (dict, list)):
        yield "a text", changed(document, path, ["text"])
    if not isinstance(value, dict):
        yield "an empty list", changed(document, path, [[]])
    if isinstance(value, str):
        yield "empty", changed(document, path, [""])
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        yield "negative", changed(document, path, [-abs(value) - 0.25])


def kind_of_place(document, path):
    """Places that the same rule is about, so that one of them is enough: entries and names are taken as one."""
    steps = [key for key in path if isinstance(key, str) and key not in ("front", "rear")]
    holder = value_at(document, path[:-1])
    word = next((holder[k] for k in ("type", "kind") if isinstance(holder, dict) and k in holder), "")
    names = {"points_mm", "members", "bushes", "fits"}
    general = ["*" if i and steps[i - 1] in names else step for i, step in enumerate(steps)]
    return tuple(general), word, len(path) - len(steps)


def spoil_everything(samples, reader):
    seen = set()
    whole = json.loads((SOURCE / "tests/casefile/samples/every-key.json").read_text())
    for path, value in BY_HAND:
        bad = changed(whole, path, [value])
        faults = reader.faults("case", bad)
        if not faults:
            samples.wrong.append(f"every-key: {path[-1]} {value}: the reader takes it")
        samples.compare("case", f"every-key: {path[-1]} {value}", bad, faults)
    for kind, name, document in sound_samples():
        if kind == "material" and name not in ("nr-50", "steel"):
            continue  # one with all keys and one with few stand for the rest
        for path in places(document):
            rule = kind, kind_of_place(document, path)
            if rule in seen:
                continue
            seen.add(rule)
            for way, bad in spoilt(document, path):
                where = ".".join(str(step) for step in path)
                samples.compare(kind, f"{name}: {where} {way}", bad, reader.faults(kind, bad))


def spoken_range(fault):
    """The range that a message states: "a number above 0 and at most 5000"."""
    found = re.search(r"a number (above|at least) (\S+) and (at most|below) ([^\s,]+)", fault)
    if not found:
        return None
    return found[1], float(found[2]), found[3], float(found[4])


def schema_ranges(kind, document, path):
    """The ranges that the schema holds against the number at `path`."""
    ranges = set()
    for error in SCHEMAS[kind].iter_errors(document):
        for leaf in leaves(error):
            rule = leaf.schema
            if list(leaf.absolute_path) != list(path) or not {"maximum", "exclusiveMaximum"} & set(rule):
                continue
            low = ("above", rule["exclusiveMinimum"]) if "exclusiveMinimum" in rule else ("at least", rule["minimum"])
            high = ("below", rule["exclusiveMaximum"]) if "exclusiveMaximum" in rule else ("at most", rule["maximum"])
            ranges.add(low + high)
    return ranges


def same(a, b):
    """Two ranges, one of them as a message prints it, with six digits."""
    return a[0::2] == b[0::2] and all(math.isclose(x, y, rel_tol=1e-5) for x, y in zip(a[1::2], b[1::2]))


def ranges_agree(reader, tally):
    """Every number made enormous: the range in the reader's message is that in the schema."""
    wrong, count, seen = [], 0, set()
    for kind, name, document in sound_samples():
        for path in places(document):
            value = value_at(document, path)
            rule = kind, kind_of_place(document, path)
            if isinstance(value, bool) or not isinstance(value, (int, float)) or rule in seen:
                continue
            seen.add(rule)
            count += 1
            bad = changed(document, path, [1e300])
            said = [r for r in map(spoken_range, reader.faults(kind, bad)) if r]
            held = schema_ranges(kind, bad, path)
            narrower = said_in_two_parts(path)
            if not said or len(held) != 1 or not (same(said[0], next(iter(held))) or narrower):
                wrong.append(f"{name}: {'.'.join(map(str, path))}: reader {said[:1]}, schema {sorted(held)}")
    tally.verdict(not wrong and count > 100, f"{count} numbers have the same range in reader and schema", wrong)


def spoken_words(fault):
    """The words that a message offers: expected "outer" or "inner", found ..."""
    found = re.search(r'expected ((?:"[^"]+"(?:, | or )?)+), found', fault)
    return set(re.findall(r'"([^"]+)"', found[1])) if found else set()


def schema_words(kind, document, path):
    """The words that the schema allows at `path`."""
    words = set()
    for error in SCHEMAS[kind].iter_errors(document):
        for leaf in leaves(error):
            if list(leaf.absolute_path) == list(path):
                words.update(leaf.schema.get("enum", []), [leaf.schema["const"]] if "const" in leaf.schema else [])
    return words


def words_agree(reader, tally):
    """Every text made one that nobody knows: the words in the reader's message are those in the schema."""
    wrong, count, seen = [], 0, set()
    for kind, name, document in sound_samples():
        for path in places(document):
            rule = kind, kind_of_place(document, path)
            if not isinstance(value_at(document, path), str) or rule in seen:
                continue
            seen.add(rule)
            bad = changed(document, path, ["zzzz"])
            said = set().union(*map(spoken_words, reader.faults(kind, bad)))
            held = schema_words(kind, bad, path)
            count += bool(said)
            if said != held:
                wrong.append(f"{name}: {'.'.join(map(str, path))}: reader {sorted(said)}, schema {sorted(held)}")
    tally.verdict(not wrong and count > 10, f"{count} choices have the same words in reader and schema", wrong)


def said_in_two_parts(path):
    """Where the reader says the one half of a rule in a message of its own."""
    return path[-2:] == ("centre_mm", 1) or "interference_um" in path[-2:]


def keys_in(document, found):
    if isinstance(document, dict):
        for key, value in document.items():
            found.add(key)
            keys_in(value, found)
    elif isinstance(document, list):
        for value in document:
            keys_in(value, found)


def described_keys(schema, found):
    if isinstance(schema, dict):
        for key, value in schema.items():
            if key == "properties":
                found.update(name for name, rule in value.items() if rule is not False)
            described_keys(value, found)
    elif isinstance(schema, list):
        for value in schema:
            described_keys(value, found)


def samples_hold_every_key(tally):
    for kind, schema in (("case", CASE), ("material", MATERIAL)):
        described, there = set(), set()
        described_keys(schema, described)
        for sort, _, document in sound_samples():
            if sort == kind:
                keys_in(document, there)
        lacking = sorted(described - there)
        tally.verdict(not lacking, f"the sound samples of a {kind} hold every key of the schema", lacking)


def values_are_the_same(tally):
    """A material in a case and one in a file know the same values, within the same ranges."""
    in_case = CASE["$defs"]["compound"]["properties"]
    in_file = {k: v for k, v in MATERIAL["properties"].items() if "allOf" in v}
    wrong = sorted(set(in_case) - {"label"} ^ set(in_file))
    wrong += [k for k in in_file if k in in_case and in_case[k]["then"] != in_file[k]["allOf"][1]["properties"]["value"]]
    tally.verdict(not wrong, "a material has the same values in a case and in a file", wrong)


def main():
    program, kept = sys.argv[1], Path(sys.argv[2])
    tally, samples, reader = Tally(), Samples(), Reader(program)
    samples_hold_every_key(tally)
    values_are_the_same(tally)
    for kind, name, document in sound_samples():
        faults = reader.faults(kind, document)
        tally.verdict(not faults, f"{name} is sound", faults)
        samples.compare(kind, name, document, faults)
    kept_samples(kept, samples)
    from_tests = samples.count
    tally.verdict(from_tests > 200 and not samples.wrong, f"{from_tests} written samples get one verdict", samples.wrong)
    spoil_everything(samples, reader)
    made = samples.count - from_tests
    tally.verdict(made > 800 and not samples.wrong, f"{made} samples spoilt in one place get one verdict", samples.wrong)
    ranges_agree(reader, tally)
    words_agree(reader, tally)
    idle = [pattern for pattern, _ in READER_ONLY if pattern not in samples.used]
    tally.verdict(not idle, "every fault that is left to the reader has a sample", idle)
    tally.leave()


main()
