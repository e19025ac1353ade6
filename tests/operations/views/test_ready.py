"""`/ready/` tells a balancer whether to send visitors."""

import pytest

from triage.operations.views import ready


@pytest.mark.django_db
def test_ready(client):
    response = client.get("/ready/")
    assert (response.status_code, response.content) == (200, b"This site is ready.\n")
    assert response["Cache-Control"] == "no-store"


def test_not_ready_says_why_and_the_pages_go_on(client, monkeypatch):
    monkeypatch.setattr(ready, "obstacle", lambda: "The database does not answer.")
    response = client.get("/ready/")
    assert (response.status_code, response.content) == (503, b"The database does not answer.\n")
    assert client.get("/?region=gb-eng").status_code == 200
