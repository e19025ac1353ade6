"""Nobody is sent to a board in the dark or on a ladder; a warning to keep away from it is always read.

The lines are those of the pack. Each that speaks of the board is on one side here, so that a new one is looked at.
"""

import pytest

from triage.desk.call.caller import (
    CALLER_CHOICES,
    board_unknown,
    is_with_oven,
    may_reach_board,
    mentions_board,
    sends_to_board,
)
from triage.knowledge.library import library

WARNINGS = (
    "Did a tap, a pipe or other metal tingle too? Then keep off the fuse box",
    "Do not go near the fuse box.",
    "Think back: did a tap, a pipe or other metal tingle too?",
    "Keep everyone away from the fuse box.",
    "Is the smell or heat at the meter?",
    "The registered electrician must make it safe. If the trouble is at the meter",
    "Do not open the fuse box.",
    "If the smell is at a plug, a wall switch or the fuse box, do not touch that.",
    "Leave the trip switch off",
    "Tell all at home to leave it off. Put a note on the fuse box.",
    "If the fuse box is hot, buzzes or smells, keep away",
    "Do not take the cover off the fuse box",
    "An old fuse box may have two fuses",
)


def lines_that_name_it(region):
    texts, place = library().texts_for(region), library().regions[region]
    lines = [line for flag in texts.flags.values() for line in (*flag.first, *flag.never, flag.then)]
    for supply in texts.isolation.supplies.values():
        lines += [*supply.steps, *supply.never, supply.cannot]
    return place, [line for line in dict.fromkeys(lines) if mentions_board(place, line)]


def test_every_line_that_names_the_board_either_warns_or_sends():
    place, lines = lines_that_name_it("gb-eng")
    staying = [line for line in lines if not sends_to_board(place, line)]
    assert [line for line in staying if not line.startswith(WARNINGS)] == []
    assert [line for line in lines if line.startswith(WARNINGS) and line not in staying] == []
    assert len(lines) - len(staying) >= 15


@pytest.mark.parametrize("region", library().regions)
def test_the_words_of_every_region_are_known(region):
    place, lines = lines_that_name_it(region)
    board = place.terms["board"]
    assert sends_to_board(place, f"Go to the {board} and switch off.")
    assert not sends_to_board(place, f"Do not go near the {board}.")
    assert len(lines) == len(lines_that_name_it("gb-eng")[1])


@pytest.mark.parametrize(
    ("caller", "reach", "unknown"),
    [
        ({}, False, True),
        ({"board": "yes"}, True, False),
        ({"board": "no"}, False, False),
        ({"board": "yes", "oven": "no"}, False, False),
        ({"oven": "no"}, False, False),
    ],
)
def test_not_known_counts_as_no(caller, reach, unknown):
    assert may_reach_board(caller) is reach
    assert board_unknown(caller) is unknown
    assert is_with_oven(caller) is (caller.get("oven") != "no")


def test_every_choice_has_words():
    assert all(str(words) for choices in CALLER_CHOICES.values() for words in choices.values())
