# SPDX-License-Identifier: MIT
"""A demonstration car with a choice of three bushes at five or ten places: bench_choose.py 5|10, for bench.sh."""
import json
import sys

FRONT = {"arm_front": ("arm_front_rubber", "arm_front_poly", "arm_bearing"),
         "arm_rear": ("arm_rear_rubber", "arm_rear_poly", "arm_bearing"),
         "rack_left": ("rack_rubber", "rack_poly", "rack_solid"), "rack_right": ("rack_rubber", "rack_poly", "rack_solid"),
         "strut_top": ("top_rubber", "top_poly", "top_bearing")}
REAR = {"trailing_front": ("trailing_rubber", "trailing_poly", "trailing_bearing"),
        "lower_inner": ("link_rubber", "link_poly", "arm_bearing"), "toe_inner": ("toe_rubber", "toe_poly", "link_bearing"),
        "camber_inner": ("camber_rubber", "camber_poly", "link_bearing"),
        "camber_outer": ("camber_rubber", "camber_poly", "link_bearing")}

case = json.load(open("tests/cases/hatchback-by-rule.json"))
axles = {"front": FRONT, "rear": REAR} if sys.argv[1] == "10" else {"front": FRONT}
if sys.argv[1] == "10":
    case["vehicle"].pop("load_transfer", None)
case["choose"] = {
    "among": [{"joints": [f"{axle}.{joint}"], "bushes": list(bushes)} for axle, of in axles.items() for joint, bushes in of.items()],
    "goals": [{"load": load, "figure": "toe_change_deg"} for load in ("hard stop", "roundabout")],
    "tell_apart": {"unsteadiness": 0.01, "harshness_dB": 0.5}}
json.dump(case, sys.stdout)
