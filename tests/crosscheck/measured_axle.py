# SPDX-License-Identifier: MIT
"""
A bush whose measured curve is a straight line does what a bush of that rate does, on an axle whose wheels share rack,
subframe and bar: every figure of deflect and travel. measured_axle.py PROGRAM CASE
"""
import json, math, subprocess, sys
program, case = sys.argv[1:3]
c = json.load(open(case))
c.pop("choose", None); c.pop("jobs", None); c.pop("uncertain", None)
rate, axial, conical, torsional = 4000.0, 400.0, 3.0, 1.0
given = {"type": "rates", "radial_N_per_mm": [rate, rate], "axial_N_per_mm": axial, "conical_Nm_per_deg": [conical, conical],
         "torsional_Nm_per_deg": torsional, "loss_factor": 0.1, "dynamic_ratio": 1.3}
read = {"type": "measured", "radial": {"points": [[x, rate * x] for x in (-6, -3, 0, 3, 6)]},
        "axial_N_per_mm": axial, "conical_Nm_per_deg": [conical, conical], "torsional_Nm_per_deg": torsional, "loss_factor": 0.1,
        "dynamic_ratio": 1.3}
seen = 0
def same(a, b, at):
    global seen
    if isinstance(a, dict):
        assert a.keys() == b.keys(), (at, a.keys() ^ b.keys())
        for k in a: same(a[k], b[k], at + "." + k)
    elif isinstance(a, list):
        assert len(a) == len(b), at
        for i, (x, y) in enumerate(zip(a, b)): same(x, y, f"{at}[{i}]")
    elif isinstance(a, float) and isinstance(b, (int, float)):
        seen += 1
        assert abs(a - b) <= 1e-7 * max(abs(a), 1.0), (at, a, b)
for command in (["deflect", "--kit", "rubber"], ["travel", "--kit", "rubber", "--corner", "front"],
                ["travel", "--kit", "rubber", "--wheels", "opposite"]):
    told = []
    for name, bush in (("given", given), ("read", read)):
        c["bushes"]["lateral_rubber"] = dict(bush, price=10, fit_minutes=20)
        json.dump(c, open(name + ".json", "w"))
        out = subprocess.run([program, command[0], name + ".json", *command[1:], "--format", "json", "--quiet"], capture_output=True, text=True)
        assert out.returncode == 0, out.stderr
        told.append(json.loads(out.stdout)["results"])
    same(*told, command[0])
assert seen > 1000, seen
