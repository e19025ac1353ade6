"""Told cases are played as a person would live them; the real ones are in `tests/published`."""

from dataclasses import replace

from tests.builders import ANYWHERE, make_pack
from triage.authoring.cases import Case, Expected
from triage.authoring.check_runner import CheckRunner
from triage.authoring.replay import danger_page, opening, replay
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, Band
from triage.engine.pack import Complaint

WANTED = Expected(("board-dead",), (Band.QUALIFIED,))


def test_what_the_case_does_not_tell_cannot_be_told():
    told = {"complaint": "stays-cold", "heats": "no-heat", "screen-shows": "letters"}
    found = replay(CheckRunner(make_pack(), ANYWHERE), Case("cold", "", told, WANTED))
    assert "heats" not in found.asked  # the start page's line has said it
    assert found.answered == len({"screen-shows"} & set(found.asked)) == 1
    assert len(found.asked) > 1
    assert found.case == "cold"


def test_a_caller_cut_short_answers_no_more_than_so_many():
    told = {"heats": "no-heat", "screen-shows": "letters", "lamp-state": "works", "control": "electronic"}
    walk = CheckRunner(make_pack(), ANYWHERE)
    whole, short = (replay(walk, Case("cold", "", told, WANTED), most) for most in (None, 1))
    assert whole.answered > short.answered == 1


def test_the_line_of_the_start_page_that_says_most_and_contradicts_nothing_is_taken():
    lines = (
        Complaint("stays-cold", {"heats": "no-heat"}, "cavity"),
        Complaint("stays-cold", {"heats": "no-heat", "lamp-state": "works"}, "cavity"),
        Complaint("stays-cold", {"heats": "less", "lamp-state": "works"}, "cavity"),
    )
    pack = replace(make_pack(), complaints=lines)
    told = {"complaint": "stays-cold", "heats": "no-heat", "lamp-state": "works"}
    assert opening(pack, told) == [*told.items()]
    assert opening(pack, {"complaint": "stays-cold"}) == [("complaint", "stays-cold"), ("heats", "no-heat")]
    assert opening(pack, told | {"heats": "normal"}) == [("complaint", "stays-cold")]
    assert opening(pack, {"heats": "normal"}) == opening(pack, {"complaint": CANT_TELL}) == []


def test_every_danger_sign_told_is_ticked_or_none():
    assert danger_page(make_pack(), {"shock": "felt-one", "sparks": "bright-spot", "heats": "less"}) == [
        ("shock", "felt-one"),
        ("sparks", "bright-spot"),
    ]
    assert danger_page(make_pack(), {"sparks": "one-flash"}) == [(SCREEN, NONE_OF_THESE)]
