"""Kept steps: both engines still say what was said when somebody last looked.

A change of the pack or of the reasoning changes them: run `python -m tests.golden` and read the difference.
"""

from collections import Counter

from tests.golden.kept_steps import QUOTAS, brief, read
from tests.golden.phone_engine import all_regions, phone_engine, records_on_phone
from tests.golden.recording import differences, recorded
from tests.safety.forging import with_retired_questions
from triage.engine import run_check
from triage.knowledge.library import library

LINES = read()


def apart(records):
    """Each difference between what was kept and `records`, with its trail."""
    return [
        f"{sentence}\n  in {line['region']} after {line['trail']}"
        for line, record in zip(LINES, records, strict=True)
        for sentence in differences(line["step"], brief(record))
    ]


def test_python_says_what_was_kept():
    pack, regions = with_retired_questions(), library().regions
    assert apart(recorded(run_check(pack, regions[line["region"]].region, line["trail"])) for line in LINES)[:5] == []


def test_the_phone_says_what_was_kept(page):
    trails = [[line["region"], line["trail"]] for line in LINES]
    with phone_engine(page, with_retired_questions(), all_regions()) as desk:
        assert apart(records_on_phone(page, desk, [trails])[0])[:5] == []


def test_a_difference_would_be_seen():
    """Each part of a record is compared, numbers only where they are more apart than engines may be."""
    line = next(line for line in LINES if line["step"]["kind"] == "Result" and line["step"]["weights"])
    step = line["step"]
    assert differences(step, step) == []
    for part in step:
        assert differences(step, step | {part: "something else"}) != []
    shifted = {**step, "chances": [chance + 2e-9 for chance in step["chances"]]}
    assert [sentence.split(":")[0] for sentence in differences(step, shifted)] == ["chances"]
    assert differences(step, step | {"chances": [chance + 5e-10 for chance in step["chances"]]}) == []
    assert differences(step, step | {"weights": step["weights"][:-1]}) != []


def test_every_kind_of_step_and_a_reading_are_kept():
    kinds = Counter(line["step"]["kind"] for line in LINES)
    assert set(kinds) == set(QUOTAS)
    assert min(kinds.values()) >= min(QUOTAS.values())
    gauged = {o.id for o in library().pack.observations.values() if o.gauge}
    answers = [answer for line in LINES for answer in line["step"]["answers"]]
    assert any(name in gauged and "~" in told for name, told in answers)
