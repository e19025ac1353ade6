"""A reading on a page of its own: the danger signs first, then cautions and gates, and never how to heat an oven."""

import pytest

from tests.check_pages.fragments import words_of
from tests.household.checks_done import at
from triage.check_pages.presenters.question import DangerPage
from triage.check_pages.presenters.readings.kinds import KINDS
from triage.check_pages.presenters.readings.page import ReadingPage, reading_page, tasks_of
from triage.knowledge.library import library

LOOKED = {"danger": "none"}
SURE = {"cold": "yes", "supply-off": "yes"}


def page(check_request, kind, answers, region="gb-eng"):
    return reading_page(check_request(at(f"/reading/{kind}/", answers, region)), kind)


@pytest.mark.parametrize("kind", KINDS)
def test_the_danger_signs_come_first_and_lead_back(check_request, kind):
    found = page(check_request, kind, {})
    assert isinstance(found, DangerPage)
    assert found.none.href == at(f"/reading/{kind}/", LOOKED)
    assert found.signs


@pytest.mark.parametrize("kind", KINDS)
def test_behind_them_its_cautions_and_its_form(check_request, kind):
    found = page(check_request, kind, {**LOOKED, **SURE})
    assert isinstance(found, ReadingPage)
    assert found.cautions
    assert found.form.kind == kind


@pytest.mark.parametrize("gates", [{}, {"cold": "yes"}, {**SURE, "supply-off": "unsure"}, {**SURE, "cold": "no"}])
def test_the_seal_waits_for_its_gates(check_request, gates):
    found = page(check_request, "gasket", {**LOOKED, **gates})
    assert found.form is None
    assert not found.removed
    assert [gate.yes_href.partition("?")[0] for gate in found.gates] == ["/reading/gasket/"] * 2


@pytest.mark.parametrize("kind", KINDS)
def test_what_heats_the_oven_is_left_to_the_check(check_request, kind):
    found = page(check_request, kind, {**LOOKED, **SURE})
    heats = any(task.needs_heat for task in tasks_of(check_request("/"), kind))
    assert found.heat == heats
    assert (found.how == "") == heats


def test_both_tests_of_the_seal_share_a_page(check_request):
    found = page(check_request, "gasket", {**LOOKED, **SURE})
    which = found.form.groups[0].fields[0]
    assert [value for value, _ in which.choices] == ["paper-strip-test", "torch-gap-test"]


def test_where_the_rules_take_the_task_away_there_is_no_form(check_request, monkeypatch):
    seen = check_request(at("/reading/meter/", LOOKED, "au"))
    monkeypatch.setattr(type(seen.region.region), "removed_tasks", frozenset({"meter-test"}), raising=False)
    found = reading_page(seen, "meter")
    assert found.form is None
    assert found.removed
    assert words_of("removed", page=found).startswith("This is not offered here. In Australia")


def test_every_kind_of_the_pack_has_a_page():
    gauges = {o.measurement.kind for o in library().pack.observations.values() if o.measurement}
    assert gauges == set(KINDS)
