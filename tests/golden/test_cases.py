"""Named cases of the check: what it says after these answers is what a person wrote down, in `cases.yaml`.

Few and readable, so that whoever changes the pack or the reasoning sees what it does to people. The phone's engine says
the same as this one on thousands of trails (`test_parity.py`).
"""

from pathlib import Path

import pytest
import yaml

from tests.golden.recording import recorded
from triage.engine import run_check
from triage.knowledge.library import library

CASES = yaml.safe_load(Path(__file__).with_name("cases.yaml").read_text("utf-8"))
# What a case may say; what it leaves out is nothing.
NOTHING = {"asks": "", "reason": "", "flags": [], "band": "", "causes": [], "tasks": [], "problems": []}


def pairs_of(answers):
    return [tuple(pair.split("=", 1)) for pair in answers.split()]


@pytest.mark.parametrize("case", CASES, ids=[case["case"] for case in CASES])
def test_this_is_what_the_check_says(case):
    region = library().regions[case["region"]].region
    record = recorded(run_check(library().pack, region, pairs_of(case["answers"])))
    assert NOTHING | case["comes to"] == {
        "step": record["kind"],
        "asks": record["asks"][0] if record["asks"] else "",
        "reason": record["reason"] or "",
        "flags": record["flags"],
        "band": record["band"] or "",
        "causes": record["causes"],
        "tasks": record["tasks"],
        "problems": [kind for kind, *_ in record["problems"]],
    }


def test_every_kind_of_step_and_band_a_reading_and_many_regions_are_among_them():
    said = [case["comes to"] for case in CASES]
    assert {one["step"] for one in said} == {"Question", "Emergency", "Result", "OutOfScope"}
    assert {one.get("band") for one in said} == {None, "normal", "self-check", "qualified", "make-safe"}
    assert any("~" in case["answers"] for case in CASES)
    assert len({case["region"] for case in CASES}) > 12
