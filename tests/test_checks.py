"""The site does not start with a mistake in what it knows; each is told with its place and its remedy."""

import pytest

from triage import checks
from triage.knowledge.problems import PackProblems, Problem


@pytest.fixture
def broken(monkeypatch):
    def fail():
        raise PackProblems([Problem("oven/faults.yaml", 7, "lamp", "has no text here.", "Add an entry.")])

    monkeypatch.setattr(checks, "library", fail)


def test_all_is_well():
    assert checks.check_knowledge() == []
    assert checks.check_default_region() == []


def test_a_mistake_has_its_file_line_and_remedy(broken):
    (error,) = checks.check_knowledge()
    assert (error.id, error.msg, error.hint) == (
        "triage.E001",
        "oven/faults.yaml:7: lamp: has no text here.",
        "Add an entry.",
    )
    assert checks.check_default_region() == []


def test_a_default_region_that_does_not_exist_is_refused(settings):
    settings.TRIAGE_DEFAULT_REGION = "atlantis"
    (error,) = checks.check_default_region()
    assert (error.id, error.msg) == ("triage.E002", "TRIAGE_DEFAULT_REGION is 'atlantis', which is no region.")
    assert error.hint.startswith("Use one of: au, ca, de, ")


def test_where_webhooks_may_go_is_one_of_two(settings):
    assert checks.check_webhook_networks() == []
    settings.TRIAGE_WEBHOOK_NETWORKS = "some"
    (error,) = checks.check_webhook_networks()
    assert (error.id, error.msg, error.hint) == (
        "triage.E003",
        "TRIAGE_WEBHOOK_NETWORKS is 'some'.",
        "Use public or any.",
    )
