"""`manage.py erase_expired`: whose time is over is forgotten, and the operator is told how many."""

from datetime import timedelta
from io import StringIO

import pytest
from django.core.management import call_command
from django.utils import timezone

from tests.firm_builders import make_job_sheet
from triage.models import JobSheet


@pytest.mark.django_db
def test_it_says_how_many_it_erased():
    sheet = make_job_sheet()
    past = timezone.now() - timedelta(days=400)
    JobSheet.objects.update(created=past, erase_after=past + timedelta(days=1))
    out = StringIO()
    call_command("erase_expired", stdout=out)
    call_command("erase_expired", stdout=out)
    assert out.getvalue() == "1 job sheet erased.\n0 job sheets erased.\n"
    sheet.refresh_from_db()
    assert sheet.name == ""
