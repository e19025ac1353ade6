"""The script is there for firms we know, and other sites' pages may load it."""

import json
import re
from pathlib import Path

import pytest

import triage
from tests.firm_builders import make_firm

pytestmark = pytest.mark.django_db


def test_a_page_of_another_site_may_load_it(client):
    response = client.get(f"/embed/{make_firm().slug}/loader.js")
    assert response["Content-Type"] == "text/javascript; charset=utf-8"
    assert response["Cross-Origin-Resource-Policy"] == "cross-origin"
    assert response["Cache-Control"] == "public, max-age=300"
    assert "oven-fault-check" in response.content.decode()
    assert not response.cookies


def test_it_knows_the_languages_of_the_site(client, settings):
    script = client.get(f"/embed/{make_firm().slug}/loader.js").content.decode()
    (listed,) = re.findall(r"const LANGUAGES = (\[.*?\]);", script)
    assert json.loads(listed) == [code for code, _name in settings.LANGUAGES]
    assert json.loads(listed)[0] == settings.LANGUAGE_CODE


def test_what_an_element_may_say_is_what_is_documented(client):
    script = client.get(f"/embed/{make_firm().slug}/loader.js").content.decode()
    (listed,) = re.findall(r"const ATTRIBUTES = (\[.*?\]);", script)
    guide = (Path(triage.__file__).parent / "embed" / "README.md").read_text("utf-8")
    table = guide[: guide.index("## What your site has to allow")]
    assert sorted(json.loads(listed)) == sorted(re.findall(r"^\| `([\w-]+)` \| [^|]+ \|$", table, re.MULTILINE))


def test_an_unknown_firm_has_none(client):
    assert client.get("/embed/nobody/loader.js").status_code == 404
    assert client.post(f"/embed/{make_firm().slug}/loader.js").status_code == 405
