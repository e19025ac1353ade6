"""The strictest rule on switches holds for the page, and a flag that forbids them all speaks alone."""

from tests.household.checks_done import address
from triage.check_pages.presenters.flags import (
    flag_note,
    flag_prohibitions,
    flag_steps,
    graver_flags_first,
    prioritise_flags,
)
from triage.knowledge.library import library

FLAGS = library().pack.red_flags


def test_flags_that_allow_switches_all_act_in_their_order():
    raised = prioritise_flags([FLAGS["hot-plug"], FLAGS["burning-smell"]])
    assert [flag.id for flag in raised.primary] == ["hot-plug", "burning-smell"]
    assert raised.isolate_remotely
    assert not raised.evacuate


def test_a_flag_that_forbids_switches_speaks_alone_and_emergencies_are_told_on_the_telephone():
    raised = prioritise_flags([FLAGS["gas-smell"], FLAGS["fire-inside"], FLAGS["burning-smell"]])
    assert [flag.id for flag in raised.primary] == ["gas-smell"]
    assert [flag.id for flag in raised.mentioned] == ["fire-inside"]
    assert raised.evacuate


def test_a_hot_board_forbids_switches_but_nobody_has_to_leave():
    assert not prioritise_flags([FLAGS["hot-fuse-board"]]).evacuate


def test_the_first_action_of_a_graver_flag_stands_before_what_one_that_forbids_switches_says(check_request):
    seen = check_request(address())
    raised = prioritise_flags([FLAGS["shut-in"], FLAGS["hot-fuse-board"], FLAGS["burning-smell"]])
    assert [flag.id for flag in raised.mentioned] == ["shut-in"]
    (first,) = graver_flags_first(seen, raised)
    assert first.text == seen.texts.flags["shut-in"].first[0]
    assert graver_flags_first(seen, prioritise_flags([FLAGS["gas-smell"], FLAGS["shut-in"]])) == []


def test_while_one_flag_says_away_no_other_sends_anybody_to_the_plug(check_request):
    seen = check_request(address(supply="plug-in"))
    smell = FLAGS["burning-smell"]
    near = repr([flag_steps(seen, smell, away=False), flag_prohibitions(seen, smell, away=False)])
    far = repr(flag_note(seen, smell, away=True))
    assert "Pull the plug out" in near
    assert "Pull the plug out" not in far
    assert "Do not pull the oven out to find its plug." in far
