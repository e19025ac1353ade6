"""The guide tells of everything that is kept: no table of the database is missing from its list."""

import re

import pytest
from django.apps import apps

from tests.whole_site.project_files import ROOT

ROW = re.compile(r"^\| (?P<what>[^|]+) \| (?P<where>[^|]+) \| (?P<until>[^|]+) \|$", re.MULTILINE)
# Where the list says the rows of each table are.
WHERE = {
    "AuditEntry": "audit entries",
    "ApiKey": "API keys",
    "Delivery": "deliveries",
    "Firm": "firms",
    "Invitation": "invitations",
    "JobSheet": "job sheet",
    "Member": "members",
    "Note": "job sheet",
    "Outcome": "job sheet",
    "RatingPlatePhoto": "job sheet",
    "Report": "reports",
    "RequestCount": "keyed hashes",
    "Session": "sessions",
    "SignInTry": "keyed hashes",
    "User": "accounts",
}
OF_DJANGO = {"ContentType", "Group", "Permission"}  # names of its own tables and rights; no person stands there


def rows():
    guide = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    return list(ROW.finditer(guide[guide.index("## What is kept") : guide.index("## Run it on a server")]))


def test_every_table_has_its_place_in_the_list():
    assert {model.__name__ for model in apps.get_models()} - OF_DJANGO == set(WHERE)


@pytest.mark.parametrize("table", WHERE)
def test_the_list_says_where_and_until_when(table):
    assert [row for row in rows() if WHERE[table] in row["where"] and row["until"].strip()]


def test_of_an_api_key_it_names_what_the_table_holds():
    (row,) = [row for row in rows() if row["where"] == WHERE["ApiKey"]]
    held = {field.name for field in apps.get_model("triage", "ApiKey")._meta.fields} - {"id", "firm"}
    said = {"name": "name", "key_hash": "hash", "prefix": "first characters", "created": "made"}
    assert held == {*said, "last_used", "revoked"}
    assert all(text in row["what"] for text in (*said.values(), "last used", "revoked"))
