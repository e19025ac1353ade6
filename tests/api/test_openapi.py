"""The description is whole: the job sheet's schema stands in it, and no reference leads nowhere."""

import json

import pytest
from jsonschema import Draft202012Validator

from tests.jobsheet.sheets import make_sheet
from triage.api.openapi import document
from triage.jobsheet.formats.json import schema


def references(told):
    if isinstance(told, dict):
        found = [told["$ref"]] if isinstance(told.get("$ref"), str) else []
        return found + [ref for part in told.values() for ref in references(part)]
    return [ref for part in told for ref in references(part)] if isinstance(told, list) else []


def test_no_reference_leads_nowhere():
    for ref in references(document()):
        place = document()
        for name in ref.removeprefix("#/").split("/"):
            place = place[name]
        assert place


@pytest.mark.parametrize("kind", ["finished", "unfinished", "danger"])
def test_the_job_sheet_is_described_as_its_published_schema_does(kind):
    whole = {"$ref": "#/components/schemas/sheet", "components": document()["components"]}
    validator = Draft202012Validator(whole)
    validator.validate(make_sheet(kind))
    assert not validator.is_valid(make_sheet(kind, status="lost"))


def test_the_published_schema_stays_as_it_is():
    document()
    assert schema()["$id"] == "urn:oven-fault-check:job-sheet:1"
    assert "$defs" in schema()


def test_it_is_plain_json():
    assert json.loads(json.dumps(document())) == document()
