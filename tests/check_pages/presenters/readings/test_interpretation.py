"""What figures mean in the words of the question, without an edge: near one, both neighbours are named."""

import pytest

from triage.check_pages.presenters.readings.interpretation import interpret
from triage.knowledge.library import library

PACK = library().pack


@pytest.mark.parametrize(
    ("observation", "text", "option"),
    [
        ("meter-power", "i0~j2000~p2050", "as-rated"),
        ("meter-power", "i100~j160~p2000", "near-zero"),
        ("fan-run-on", "h10~s12", "under-30-min"),
        ("fan-run-on", "h45~s45", "thirty-to-sixty"),
        ("paper-strip-test", "pgggggggg", "grips-all"),
    ],
)
def test_a_clear_reading_fits_one_answer(check_request, observation, text, option):
    seen = check_request("/?region=gb-eng")
    found = interpret(seen, PACK.observations[observation], text)
    assert found.clear
    assert found.best == seen.texts.questions[observation].options[option]


def test_at_an_edge_both_sides_are_named(check_request):
    seen = check_request("/?region=gb-eng")
    found = interpret(seen, PACK.observations["fan-run-on"], "h29~s31")
    options = seen.texts.questions["fan-run-on"].options
    assert not found.clear
    assert {found.best, found.next} == {options["under-30-min"], options["thirty-to-sixty"]}
