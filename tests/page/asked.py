# SPDX-License-Identifier: MIT
"""What a test of charts and pages asks the program for, and how it says what it found."""
import json
import re
import subprocess
import sys

GIVEWAY, SOURCE, FOLDER = sys.argv[1:4]
failed = 0


def check(ok, what, detail=""):
    global failed
    failed += not ok
    print(f"{'ok' if ok else 'not ok'} - {what}{'' if ok or not detail else ': ' + str(detail)[:300]}")


def told(*args):
    return json.loads(subprocess.run([GIVEWAY, *args, "--format", "json", "--quiet"], check=True, capture_output=True, text=True).stdout)


def plain(text, of):
    """What a picture says with hyphens for minus signs, as numbers are read here; a hyphen of its own is a fault: it stood for a minus in every chart."""
    hyphens = re.findall(r"(?:^|[\s(/])-\d\S*", text)
    if hyphens:
        check(False, f"{of}: what is below zero has a minus sign, no hyphen", hyphens[:3])
    return text.replace("\u2212", "-")


def done():
    """The end of the test: status 1 where a check failed."""
    sys.exit(1 if failed else 0)
