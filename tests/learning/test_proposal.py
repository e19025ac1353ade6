"""What a person reads before accepting."""

from dataclasses import replace

import pytest

from tests.builders import PACK
from tests.learning.visits import SMALL_REGIONS, visit
from triage.learning.cross_validation import compare
from triage.learning.fit import prepare
from triage.learning.proposal import Proposal, as_json_ready, as_lines, rate_changes, row_changes

OUTCOMES = [
    visit("lamp-failed", {"complaint": "nothing-right", "lamp-state": "works"}, f"visit-{n}", first_visit=n % 2 == 0)
    for n in range(40)
]


def proposal(outcomes=OUTCOMES, firm=""):
    lesson = prepare(PACK, SMALL_REGIONS, outcomes, firm)
    return Proposal(firm, lesson, lesson.numbers(range(len(lesson.outcomes))), compare(lesson, PACK))


def test_the_largest_changes_come_first():
    told = proposal()
    fault, before, after, found = rate_changes(told)[0]
    assert (fault, before, found) == ("lamp-failed", 8.0, 40)
    assert after > 20.0
    assert sum(row[3] for row in rate_changes(told)) == 40
    sizes = [change.size for change in row_changes(told)]
    assert sizes == sorted(sizes, reverse=True)
    assert str(row_changes(told)[0]).startswith("lamp-state answered when dark: out 0.950 -> 0.8")


def test_people_are_told_how_many_outcomes_how_much_better_and_what_moves():
    lines = as_lines(proposal()).splitlines()
    assert lines[0] == "40 outcomes of all firms, from 2026-03-01 to 2026-03-01."
    assert lines[1] == "Fixed at the first visit: 20 of 40, 50.0 % (35.2 to 64.8)."
    assert any(line.startswith("  The log score falls by ") and line.endswith("is better.") for line in lines)
    assert "Calls per 1000 that change most:" in lines


def test_a_proposal_that_is_no_better_says_so():
    odd = [replace(outcome, answers={}) for outcome in OUTCOMES[:1]]
    text = as_lines(proposal(odd))
    assert "The proposal is not shown to be better." in text


def test_a_firm_is_named():
    outcomes = [replace(outcome, firm="north") for outcome in OUTCOMES[:10]] + OUTCOMES[10:]
    assert as_lines(proposal(outcomes, "north")).startswith("10 outcomes of north, shrunk to all other firms, from")


def test_the_same_as_plain_values():
    told = proposal()
    plain = as_json_ready(told)
    assert plain["outcomes"] == 40
    assert plain["held_out"]["before"]["log_score"] == pytest.approx(told.comparison.before.log_score)
    assert plain["calls"][0]["fault"] == "lamp-failed"
    assert {"what", "names", "before", "after"} <= plain["rows"][0].keys()


def test_the_overlay_to_be_carries_the_scores():
    overlay = proposal().overlay("abc")
    assert (overlay.pack, overlay.rules, overlay.outcomes, overlay.accepted_by) == (PACK.id, "abc", 40, "")
    assert overlay.log_score[1] < overlay.log_score[0]
