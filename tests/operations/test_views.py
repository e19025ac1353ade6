"""`/health/` answers whatever else is broken, `/ready/` tells a balancer whether to send visitors, and `/metrics/` is
for who may: for anybody else it is an address like any that is none."""

import pytest
from prometheus_client.parser import text_string_to_metric_families

from triage.operations import views


def test_a_living_process_says_so_and_asks_no_database(client):
    response = client.get("/health/")
    assert (response.status_code, response.content) == (200, b"This process is alive.\n")
    assert response["Cache-Control"] == "no-store"
    assert not response.cookies


def test_it_is_asked_without_tls(client, settings):
    settings.SECURE_SSL_REDIRECT = True
    assert client.get("/health/").status_code == 200
    assert client.get("/").status_code == 301


def test_nothing_can_be_sent_to_it(client):
    assert client.post("/health/").status_code == 405


@pytest.mark.django_db
def test_ready(client):
    response = client.get("/ready/")
    assert (response.status_code, response.content) == (200, b"This site is ready.\n")
    assert response["Cache-Control"] == "no-store"


def test_not_ready_says_why_and_the_pages_go_on(client, monkeypatch):
    monkeypatch.setattr(views, "not_ready_reason", lambda: "The database does not answer.")
    response = client.get("/ready/")
    assert (response.status_code, response.content) == (503, b"The database does not answer.\n")
    assert client.get("/?region=gb-eng").status_code == 200


@pytest.mark.django_db
def test_whoever_may_reads_what_the_reference_parser_reads(client, settings):
    settings.TRIAGE_METRICS_ALLOWED_NETWORKS = "127.0.0.1"
    client.get("/?region=gb-eng")
    response = client.get("/metrics/")
    assert response["Content-Type"] == "text/plain; version=0.0.4; charset=utf-8"
    assert response["Cache-Control"] == "no-store"
    families = {family.name: family for family in text_string_to_metric_families(response.content.decode())}
    assert sum(s.value for s in families["oven_check_steps"].samples if s.labels["kind"] == "start") >= 1
    assert {"oven_check_pack_info", "oven_check_deliveries", "oven_check_job_sheets"} <= set(families)


@pytest.mark.django_db
def test_for_others_there_is_nothing(client):
    assert client.get("/metrics/").content == client.get("/no-such-page/").content
    assert client.get("/metrics/").status_code == 404
