"""The strictest rule on switches holds for the page, and a flag that forbids them all speaks alone."""

from tests.household.checks_done import address
from triage.check_pages.presenters.flags import first_of, never_of, note_of, sort_out, urgent_first
from triage.knowledge.library import library

FLAGS = library().pack.red_flags


def test_flags_that_allow_switches_all_act_in_their_order():
    raised = sort_out([FLAGS["hot-plug"], FLAGS["burning-smell"]])
    assert [flag.id for flag in raised.acting] == ["hot-plug", "burning-smell"]
    assert raised.away
    assert not raised.bare


def test_a_flag_that_forbids_switches_speaks_alone_and_emergencies_are_told_on_the_telephone():
    raised = sort_out([FLAGS["gas-smell"], FLAGS["fire-inside"], FLAGS["burning-smell"]])
    assert [flag.id for flag in raised.acting] == ["gas-smell"]
    assert [flag.id for flag in raised.told] == ["fire-inside"]
    assert raised.bare


def test_a_hot_board_forbids_switches_but_nobody_has_to_leave():
    assert not sort_out([FLAGS["hot-fuse-board"]]).bare


def test_the_first_action_of_a_graver_flag_stands_before_what_one_that_forbids_switches_says(check_request):
    seen = check_request(address())
    raised = sort_out([FLAGS["shut-in"], FLAGS["hot-fuse-board"], FLAGS["burning-smell"]])
    assert [flag.id for flag in raised.told] == ["shut-in"]
    (first,) = urgent_first(seen, raised)
    assert first.text == seen.texts.flags["shut-in"].first[0]
    assert urgent_first(seen, sort_out([FLAGS["gas-smell"], FLAGS["shut-in"]])) == []


def test_while_one_flag_says_away_no_other_sends_anybody_to_the_plug(check_request):
    seen = check_request(address(supply="plug-in"))
    smell = FLAGS["burning-smell"]
    near = repr([first_of(seen, smell, away=False), never_of(seen, smell, away=False)])
    far = repr(note_of(seen, smell, away=True))
    assert "Pull the plug out" in near
    assert "Pull the plug out" not in far
    assert "Do not pull the oven out to find its plug." in far
