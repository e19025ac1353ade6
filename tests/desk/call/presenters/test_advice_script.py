"""The lines that are read are the householder's own advice, in order, as far as they can be done."""

from dataclasses import replace

import pytest

from tests.desk.call.reading_aloud import query_of, read_everything
from tests.household.checks_done import answers_of
from triage.check_pages.presenters.emergency import emergency_page
from triage.check_pages.presenters.result import TaskLink, result_page
from triage.desk.call.caller import sends_to_board
from triage.desk.call.presenters import advice_script as telling
from triage.desk.call.presenters.advice_script import emergency, out_of_scope, result
from triage.jobsheet.sentences import sentence
from triage.knowledge.library import library

TENANT = (
    "You rent the home. Unless the oven is your own, tell the owner or the landlord now, and agree no repair yourself."
)
FOR_ANOTHER = (
    "You call for somebody else. The person with the oven must hear the safety lines."
    " Tell them each one just as I say it."
)
STOPS = [flag for flag in library().pack.red_flags.values() if flag.level.ends_check and flag.signs]


@pytest.mark.parametrize("flag", STOPS, ids=lambda flag: flag.id)
@pytest.mark.parametrize("board", ["yes", "no"])
def test_every_first_action_is_read_unless_it_sends_where_they_cannot_go(call, reopen, flag, board):
    (sign,) = flag.signs[:1]
    opened = call(f"{sign[0]}={sign[1]}", call_board=board)
    _, spoken = read_everything(reopen, opened)
    page = emergency_page(opened.check_request, opened.check_request.step)
    place = opened.check_request.region
    wanted = [line.text for line in page.steps] + list(page.prohibitions)
    missing = [line for line in wanted if not any(line in said or said in line for said in spoken)]
    assert [line for line in missing if board == "yes" or not sends_to_board(place, line)] == []
    if board == "no":
        assert [line for line in spoken if sends_to_board(place, line)] == []


def test_an_emergency_is_told_who_calls_by_who_is_there(call):
    told = {}
    for there in ("alone", "company", ""):
        opened = call("smoke-source=from-controls-or-vents", **({"call_alone": there} if there else {}))
        lines = [line.text for line in emergency(opened, opened.check_request.step).lines]
        told[there] = next(line for line in lines if "999" in line)
    assert told["alone"].startswith("Once you are safe, hang up and call 999.")
    assert told["company"].startswith("Let the person with you call 999")
    assert told[""].startswith("Once you are safe, call 999")


def test_a_child_or_a_frail_person_is_thought_of_right_after_the_first_action(call):
    for home, words in (("child", "Keep the child by you"), ("frail", "See to the person who needs help first")):
        opened = call("smell-type=plastic-or-fishy", call_home=home)
        assert emergency(opened, opened.check_request.step).lines[1].text.startswith(words)


def test_who_is_away_passes_every_line_on(call):
    opened = call("smell-type=plastic-or-fishy", call_oven="no")
    assert emergency(opened, opened.check_request.step).lines[0].text.startswith("Is somebody with the oven now?")


def test_who_calls_for_somebody_and_did_not_say_where_they_are_passes_them_on_too(call):
    for more, passes in (({}, True), ({"call_oven": "yes"}, False)):
        opened = call("smell-type=plastic-or-fishy", call_who="other", **more)
        assert (
            emergency(opened, opened.check_request.step).lines[0].text.startswith("Is somebody with the oven now?")
            is passes
        )


def test_questions_from_memory_come_only_after_every_line_was_read(call, reopen):
    opened = call("complaint=smell&smell-type=plastic-or-fishy", call_board="yes")
    assert emergency(opened, opened.check_request.step).keys == []
    page, spoken = read_everything(reopen, opened)
    assert page.prompt.kind == "question"
    assert len(spoken) > 8


