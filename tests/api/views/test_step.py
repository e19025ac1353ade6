"""`GET /api/v1/step`: any address gets a step, and no forged one gets a traceback."""

import pytest

from tests.api.presenters.steps import validator


@pytest.mark.parametrize(
    "query",
    [
        "",
        "region=gb-eng",
        "region=atlantis&complaint=no-heat",
        "region=gb-eng&complaint=no-heat&danger=none&lamp-state=%00",
        "%ff%fe=%ff&complaint",
        "&".join(f"q{n}=a" for n in range(3000)),
        "complaint=" + "a" * 20_000,
        "did-change-lamp=fixed&cold=yes&supply-off=yes",
    ],
)
def test_any_address_gets_a_step(client, query):
    response = client.get(f"/api/v1/step?{query}")
    assert response.status_code == 200
    assert response.headers["Content-Type"] == "application/json"
    validator("step").validate(response.json())


def test_no_database_is_asked_where_no_firm_is_named(client):
    """This test has no database, so a query would fail it."""
    assert client.get("/api/v1/step?region=gb-eng&complaint=no-heat&danger=none").json()["kind"] == "question"


@pytest.mark.django_db
def test_a_firm_that_does_not_exist_is_told(client):
    told = client.get("/api/v1/step?region=gb-eng&firm=nobody").json()
    assert told["notices"] == ["We do not know the repair firm in this address. The check works without it."]
