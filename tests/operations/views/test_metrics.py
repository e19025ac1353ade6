"""`/metrics/` for who may; for anybody else it is an address like any that is none."""

import pytest
from prometheus_client.parser import text_string_to_metric_families

pytestmark = pytest.mark.django_db


def test_whoever_may_reads_what_the_reference_parser_reads(client, settings):
    settings.TRIAGE_METRICS_FROM = "127.0.0.1"
    client.get("/?region=gb-eng")
    response = client.get("/metrics/")
    assert response["Content-Type"] == "text/plain; version=0.0.4; charset=utf-8"
    assert response["Cache-Control"] == "no-store"
    told = {family.name: family for family in text_string_to_metric_families(response.content.decode())}
    started = [s.value for s in told["oven_check_steps"].samples if s.labels["kind"] == "start"]
    assert sum(started) >= 1
    assert {"oven_check_pack_info", "oven_check_deliveries", "oven_check_job_sheets"} <= set(told)


def test_for_others_there_is_nothing(client):
    assert client.get("/metrics/").content == client.get("/no-such-page/").content
    assert client.get("/metrics/").status_code == 404
