"""The earlier job sheet in a few words, and the call that begins with its answers."""

import pytest

from tests.desk.call.reading_aloud import ELEMENT
from tests.firm_builders import make_firm, make_job_sheet
from tests.pack_texts import fault_name
from triage.desk.call.presenters.page import call_page
from triage.desk.call.presenters.previous_sheet import (
    MAX_ANSWERS_SHOWN,
    not_found_sentence,
    previous_sheet_page,
    throttled_sentence,
)
from triage.web.rate_limit import Allowance, Policy

FAN_ELEMENT = fault_name("fan-element-open")

pytestmark = pytest.mark.django_db


@pytest.fixture
def sheet():
    return make_job_sheet(make_firm(), answers=tuple({**ELEMENT, "supply-off": "yes"}.items()), region="us")


def test_it_says_what_was_told_then_and_how_far_the_job_is(call, sheet):
    page = previous_sheet_page(call(), sheet)
    assert (page.reference, page.spoken_for, page.status) == (sheet.reference, "Alex Grey", "New")
    assert page.cause.startswith(f"{FAN_ELEMENT} (")
    assert ("What is wrong", "No heat at all") in page.answers
    assert page.sheet_href == f"/desk/sheets/{sheet.reference}/"


def test_the_call_begins_with_its_answers_where_that_oven_stands_and_danger_is_asked_first(call, reopen, sheet):
    begun = reopen(previous_sheet_page(call(call_id="ABCDE", call_board="no"), sheet).begin_href)
    wanted = {name: answer for name, answer in ELEMENT.items() if name != "danger"}
    assert dict(begun.check_request.answers) == wanted
    assert (begun.state.id, begun.state.caller, begun.check_request.region.id) == ("ABCDE", {"board": "no"}, "us")
    assert call_page(begun).prompt.kind == "danger"


def test_an_answer_of_today_is_not_overruled(call, reopen, sheet):
    begun = reopen(previous_sheet_page(call("complaint=trips"), sheet).begin_href)
    assert begun.check_request.answers["complaint"] == "trips"


def test_where_nothing_is_left_to_begin_with_there_is_no_way_to(call):
    page = previous_sheet_page(
        call("complaint=no-heat"), make_job_sheet(answers=(("complaint", "no-heat"), ("danger", "none")))
    )
    assert (page.begin_href, page.answers) == ("", [])


def test_many_answers_are_counted(call, monkeypatch):
    told = {"complaint": "no-heat", "danger": "none", "lamp-state": "lamp-works", "onset": "sudden-bang"}
    monkeypatch.setattr("triage.desk.call.presenters.previous_sheet.MAX_ANSWERS_SHOWN", 1)
    page = previous_sheet_page(call(), make_job_sheet(answers=tuple(told.items())))
    assert (len(page.answers), page.more) == (1, "and 2 more")
    assert MAX_ANSWERS_SHOWN > 1


def test_a_danger_sign_of_then_is_named(call):
    sheet = make_job_sheet(answers=(("complaint", "smell"), ("smell-type", "plastic-or-fishy")))
    assert previous_sheet_page(call(), sheet).signs == ["Burning smell: switch off and leave off"]


def test_what_is_said_instead():
    assert not_found_sentence().startswith("Your firm has no job sheet with this reference.")
    assert "in 2 minutes" in throttled_sentence(Allowance(Policy("x", 1, 600), 0, 61, exceeded=True))
