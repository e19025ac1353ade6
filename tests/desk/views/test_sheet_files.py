"""A job sheet in its other forms, each read by a library that is not ours, each with an audit line."""

import io
import json

import pytest
from django.urls import reverse
from jsonschema import Draft202012Validator
from PIL import Image

from tests.desk.clients import client_of
from tests.firm_builders import make_booking, make_firm, make_job_sheet, make_member
from tests.jobsheet.formats.calendar_reader import read_calendar
from triage.jobsheet.formats.json import schema

pytestmark = pytest.mark.django_db


def picture():
    out = io.BytesIO()
    Image.new("RGB", (40, 30), "grey").save(out, "JPEG")
    return out.getvalue()


@pytest.fixture
def sheet():
    return make_job_sheet(booking=make_booking(photo=picture()))


@pytest.fixture
def get(sheet):
    repairer = client_of(make_member(sheet.firm, "repairer"))
    return lambda form: repairer.get(reverse(f"desk-{form}", args=[sheet.reference]))


def test_json_is_as_its_schema_says(sheet, get):
    response = get("json")
    Draft202012Validator(schema()).validate(json.loads(response.content))
    assert response.headers["Content-Disposition"] == f'attachment; filename="{sheet.reference}.json"'


def test_the_calendar_file_is_one(get):
    assert read_calendar(get("calendar").content.decode()).inside[0].values["STATUS"] == "TENTATIVE"


def test_text_names_the_sheet(sheet, get):
    assert get("text").content.decode().startswith(f"JOB SHEET {sheet.reference}")


def test_the_photo_is_a_jpeg_and_taken_for_nothing_else(get):
    response = get("photo")
    assert Image.open(io.BytesIO(response.content)).format == "JPEG"
    assert response.headers["X-Content-Type-Options"] == "nosniff"


def test_the_code_is_a_drawing(get):
    response = get("code")
    assert (response.headers["Content-Type"], response.content[:4]) == ("image/svg+xml", b"<svg")


def test_what_does_not_apply_is_not_there(get):
    assert get("repair-form").status_code == 404


def test_a_sheet_without_a_photo_has_none():
    sheet = make_job_sheet(make_firm())
    repairer = client_of(make_member(sheet.firm, "repairer"))
    assert repairer.get(reverse("desk-photo", args=[sheet.reference])).status_code == 404


def test_each_leaves_a_line(sheet, get):
    for form in ("json", "calendar", "text", "photo", "code"):
        get(form)
    assert sheet.audit_entries.filter(action="exported").count() == 3
    assert sheet.audit_entries.filter(action="opened").count() == 2
