"""Who opened or changed a job sheet, the newest first, also once they have left."""

import pytest

from tests.firm_builders import make_job_sheet, make_member
from triage.desk.presenters.audit import audit_lines
from triage.jobsheet.access import open_as_member
from triage.jobsheet.actions import add_note, erase
from triage.models.audit_entry import Actor


@pytest.mark.django_db
def test_every_deed_is_a_line():
    sheet = make_job_sheet()
    member = make_member(sheet.firm, username="robin")
    open_as_member(member, sheet.reference)
    add_note(sheet=sheet, text="Called.", member=member)
    erase(sheet=sheet, actor=Actor.SITE)
    words = ["this site erased it", "robin wrote a note on it", "robin opened it", "the sender handed over it"]
    assert [line.text for line in audit_lines(sheet)] == words
    member.delete()
    assert audit_lines(sheet)[2].text == "a former member opened it"
