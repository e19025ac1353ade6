"""What a firm takes with it: its own and nobody else's, with a line for each job sheet."""

import csv
from io import StringIO

import pytest
from django.urls import reverse

from tests.desk.clients import client_of
from tests.desk.outcomes import make_outcomes
from tests.firm_builders import make_firm, make_job_sheet, make_member
from triage.jobsheet.formats.open_repair import COLUMNS

pytestmark = pytest.mark.django_db


@pytest.fixture
def firm():
    make_outcomes(make_firm(), 1)
    return make_firm(slug="hearth")


@pytest.fixture
def owner(firm):
    return client_of(make_member(firm, "owner"))


def rows(response):
    return list(csv.DictReader(StringIO(response.content.decode())))


def test_job_sheets_are_taken_with_an_audit_line_each(firm, owner):
    sheet = make_job_sheet(firm)
    response = owner.get(reverse("desk-sheets-csv"))
    assert [row["reference"] for row in rows(response)] == [sheet.reference]
    assert response.headers["Content-Disposition"] == 'attachment; filename="hearth-job-sheets.csv"'
    assert sheet.audit_entries.filter(action="exported", member__role="owner").count() == 1


def test_outcomes_are_taken_as_open_data(firm, owner):
    make_outcomes(firm, 2)
    found = rows(owner.get(reverse("desk-open-repair")))
    assert (tuple(found[0]), len(found)) == (COLUMNS, 2)
    assert "Alex" not in str(found)


def test_outcomes_are_taken_for_learning(firm, owner):
    make_outcomes(firm, 1)
    told = owner.get(reverse("desk-outcomes-yaml")).content.decode()
    assert told.startswith("outcomes:\n- reference:")
    assert "Alex" not in told


def test_the_page_says_how_many_there_are(firm, owner):
    make_outcomes(firm, 2)
    page = owner.get(reverse("desk-exports")).content.decode()
    assert "2 job sheets with names and addresses." in page
    assert "2 outcomes without names, fit to be published" in page
