"""Outcomes as rows of the Open Repair Data Standard 0.3, read back by Python's own csv module."""

import csv
import re
from io import StringIO

import pytest

from tests.firm_builders import make_booking, make_firm, make_job_sheet, make_member
from triage.jobsheet.formats.open_repair import COLUMNS, COUNTRIES, outcomes_csv
from triage.jobsheet.outcomes import OutcomeData, record_outcome
from triage.knowledge.library import library
from triage.models import Outcome

# The fields, in order, of openrepair/datastandard, standard.rst at commit 4a306a8.
FIELDS = (
    "id data_provider country partner_product_category product_category product_category_id brand"
    " year_of_manufacture product_age_estimate repair_status repair_barrier_if_end_of_life group_identifier"
    " event_date problem record_date"
)


def rows(**changes):
    booking = changes.pop("booking", make_booking())
    sheet = make_job_sheet(make_firm(slug="hearth-2"), booking=booking)
    result = {"found": ("fan-element-open",), "fixed_first_visit": True, "minutes": 40} | changes
    record_outcome(sheet=sheet, data=OutcomeData(**result), member=make_member(sheet.firm))
    return list(csv.DictReader(StringIO(outcomes_csv(Outcome.objects.select_related("sheet__firm")), newline="")))


@pytest.mark.django_db
def test_a_row_has_the_fields_of_the_standard():
    (row,) = rows()
    assert list(row) == list(COLUMNS) == FIELDS.split()
    # The published table schema of the aggregated data (openrepair/data, tableschema.json) wants such ids and codes.
    assert re.fullmatch(r"[a-z]+-[0-9]+", row["id"])
    assert re.fullmatch(r"[A-Z]{3}", row["country"])
    assert (row["product_category"], row["product_category_id"]) == ("Large home electrical", "17")
    assert (row["brand"], row["year_of_manufacture"], row["repair_status"]) == ("Ovenworks", "2015", "Fixed")
    assert row["problem"] == "No heat at all. Found: ring (circular) element open circuit"


@pytest.mark.django_db
def test_an_oven_given_up_says_why():
    (row,) = rows(fixed_first_visit=False, result="end-of-life", barrier="too-dear")
    assert (row["repair_status"], row["repair_barrier_if_end_of_life"]) == ("End of life", "Spare parts too expensive")


@pytest.mark.django_db
def test_nothing_on_a_row_says_whose_oven_it_was():
    (row,) = rows(fitted=("element for Alex Grey",))
    booking, sheet = make_booking(), Outcome.objects.get().sheet
    text = str(row)
    personal = [booking.name, booking.telephone, booking.email, booking.street, booking.postcode, booking.serial]
    assert [item for item in [*personal, sheet.reference] if item in text] == []


@pytest.mark.django_db
def test_a_maker_that_is_a_formula_and_a_year_that_is_none_do_no_harm():
    (row,) = rows(booking=make_booking(maker="=HYPERLINK(1)", year="old"))
    assert (row["brand"], row["year_of_manufacture"]) == ("'=HYPERLINK(1)", "")


def test_every_region_lies_in_a_country_with_a_code():
    territories = {profile.territory for profile in library().regions.values() if profile.territory}
    assert territories == set(COUNTRIES)
