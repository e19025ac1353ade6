"""What the database itself refuses about audit lines."""

import pytest
from django.db import IntegrityError, transaction
from django.utils import timezone

from tests.firm_builders import make_job_sheet, make_member
from triage.models import ApiKey, AuditEntry

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(
    ("constraint", "changes"),
    [("access_actor_is_known", {"actor": "ghost"}), ("access_deed_is_known", {"action": "stole"})],
)
def test_the_database_refuses(constraint, changes):
    data = {"sheet": make_job_sheet(), "actor": "site", "action": "erased", "at": timezone.now()}
    with pytest.raises(IntegrityError, match=constraint), transaction.atomic():
        AuditEntry.objects.create(**(data | changes))


def test_only_staff_have_a_member():
    sheet = make_job_sheet()
    with pytest.raises(IntegrityError, match="access_member_is_staff"), transaction.atomic():
        AuditEntry.objects.create(
            sheet=sheet, actor="sender", member=make_member(sheet.firm), action="opened", at=timezone.now()
        )


def test_only_a_firms_system_has_a_key():
    sheet = make_job_sheet()
    key = ApiKey.objects.create(firm=sheet.firm, name="menu", key_hash="a", created=timezone.now())
    with pytest.raises(IntegrityError, match="access_key_is_a_system"), transaction.atomic():
        AuditEntry.objects.create(sheet=sheet, actor="sender", key=key, action="opened", at=timezone.now())


def test_it_reads_as_a_sentence():
    line = make_job_sheet().audit_entries.get()
    assert str(line) == f"sender handed over {line.sheet.reference}"
