"""The site does not start with a mistake in what it knows; each is told with its place and its remedy."""

import pytest

from triage import checks
from triage.knowledge.problems import PackProblem, PackProblems


@pytest.fixture
def broken(monkeypatch):
    def fail():
        raise PackProblems([PackProblem("oven/faults.yaml", 7, "lamp", "has no text here.", "Add an entry.")])

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


@pytest.mark.parametrize("right", ["none", "127.0.0.1", "10.0.0.0/8, 2001:db8::/32"])
def test_who_may_read_the_metrics_can_be_told(settings, right):
    settings.TRIAGE_METRICS_ALLOWED_NETWORKS = right
    assert checks.check_metrics() == []


@pytest.mark.parametrize("wrong", ["all", "10.0.0.1/8", "127.0.0.1;10.0.0.1", "127.0.0.1,"])
def test_who_may_read_the_metrics_is_a_list_of_addresses(settings, wrong):
    settings.TRIAGE_METRICS_ALLOWED_NETWORKS = wrong
    (error,) = checks.check_metrics()
    assert (error.id, error.msg) == ("triage.E004", f"TRIAGE_METRICS_ALLOWED_NETWORKS is {wrong!r}.")
    assert error.hint == "Use addresses or networks, as in 127.0.0.1,10.0.0.0/8."


def test_a_token_for_the_metrics_cannot_be_guessed(settings):
    settings.TRIAGE_METRICS_TOKEN = "short"
    (error,) = checks.check_metrics()
    assert (error.id, error.msg) == ("triage.E005", "TRIAGE_METRICS_TOKEN has 5 characters.")
    settings.TRIAGE_METRICS_TOKEN = "x" * 32
    assert checks.check_metrics() == []


@pytest.mark.parametrize("wrong", ["0", "-1", "many", "1.5", "٣"])
def test_the_limit_on_hand_overs_is_a_number(settings, wrong):
    assert checks.check_booking_rate_limit() == []
    settings.TRIAGE_BOOKING_RATE_LIMIT = wrong
    (error,) = checks.check_booking_rate_limit()
    assert (error.id, error.msg, error.hint) == (
        "triage.E006",
        f"TRIAGE_BOOKING_RATE_LIMIT is {wrong!r}.",
        "Use a whole number, as in 60.",
    )


def test_a_setting_under_its_old_name_is_refused_with_the_new_one(settings):
    assert checks.check_renamed_settings() == []
    settings.TRIAGE_METRICS_FOLDER = "/run/oven-check"
    (error,) = checks.check_renamed_settings()
    assert (error.id, error.msg, error.hint) == (
        "triage.E007",
        "TRIAGE_METRICS_FOLDER is now called TRIAGE_METRICS_DIR.",
        "Set TRIAGE_METRICS_DIR and remove TRIAGE_METRICS_FOLDER.",
    )
