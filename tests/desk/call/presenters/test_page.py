"""What the page says first, and everything that stands beside it."""

import pytest

from tests.desk.call.reading_aloud import ELEMENT, query_of, read_everything, told_and_read
from tests.household.checks_done import answers_of
from triage.desk.call.presenters.page import call_page
from triage.models import Firm

COLD = "complaint=no-heat&heat-main=no-heat"


@pytest.mark.parametrize(
    ("query", "kind"),
    [
        ("", "open"),
        (COLD, "danger"),
        (f"{COLD}&danger=none", "question"),
        ("smoke-source=flames", "act"),
        ("complaint=will-not-light&danger=none&oven-fuel=gas", "exit"),
        (f"{COLD}&call-ask=nothing-known", "danger"),
    ],
)
def test_what_is_said_follows_the_step(call, query, kind):
    assert call_page(call(query)).prompt.kind == kind


def test_an_agent_may_ask_another_question_first_but_never_before_the_danger_signs_matter(call):
    assert call_page(call(f"{COLD}&danger=none&call-ask=onset")).prompt.heading == "How it started"
    assert call_page(call(f"{COLD}&call-ask=danger")).prompt.kind == "danger"
    assert call_page(call("smoke-source=flames&call-ask=onset")).prompt.kind == "act"
    assert call_page(call(f"{COLD}&danger=none&call-ask=meter-power")).prompt.heading != "Power drawn"


def test_every_answer_can_be_asked_again_with_the_rest_kept(call):
    page = call_page(call(f"{COLD}&danger=none&lamp-state=lamp-works"))
    assert [told.question for told in page.story] == ["What is wrong", "Oven heat", "Danger signs", "Oven light"]
    change = page.story[1].change_href
    assert "heat-main=" not in change
    assert "call-ask=heat-main" in change
    assert "lamp-state=lamp-works" in change
    assert "lamp-state" not in page.undo_href


def test_a_danger_sign_stands_out_in_the_story(call):
    assert [told.urgent for told in call_page(call("complaint=smell&smell-type=gas")).story] == [False, True]


def test_what_was_told_of_the_caller_is_marked(call):
    page = call_page(call(COLD, call_board="no"))
    assert {row.topic: row.chosen for row in page.caller} == {
        "who": "",
        "oven": "",
        "board": "not safe",
        "alone": "",
        "home": "",
    }
    assert next(row.label for row in page.caller if row.topic == "board") == "Fuse box"


def test_a_broken_address_says_what_was_left_out(call):
    page = call_page(call(f"{COLD}&lamp-state=blue", call_board="perhaps"))
    assert page.unknown_params == "call-board"
    assert [(problem.kind, problem.answer) for problem in page.problems] == [("unknown-answer", "blue")]


def test_the_call_is_over_only_when_every_line_was_read(call, reopen):
    opened = call("&".join(f"{n}={a}" for n, a in answers_of("fan-element-open", "no-heat").items()))
    assert not call_page(opened).finished
    assert read_everything(reopen, opened)[0].finished


def test_a_visit_is_offered_once_all_was_read_with_what_the_firm_says_of_it(call, reopen):
    firm = Firm(slug="hearth", region="gb-eng", prices={"Call-out": "£60"}, areas=["Kettlewick"])
    address = f"/desk/call/?{told_and_read(call, reopen)}"
    page = call_page(reopen(address, firm))
    assert page.booking_href.startswith("/desk/call/hand-over/?region=gb-eng&complaint=no-heat")
    assert page.firm_details == [("Call-out", "£60"), ("We come to", "Kettlewick")]
    assert call_page(call(query_of(ELEMENT))).booking_href == ""


def test_after_danger_what_is_asked_from_memory_holds_no_visit_up(call, reopen):
    query = told_and_read(call, reopen, {"complaint": "smell", "smell-type": "plastic-or-fishy"})
    page = call_page(reopen(f"/desk/call/?{query}"))
    assert (page.prompt.kind, page.finished) == ("question", False)
    assert page.booking_href
