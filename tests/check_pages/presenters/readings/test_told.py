"""What figures mean in the words of the question, without an edge: near one, both neighbours are named."""

import pytest

from triage.check_pages.presenters.readings.told import meaning
from triage.knowledge.library import library

PACK = library().pack


@pytest.mark.parametrize(
    ("observation", "text", "words"),
    [
        ("meter-power", "i0~j2000~p2050", "Power drawn: this fits “About what its manual gives”."),
        ("meter-power", "i100~j160~p2000", "Power drawn: this fits “Next to nothing, just lamp and fan”."),
        ("fan-run-on", "h10~s12", "Fan after switch-off: this fits “Less than 30 minutes”."),
        ("fan-run-on", "h45~s45", "Fan after switch-off: this fits “30 to 60 minutes”."),
        ("paper-strip-test", "pgggggggg", "Paper strip test: this fits “Grips all round”."),
    ],
)
def test_a_clear_reading_fits_one_answer(check_request, observation, text, words):
    assert meaning(check_request("/?region=gb-eng"), PACK.observations[observation], text) == words


def test_at_an_edge_both_sides_are_named(check_request):
    told = meaning(check_request("/?region=gb-eng"), PACK.observations["fan-run-on"], "h29~s31")
    assert "lies between" in told
    assert "Less than 30 minutes" in told
    assert "30 to 60 minutes" in told
