"""The figures are what the database holds, and name no firm and nobody."""

import re
from datetime import timedelta

import pytest
from django.utils import timezone
from prometheus_client.parser import text_string_to_metric_families

from tests.firm_builders import make_delivery, make_firm, make_job_sheet
from tests.whole_site.project_files import ROOT
from triage.jobsheet.actions import erase
from triage.knowledge.library import library
from triage.models.audit_entry import Actor
from triage.operations.metrics import exposition
from triage.operations.step_metrics import StepCountingMiddleware

pytestmark = pytest.mark.django_db


def test_the_guide_names_each_of_them():
    guide = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    StepCountingMiddleware(lambda _request: None)  # as every web process starts
    rows = [line.split(" | ")[0] for line in guide.splitlines() if line.startswith("| `oven_check_")]
    assert sorted(re.findall(r"oven_check_\w+", " ".join(rows))) == sorted(figures())


def figures():
    """Each figure by the name and the labels of its samples, as the reference parser reads them."""
    found = {}
    for family in text_string_to_metric_families(exposition().decode()):
        for sample in family.samples:
            found.setdefault(sample.name, {})[tuple(sample.labels.values())] = sample.value
    return found


def test_what_the_database_holds_is_told():
    firm = make_firm()
    sheet = make_job_sheet(firm)
    make_delivery(firm, state="dead", created=timezone.now() - timedelta(days=3))
    make_delivery(firm, created=timezone.now() - timedelta(hours=1))
    shown = figures()
    assert shown["oven_check_job_sheets_total"] == {(): 1}
    assert shown["oven_check_deliveries"]["webhook", "waiting"] == 2
    assert shown["oven_check_deliveries"]["email", "waiting"] == 1
    assert shown["oven_check_deliveries"]["webhook", "failed"] == 1
    assert shown["oven_check_deliveries"]["email", "sent"] == 0
    assert 3600 <= shown["oven_check_oldest_waiting_delivery_seconds"][()] < 3700
    assert shown["oven_check_pack_info"] == {(library().pack.id, library().pack.version): 1}
    erase(sheet=sheet, actor=Actor.SITE)
    assert figures()["oven_check_job_sheets_total"] == {(): 1}
    assert figures()["oven_check_job_sheets_erased_total"] == {(): 1}


def test_an_empty_site_has_every_figure_too():
    shown = figures()
    assert shown["oven_check_oldest_waiting_delivery_seconds"] == {(): 0}
    assert set(shown["oven_check_deliveries"].values()) == {0}


def test_it_takes_a_fixed_number_of_queries(django_assert_num_queries):
    for _ in range(3):
        make_job_sheet(make_firm())
    with django_assert_num_queries(4):
        figures()


def test_no_figure_names_a_firm_or_anybody():
    firm = make_firm(slug="kettle-and-sons", name="Kettle & Sons")
    sheet = make_job_sheet(firm)
    text = exposition().decode()
    assert not any(word in text for word in (firm.slug, firm.name, sheet.reference, "Alex", "no-heat", "7946"))
