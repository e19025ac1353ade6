"""A job sheet is found in one's own firm, however its reference is written, and in no other."""

from types import SimpleNamespace

import pytest

from tests.firm_builders import make_firm, make_job_sheet, make_member
from triage.desk.sheet_lookup import get_sheet, get_sheet_logged
from triage.jobsheet.access import NotFound

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(("method", "lines"), [("GET", 1), ("HEAD", 1), ("POST", 0)])
def test_ones_own_is_found_and_to_look_at_it_leaves_a_line(method, lines):
    sheet = make_job_sheet()
    request = SimpleNamespace(member=make_member(sheet.firm), method=method)
    assert get_sheet(request, sheet.reference.lower().replace("-", " ")) == sheet
    assert sheet.audit_entries.filter(action="opened", member=request.member).count() == lines


def test_a_page_that_comes_back_is_a_look():
    sheet = make_job_sheet()
    request = SimpleNamespace(member=make_member(sheet.firm), method="POST")
    assert get_sheet_logged(request, sheet.reference) == sheet
    assert sheet.audit_entries.filter(action="opened", member=request.member).count() == 1


@pytest.mark.parametrize("method", ["GET", "POST"])
@pytest.mark.parametrize("reference", ["ZZZZZ-ZZZZZ", "", "../..", "'; drop table", "😀" * 10])
def test_what_there_is_not_is_not_found(method, reference):
    request = SimpleNamespace(member=make_member(make_job_sheet().firm), method=method)
    with pytest.raises(NotFound):
        get_sheet(request, reference)


@pytest.mark.parametrize("method", ["GET", "POST"])
def test_another_firms_is_not_found(method):
    sheet = make_job_sheet()
    with pytest.raises(NotFound):
        get_sheet(SimpleNamespace(member=make_member(make_firm()), method=method), sheet.reference)
