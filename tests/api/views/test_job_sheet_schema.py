"""`GET /api/v1/job-sheet.schema.json`: the published schema itself, and it is one (JSON Schema 2020-12)."""

from jsonschema import Draft202012Validator

from triage.jobsheet.formats.json import schema


def test_the_schema_is_served_as_it_is(client):
    response = client.get("/api/v1/job-sheet.schema.json")
    assert response.headers["Content-Type"] == "application/schema+json"
    assert response.json() == schema()
    Draft202012Validator.check_schema(response.json())
