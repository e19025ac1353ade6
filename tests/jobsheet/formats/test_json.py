"""The JSON form against its published schema, judged by an independent validator (jsonschema, draft 2020-12)."""

import copy
import json

import jsonschema
import pytest

from tests.jobsheet.sheets import make_sheet
from triage.jobsheet.formats.json import schema, sheet_json
from triage.knowledge.library import library

VALIDATOR = jsonschema.Draft202012Validator(schema(), format_checker=jsonschema.FormatChecker())


def faults_of(sheet):
    return [error.message for error in VALIDATOR.iter_errors(json.loads(sheet_json(sheet)))]


def test_the_schema_is_a_schema():
    jsonschema.Draft202012Validator.check_schema(schema())


@pytest.mark.parametrize("kind", ["finished", "unfinished", "danger"])
@pytest.mark.parametrize("region", ["gb-eng", "us", "iec"])
def test_every_kind_of_sheet_fits(kind, region):
    assert faults_of(make_sheet(kind, region)) == []


def test_names_stay_readable_in_the_file():
    contact = {"name": "مريم 👩‍🔧", "telephone": "", "email": "m@home.example"}
    assert "مريم 👩‍🔧" in sheet_json(make_sheet(contact=contact))


def objects_in(node, path=()):
    """The way to every object of the schema's instance."""
    if isinstance(node, dict):
        yield path
    children = node.items() if isinstance(node, dict) else enumerate(node) if isinstance(node, list) else ()
    for key, child in children:
        yield from objects_in(child, (*path, key))


def test_nothing_may_be_added_or_left_out_anywhere():
    whole = json.loads(sheet_json(make_sheet("danger")))
    for path in objects_in(whole):
        for change in ("add", "remove"):
            changed = copy.deepcopy(whole)
            node = changed
            for key in path:
                node = node[key]
            if change == "add":
                node["extra"] = 1
            elif path != ("rating_plate",):  # all but `photo` of it may be missing
                del node[next(iter(node))]
            else:
                del node["photo"]
            assert list(VALIDATOR.iter_errors(changed)), (change, path)


def test_nobody_can_write_that_the_oven_is_dead():
    sheet = copy.deepcopy(make_sheet())
    sheet["check"]["supply"]["proved_dead"] = True
    assert faults_of(sheet) == ["False was expected"]


def test_every_id_of_the_pack_fits():
    pattern = schema()["$defs"]["id"]["pattern"]
    names = [*library().pack.faults, *library().pack.observations, *library().pack.red_flags, *library().pack.parts]
    for name in names:
        jsonschema.validate(name, {"type": "string", "pattern": pattern})
