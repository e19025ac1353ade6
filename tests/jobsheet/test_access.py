"""Firms are walls: who may open a sheet, and that nobody else learns whether it exists."""

import pytest

from tests.firm_builders import make_firm, make_job_sheet, make_member
from triage.jobsheet.access import NotFound, open_as_member, open_as_sender, open_as_system, sheets_of
from triage.jobsheet.actions import erase
from triage.jobsheet.sender_token import new_token
from triage.web.api_keys import make_key

pytestmark = pytest.mark.django_db


@pytest.fixture
def sheet():
    return make_job_sheet()


def token_of(sheet):
    return new_token(sheet.reference)


@pytest.mark.parametrize("role", ["owner", "repairer", "agent"])
def test_the_firms_own_people_open_it_and_are_written_down(sheet, role):
    member = make_member(sheet.firm, role)
    assert open_as_member(member, sheet.reference.lower()) == sheet
    assert sheet.audit_entries.filter(member=member, action="opened").count() == 1


def test_another_firms_owner_learns_nothing(sheet):
    stranger = make_member(make_firm(), "owner")
    for reference in (sheet.reference, "AAAAA-AAAAA", "", "' OR 1=1 --"):
        with pytest.raises(NotFound):
            open_as_member(stranger, reference)
    assert list(sheets_of(stranger)) == []
    assert sheet.audit_entries.count() == 1


def test_the_firms_system_opens_it_and_its_key_is_written_down(sheet):
    key, _words = make_key(firm=sheet.firm, name="telephone menu")
    assert open_as_system(key, sheet.reference.lower()) == sheet
    assert sheet.audit_entries.filter(actor="system", key=key, action="opened").count() == 1


def test_another_firms_system_learns_nothing(sheet):
    key, _words = make_key(firm=make_firm(), name="telephone menu")
    for reference in (sheet.reference, "AAAAA-AAAAA", ""):
        with pytest.raises(NotFound):
            open_as_system(key, reference)
    assert sheet.audit_entries.count() == 1


def test_the_sender_opens_it_with_the_token(sheet):
    assert open_as_sender(sheet.reference, token_of(sheet)) == sheet
    assert sheet.audit_entries.filter(actor="sender", action="opened").count() == 1


def test_no_other_token_opens_it(sheet):
    for token in ("", "x", token_of(make_job_sheet()), sheet.token_hash):
        with pytest.raises(NotFound):
            open_as_sender(sheet.reference, token)
    with pytest.raises(NotFound):
        open_as_sender("AAAAA-AAAAA", "")


def test_an_erased_sheet_is_gone_from_the_inbox_and_the_sender_sees_that_it_is(sheet):
    member = make_member(sheet.firm)
    assert list(sheets_of(member)) == [sheet]
    erase(sheet=sheet, actor="sender")
    assert list(sheets_of(member)) == []
    assert open_as_sender(sheet.reference, token_of(sheet)).erased
