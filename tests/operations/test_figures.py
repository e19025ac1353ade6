"""The figures are what the database holds, and name no firm and nobody."""

import re
from datetime import timedelta

import pytest
from django.utils import timezone

from tests.firm_builders import make_delivery, make_firm, make_job_sheet
from tests.whole_site.project_files import ROOT
from triage.jobsheet.actions import erase
from triage.knowledge.library import library
from triage.models.access_line import Actor
from triage.operations.exposition import exposition
from triage.operations.figures import families

pytestmark = pytest.mark.django_db


def test_the_guide_names_each_of_them():
    guide = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    rows = [line.split(" | ")[0] for line in guide.splitlines() if line.startswith("| `oven_check_")]
    assert sorted(re.findall(r"oven_check_\w+", " ".join(rows))) == sorted(family.name for family in families())


def told():
    return {family.name: {tuple(labels.values()): value for labels, value in family.samples} for family in families()}


def test_what_the_database_holds_is_told():
    firm = make_firm()
    sheet = make_job_sheet(firm)
    make_delivery(firm, state="dead", created=timezone.now() - timedelta(days=3))
    make_delivery(firm, created=timezone.now() - timedelta(hours=1))
    figures = told()
    assert figures["oven_check_job_sheets_total"] == {(): 1}
    assert figures["oven_check_deliveries"]["webhook", "waiting"] == 2
    assert figures["oven_check_deliveries"]["email", "waiting"] == 1
    assert figures["oven_check_deliveries"]["webhook", "dead"] == 1
    assert figures["oven_check_deliveries"]["email", "sent"] == 0
    assert 3600 <= figures["oven_check_oldest_waiting_delivery_seconds"][()] < 3700
    assert figures["oven_check_pack_info"] == {(library().pack.id, library().pack.version): 1}
    erase(sheet=sheet, actor=Actor.SITE)
    assert told()["oven_check_job_sheets_total"] == {(): 1}
    assert told()["oven_check_job_sheets_erased_total"] == {(): 1}


def test_an_empty_site_has_every_figure_too():
    figures = told()
    assert figures["oven_check_oldest_waiting_delivery_seconds"] == {(): 0}
    assert set(figures["oven_check_deliveries"].values()) == {0}


def test_it_takes_a_fixed_number_of_queries(django_assert_num_queries):
    for _ in range(3):
        make_job_sheet(make_firm())
    with django_assert_num_queries(4):
        told()


def test_no_figure_names_a_firm_or_anybody():
    firm = make_firm(slug="kettle-and-sons", name="Kettle & Sons")
    sheet = make_job_sheet(firm)
    words = exposition(families())
    assert not any(word in words for word in (firm.slug, firm.name, sheet.reference, "Alex", "no-heat", "7946"))
