"""A job sheet is found in one's own firm, however its reference is written, and in no other."""

from types import SimpleNamespace

import pytest

from tests.firm_builders import make_firm, make_job_sheet, make_member
from triage.desk.own_sheet import own_sheet
from triage.jobsheet.opening import NotFound

pytestmark = pytest.mark.django_db


def test_ones_own_is_found_and_leaves_no_line_by_itself():
    sheet = make_job_sheet()
    request = SimpleNamespace(member=make_member(sheet.firm))
    before = sheet.access_lines.count()
    assert own_sheet(request, sheet.reference.lower().replace("-", " ")) == sheet
    assert sheet.access_lines.count() == before


@pytest.mark.parametrize("reference", ["ZZZZZ-ZZZZZ", "", "../..", "'; drop table", "😀" * 10])
def test_what_there_is_not_is_not_found(reference):
    request = SimpleNamespace(member=make_member(make_job_sheet().firm))
    with pytest.raises(NotFound):
        own_sheet(request, reference)


def test_another_firms_is_not_found():
    sheet = make_job_sheet()
    with pytest.raises(NotFound):
        own_sheet(SimpleNamespace(member=make_member(make_firm())), sheet.reference)
