"""A summary goes by the names the database had at first, there and nowhere else; the release before finds what it
knows, and what either release wrote is read."""

import json

import pytest
from django.db import connection

from tests.firm_builders import make_job_sheet
from triage.models import JobSheet
from triage.models.stored_names import READ, STORED, renamed

pytestmark = pytest.mark.django_db


def stored(sheet):
    with connection.cursor() as cursor:
        cursor.execute("SELECT summary FROM triage_jobsheet WHERE id = %s", [sheet.pk])
        (text,) = cursor.fetchone()
    return json.loads(text)


def members(value):
    if isinstance(value, dict):
        yield from value
    for inner in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
        yield from members(inner)


def test_what_is_stored_has_the_names_the_release_before_reads():
    sheet = make_job_sheet(answers=(("complaint", "smell"), ("smell-type", "hot-plastic"), ("danger", "none")))
    old = stored(sheet)
    assert (old["trouble"], old["supply"]["words"]) == (sheet.summary["complaint"], sheet.summary["supply"]["text"])
    assert old["causes"][0]["chance"] == sheet.summary["causes"][0]["probability"]
    assert old["kit"]["at_best"] == sheet.summary["kit"]["max_probability"]
    assert set(members(old)) & set(STORED) == set()


def test_what_comes_back_is_what_was_written():
    sheet = make_job_sheet()
    written = sheet.summary
    sheet.refresh_from_db()
    assert sheet.summary == written
    assert set(members(written)) & set(READ) == set()
    assert JobSheet.objects.filter(summary__trouble=written["complaint"]).count() == 1


def test_a_row_that_has_the_new_names_already_is_read_too():
    sheet = make_job_sheet()
    with connection.cursor() as cursor:
        cursor.execute("UPDATE triage_jobsheet SET summary = %s WHERE id = %s", [json.dumps(sheet.summary), sheet.pk])
    assert JobSheet.objects.get(pk=sheet.pk).summary == sheet.summary


def test_each_name_stands_for_one_thing():
    assert len(READ) == len(STORED)
    assert set(READ) & set(STORED) == set()
    assert renamed([{"text": [{"told": 1}]}, "text"], STORED) == [{"words": [{"told": 1}]}, "text"]
