"""Job sheets as CSV: read back by Python's own reader, and no cell is a formula."""

import csv
from io import StringIO

import pytest

from tests.firm_builders import make_booking, make_job_sheet, make_member
from triage.desk.presenters.sheet_table import COLUMNS, sheets_csv
from triage.jobsheet.outcomes import OutcomeData, record_outcome
from triage.models import JobSheet

pytestmark = pytest.mark.django_db

EVIL = '=cmd|" /C calc"!A0'


def rows_of(*sheets):
    found = JobSheet.objects.filter(pk__in=[sheet.pk for sheet in sheets])
    return list(csv.DictReader(StringIO(sheets_csv(found))))


def test_a_job_sheet_is_a_row_with_its_outcome():
    sheet = make_job_sheet()
    findings = OutcomeData(found=("fan-element-open",), fitted=("ring", "clip"), fixed_first_visit=True, minutes=30)
    record_outcome(sheet=sheet, data=findings, member=make_member(sheet.firm))
    (row,) = rows_of(sheet)
    assert tuple(row) == COLUMNS
    assert (row["reference"], row["name"], row["status"]) == (sheet.reference, "Alex Grey", "done")
    assert (row["found"], row["fitted"], row["fixed_first_visit"]) == ("fan-element-open", "ring; clip", "yes")
    assert float(row["probability"]) == pytest.approx(sheet.summary["causes"][0]["probability"], abs=1e-4)


@pytest.mark.parametrize("start", ["=", "+", "-", "@"])
def test_no_cell_is_a_formula(start):
    evil = start + EVIL[1:]
    sheet = make_job_sheet(
        booking=make_booking(name=evil, street=evil, postcode=evil, maker=evil, model=evil, serial=evil)
    )
    JobSheet.objects.filter(pk=sheet.pk).update(telephone="+44 20 7946 0000")
    (row,) = rows_of(sheet)
    for column in ("name", "street", "postcode", "maker", "model", "serial", "telephone"):
        assert row[column].startswith("'"), column
    assert not any(cell[:1] in "=+@\t\r" for cell in row.values() if cell)


def test_lines_signs_and_emoji_survive():
    sheet = make_job_sheet(booking=make_booking(name='Ünal "שלום" 🔥, the 2nd'))
    assert rows_of(sheet)[0]["name"] == 'Ünal "שלום" 🔥, the 2nd'
