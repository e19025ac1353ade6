"""What anybody may read: any address gets a step, no forged one a traceback; the description is whole, with the job
sheet's schema in it and no reference that leads nowhere; what is not there is answered in the API's shape."""

import json

import pytest
from jsonschema import Draft202012Validator

from tests.api.asking import problem_in
from tests.api.presenters.steps import validator
from tests.jobsheet.sheets import make_sheet
from triage.api.views.public import openapi_document
from triage.jobsheet.formats.json import schema


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
    payload = client.get("/api/v1/step?region=gb-eng&firm=nobody").json()
    assert payload["notices"] == ["We do not know the repair firm in this address. The check works without it."]


def test_the_pack_is_in_the_words_of_the_place(client):
    england, states = (client.get(f"/api/v1/pack?region={place}").json() for place in ("gb-eng", "us"))
    assert england["region"]["id"] == "gb-eng"
    assert england["complaints"][0]["answers"][0][0] == "complaint"
    assert england["observations"] != states["observations"]


def test_the_schema_is_served_as_it_is(client):
    response = client.get("/api/v1/job-sheet.schema.json")
    assert response.headers["Content-Type"] == "application/schema+json"
    assert response.json() == schema()
    Draft202012Validator.check_schema(response.json())


def test_the_description_is_served_as_it_is(client):
    response = client.get("/api/v1/openapi.json")
    assert response.headers["Content-Type"] == "application/json"
    assert response.json() == openapi_document()


def references(data):
    if isinstance(data, dict):
        found = [data["$ref"]] if isinstance(data.get("$ref"), str) else []
        return found + [ref for part in data.values() for ref in references(part)]
    return [ref for part in data for ref in references(part)] if isinstance(data, list) else []


def test_no_reference_leads_nowhere():
    for ref in references(openapi_document()):
        place = openapi_document()
        for name in ref.removeprefix("#/").split("/"):
            place = place[name]
        assert place


@pytest.mark.parametrize("kind", ["finished", "unfinished", "danger"])
def test_the_job_sheet_is_described_as_its_published_schema_does(kind):
    whole = {"$ref": "#/components/schemas/sheet", "components": openapi_document()["components"]}
    validator = Draft202012Validator(whole)
    validator.validate(make_sheet(kind))
    assert not validator.is_valid(make_sheet(kind, status="lost"))


def test_the_published_schema_stays_as_it_is():
    openapi_document()
    assert schema()["$id"] == "urn:oven-fault-check:job-sheet:1"
    assert "$defs" in schema()


def test_it_is_plain_json():
    assert json.loads(json.dumps(openapi_document())) == openapi_document()


@pytest.mark.parametrize(
    "path", ["/api/", "/api/v1", "/api/v2/step", "/api/v1/step/", "/api/v1/firms/a%00b/job-sheets"]
)
@pytest.mark.parametrize("method", ["get", "post", "options", "delete"])
def test_no_page_is_sent_for_what_is_not_there(client, path, method):
    response = getattr(client, method)(path)
    assert response.status_code == 404
    assert problem_in(response)["detail"] == "There is no such address. All addresses are in /api/v1/openapi.json."
