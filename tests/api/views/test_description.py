"""`GET /api/v1/openapi.json`."""

from triage.api.openapi import document


def test_the_description_is_served_as_it_is(client):
    response = client.get("/api/v1/openapi.json")
    assert response.headers["Content-Type"] == "application/json"
    assert response.json() == document()
