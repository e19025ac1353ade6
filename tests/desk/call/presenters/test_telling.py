"""The lines that are read are the householder's own advice, in order, as far as they can be done."""

import pytest

from tests.desk.call.reading_aloud import read_everything
from tests.household.checks_done import answers_of
from triage.check_pages.presenters.advice import advice_page, checks_below
from triage.check_pages.presenters.make_safe import make_safe_page
from triage.desk.call.caller import sends_to_board
from triage.desk.call.presenters.telling import advice, make_safe, not_this
from triage.knowledge.library import library

STOPS = [flag for flag in library().pack.red_flags.values() if flag.level.ends_check and flag.signs]


def query_of(answers):
    return "&".join(f"{name}={answer}" for name, answer in answers.items())


@pytest.mark.parametrize("flag", STOPS, ids=lambda flag: flag.id)
@pytest.mark.parametrize("board", ["yes", "no"])
def test_every_first_action_is_read_unless_it_sends_where_they_cannot_go(call, rf, flag, board):
    (sign,) = flag.signs[:1]
    opened = call(f"{sign[0]}={sign[1]}", call_board=board)
    _, spoken = read_everything(rf, opened)
    page = make_safe_page(opened.visit, opened.visit.step)
    place = opened.visit.place
    wanted = [line.text for line in page.first] + list(page.never)
    missing = [line for line in wanted if not any(line in said or said in line for said in spoken)]
    assert [line for line in missing if board == "yes" or not sends_to_board(place, line)] == []
    if board == "no":
        assert [line for line in spoken if sends_to_board(place, line)] == []


def test_an_emergency_is_told_who_calls_by_who_is_there(call):
    told = {}
    for there in ("alone", "company", ""):
        opened = call("smoke-source=from-controls-or-vents", **({"call_alone": there} if there else {}))
        lines = [line.text for line in make_safe(opened, opened.visit.step).lines]
        told[there] = next(line for line in lines if "999" in line)
    assert told["alone"].startswith("Once you are safe, hang up and call 999.")
    assert told["company"].startswith("Let the person with you call 999")
    assert told[""].startswith("Once you are safe, call 999")


def test_a_child_or_a_frail_person_is_thought_of_right_after_the_first_action(call):
    for home, words in (("child", "Keep the child by you"), ("frail", "See to the person who needs help first")):
        opened = call("smell-type=plastic-or-fishy", call_home=home)
        assert make_safe(opened, opened.visit.step).lines[1].text.startswith(words)


def test_who_is_away_passes_every_line_on(call):
    opened = call("smell-type=plastic-or-fishy", call_oven="no")
    assert make_safe(opened, opened.visit.step).lines[0].text.startswith("Is somebody with the oven now?")


def test_questions_from_memory_come_only_after_every_line_was_read(call, rf):
    opened = call("complaint=smell&smell-type=plastic-or-fishy", call_board="yes")
    assert make_safe(opened, opened.visit.step).keys == []
    page, spoken = read_everything(rf, opened)
    assert page.say.kind == "question"
    assert len(spoken) > 8


def test_the_advice_that_is_read_is_the_householders(call, rf):
    opened = call(query_of(answers_of("fan-element-open", "no-heat")), call_board="yes")
    shown = advice_page(opened.visit, opened.visit.step)
    assert advice(opened, opened.visit.step).heading == shown.heading
    page, spoken = read_everything(rf, opened)
    assert page.over
    text = " ".join(spoken)
    assert f"{shown.heading}. {shown.meaning}" in text
    for line in shown.first:
        assert line == checks_below() or line.split(". ")[0] in text
    assert "below" not in text


def test_a_caution_is_read_whole(call, rf):
    opened = call(query_of(answers_of("hinge-worn", "door", door_fit="snaps-or-drops")), call_board="yes")
    shown = advice_page(opened.visit, opened.visit.step)
    _, spoken = read_everything(rf, opened)
    for note in shown.cautions:
        assert {line.text for line in note.first} | set(note.never) <= set(spoken)
    assert shown.leave_off in " ".join(spoken)


def test_what_is_not_for_this_check_is_read_too(call, rf):
    opened = call("complaint=will-not-light&danger=none&oven-fuel=gas")
    say = not_this(opened, opened.visit.step)
    assert say.kind == "exit"
    assert say.lines[0].text.startswith("This check is only for electric ovens")
    assert read_everything(rf, opened)[0].over