def test_the_advice_that_is_read_is_the_householders(call, reopen):
    opened = call(query_of(answers_of("fan-element-open", "no-heat")), call_board="yes")
    shown = result_page(opened.check_request, opened.check_request.step)
    heading, meaning = (sentence(name, page=shown) for name in ("result_heading", "result_meaning"))
    assert result(opened, opened.check_request.step).heading == heading
    page, spoken = read_everything(reopen, opened)
    assert page.finished
    text = " ".join(spoken)
    assert f"{heading}. {meaning}" in text
    for action in shown.actions:
        assert action.kind == "checks" or sentence("action", action=action).split(". ")[0] in text
    assert "below" not in text


def test_a_caution_is_read_whole(call, reopen):
    opened = call(query_of(answers_of("hinge-worn", "door", door_fit="snaps-or-drops")), call_board="yes")
    shown = result_page(opened.check_request, opened.check_request.step)
    _, spoken = read_everything(reopen, opened)
    for note in shown.cautions:
        assert {line.text for line in note.steps} | set(note.prohibitions) <= set(spoken)
    assert sentence("leave_off", page=shown) in " ".join(spoken)


@pytest.mark.parametrize("who", ["tenant", "other"])
def test_whose_oven_it_is_adds_one_line_and_no_other_word(call, who):
    grave = query_of(answers_of("hinge-worn", "door", door_fit="snaps-or-drops"))
    owners, theirs = (call(grave, call_board="yes", call_who=one) for one in ("owner", who))
    plain = [line.text for line in result(owners, owners.check_request.step).lines]
    lines = [line.text for line in result(theirs, theirs.check_request.step).lines]
    (added,) = [line for line in lines if line not in plain]
    assert [line for line in lines if line != added] == plain
    assert added == {"tenant": TENANT, "other": FOR_ANOTHER}[who]
    keep_off = sentence("leave_off", page=result_page(theirs.check_request, theirs.check_request.step))
    kept_off = next(at for at, line in enumerate(lines) if keep_off in line)
    booked = next(at for at, line in enumerate(lines) if line.startswith("Book "))
    assert kept_off < lines.index(added) < booked if who == "tenant" else lines.index(added) < kept_off


@pytest.mark.parametrize("who", ["tenant", "other"])
def test_nobody_is_to_be_told_once_it_was_put_right(call, who):
    trail = answers_of("programmer-not-set", "nothing-on")
    opened = call(query_of({**trail, "did-set-clock": "fixed"}), call_who=who)
    assert result_page(opened.check_request, opened.check_request.step).solved
    assert len(result(opened, opened.check_request.step).lines) == 1


@pytest.mark.parametrize(("tasks", "more"), [(2, ""), (3, ""), (4, "There is 1 more"), (9, "There are 6 more")])
def test_three_checks_are_named_and_the_others_counted(call, monkeypatch, tasks, more):
    opened = call(query_of(answers_of("fan-element-open", "no-heat")), call_board="yes")
    step = opened.check_request.step
    links = [TaskLink(f"Check {number}", 5, "", "") for number in range(tasks)]
    monkeypatch.setattr(telling, "result_page", lambda *given: replace(result_page(*given), tasks=links))
    last = result(opened, step).lines[-1].text
    assert [f"Check {number}" in last for number in range(tasks)] == [number < 3 for number in range(tasks)]
    assert last.endswith(f"{more} on your phone." if more else f"Check {tasks - 1}.")


def test_every_sign_to_tell_is_a_sentence_of_its_own(call, monkeypatch):
    opened = call("smoke-source=flames&complaint=smell&smell-type=plastic-or-fishy&shock=tingle", call_board="yes")
    shown = replace(
        emergency_page(opened.check_request, opened.check_request.step), mention=["a shock", "smoke", "sparks"]
    )
    monkeypatch.setattr(telling, "emergency_page", lambda *_given: shown)
    lines = [line.text for line in emergency(opened, opened.check_request.step).lines]
    assert "Say this too when you call: a shock. And say this: smoke. And say this: sparks." in " ".join(lines)


def test_what_is_not_for_this_check_is_read_too(call, reopen):
    opened = call("complaint=will-not-light&danger=none&oven-fuel=gas")
    say = out_of_scope(opened, opened.check_request.step)
    assert say.kind == "exit"
    assert say.lines[0].text.startswith("This check is only for electric ovens")
    assert read_everything(reopen, opened)[0].finished
