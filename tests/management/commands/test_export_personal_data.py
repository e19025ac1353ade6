"""`manage.py export_personal_data`: all of one person's data as JSON, and the look at it is itself written down."""

import json
from io import StringIO

import pytest
from django.core.management import CommandError, call_command

from tests.firm_builders import make_job_sheet

pytestmark = pytest.mark.django_db


def test_it_writes_json_with_its_own_look_in_it():
    sheet, out = make_job_sheet(), StringIO()
    call_command("export_personal_data", sheet.reference.lower().replace("-", " "), stdout=out)
    payload = json.loads(out.getvalue())
    assert payload["job_sheet"]["contact"]["name"] == "Alex Grey"
    assert (payload["who_looked"][-1]["who"], payload["who_looked"][-1]["did"]) == ("site", "exported")


def test_a_reference_that_is_none_is_said():
    with pytest.raises(CommandError, match="There is no job sheet with this reference"):
        call_command("export_personal_data", "ZZZZZ-ZZZZZ")
