"""Only the firm's own job sheets are found, all others are alike, and what was true of another day is asked anew."""

import pytest

from tests.firm_builders import make_firm, make_job_sheet, make_member
from triage.desk.call.previous_sheet import LOOKUP_POLICY, count_lookup, find_sheet, reusable_answers
from triage.jobsheet.access import NotFound
from triage.jobsheet.actions import erase
from triage.jobsheet.reference import spelled_out
from triage.knowledge.library import library
from triage.models import AuditEntry, JobSheet
from triage.models.audit_entry import Actor, AuditAction
from triage.models.firm import Role

pytestmark = pytest.mark.django_db
PACK = library().pack


@pytest.fixture
def agent():
    return make_member(make_firm(), Role.AGENT)


def test_it_is_found_as_it_is_said_and_the_look_is_written_down(agent):
    sheet = make_job_sheet(agent.firm)
    assert find_sheet(agent, spelled_out(sheet.reference)) == sheet
    assert AuditEntry.objects.get(sheet=sheet, action=AuditAction.OPENED).member == agent


def test_another_firms_an_erased_one_and_none_are_not_there(agent):
    erased = make_job_sheet(agent.firm)
    erase(sheet=erased, actor=Actor.MEMBER, member=agent)
    for typed in (make_job_sheet().reference, erased.reference, "ZZZZZ-ZZZZZ", "", "nonsense", "\x00" * 500):
        with pytest.raises(NotFound):
            find_sheet(agent, typed)


def test_nobody_may_try_without_end(agent):
    looks = [count_lookup(agent).exceeded for _ in range(LOOKUP_POLICY.quota + 1)]
    assert looks == [False] * LOOKUP_POLICY.quota + [True]
    assert not count_lookup(make_member(agent.firm, Role.AGENT)).exceeded


def test_danger_signs_and_the_state_of_that_day_are_asked_anew():
    gates = {gate for task in PACK.tasks.values() for gate in task.gates}
    assert {"supply-off", "cold"} <= gates
    answers = [["complaint", "no-heat"], ["danger", "none"], *([gate, "yes"] for gate in gates)]
    answers += [["did-set-clock", "fixed"], ["lamp-state", "lamp-works"]]
    again = reusable_answers(PACK, JobSheet(answers=answers), {})
    assert again == {"complaint": "no-heat", "lamp-state": "lamp-works"}


def test_what_was_tried_in_vain_is_still_known():
    answers = [["complaint", "no-heat"], ["did-set-clock", "not-fixed"]]
    assert reusable_answers(PACK, JobSheet(answers=answers), {})["did-set-clock"] == "not-fixed"


def test_what_is_told_today_holds_and_what_the_pack_no_longer_knows_is_left():
    answers = [["complaint", "no-heat"], ["no-such-question", "yes"], ["lamp-state", "blue"], ["onset", "sudden-bang"]]
    again = reusable_answers(PACK, JobSheet(answers=answers), {"complaint": "trips"})
    assert again == {"onset": "sudden-bang"}


def test_a_danger_sign_of_then_is_kept_until_somebody_takes_it_back():
    answers = [["complaint", "smell"], ["smell-type", "plastic-or-fishy"]]
    assert reusable_answers(PACK, JobSheet(answers=answers), {})["smell-type"] == "plastic-or-fishy"
