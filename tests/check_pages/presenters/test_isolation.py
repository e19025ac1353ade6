"""Cutting the supply follows what was said of it, and takes the careful way when nothing was."""

import pytest

from tests.household.checks_done import address
from triage.check_pages.presenters.isolation import (
    full_isolation,
    instruction_notes,
    instruction_text,
    instructions,
    isolation_steps,
    supply_text,
)
from triage.knowledge.library import library

KNOWN = library().texts_for("gb-eng").isolation.supplies


@pytest.mark.parametrize(
    ("answers", "supply"),
    [
        ({"supply": "plug-in"}, "plug-in"),
        ({"supply": "hard-wired"}, "hard-wired"),
        ({"supply": "cant-tell"}, "unknown"),
        ({}, "unknown"),
    ],
)
def test_the_steps_are_those_of_this_supply(check_request, answers, supply):
    assert supply_text(check_request(address(**answers))) is KNOWN[supply]


def test_away_from_the_trouble_means_at_the_board_even_with_a_plug(check_request):
    assert supply_text(check_request(address(supply="plug-in")), away=True) is KNOWN["unknown"]


def test_what_to_do_if_it_cannot_be_done_and_the_local_note_stand_under_the_steps(check_request):
    seen = check_request(address(supply="plug-in"))
    cut = isolation_steps(seen, "Cut the power:")
    assert cut.parts == KNOWN["plug-in"].steps
    assert instruction_notes(cut) == ["If you can’t do that: " + KNOWN["plug-in"].cannot, seen.region.isolation_note]


def test_the_line_for_cutting_the_supply_becomes_the_steps_of_the_line_before_it(check_request):
    seen = check_request(address())
    first, second = instructions(seen, ["Cut it:", "{isolate}", "Leave it off."])
    assert (first.text, first.parts) == ("Cut it:", KNOWN["unknown"].steps)
    assert (second.text, second.parts) == ("Leave it off.", ())
    (alone,) = instructions(seen, ["{isolate}"])
    assert instruction_text(alone) == "Cut the power:"
    assert instruction_notes(second) == []


@pytest.mark.parametrize("supply", ["plug-in", "hard-wired", "cant-tell"])
def test_before_a_task_all_there_is_to_know_of_cutting_the_supply_is_said(check_request, supply):
    seen = check_request(address(supply=supply))
    text, known = supply_text(seen), seen.texts.isolation
    off = full_isolation(seen)
    assert (off.steps.parts, off.prohibitions, off.cannot_tell) == (text.steps, text.never, text.looks_off)
    assert (off.before, off.also) == (known.always, known.other_sources)
