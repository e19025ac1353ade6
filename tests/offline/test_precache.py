"""The set names everything a page on the phone asks for, with the hash of what is really served."""

import json
from hashlib import sha256

import pytest

from tests.household.every_page import PAGES
from tests.reading_pages import read_page
from triage.offline import precache
from triage.offline.precache import page_headers, precache_manifest

pytestmark = pytest.mark.django_db


def served(client, url):
    response = client.get(url)
    assert response.status_code == 200, url
    return b"".join(response.streaming_content) if response.streaming else response.content


def test_each_file_is_served_with_the_hash_that_the_set_names(client):
    wrong = {
        file.url for file in precache_manifest().files if sha256(served(client, file.url)).hexdigest()[:32] != file.hash
    }
    assert wrong == set()


@pytest.mark.parametrize("name", ["start", "question", "advice", "task open"])
def test_every_style_and_script_of_a_page_is_in_the_set(client, name):
    page = read_page(client.get(PAGES[name]))
    asked = {script.attributes["src"] for script in page.select("script")}
    asked |= {link.attributes["href"] for link in page.select('link[rel="stylesheet"]')}
    assert asked - {file.url for file in precache_manifest().files} == set()


def test_a_page_made_on_the_phone_has_the_headers_of_the_sites_own(client):
    headers = client.get(PAGES["question"]).headers
    named = page_headers()
    policies = (sorted(h["Content-Security-Policy"].split("; ")) for h in (headers, named))
    assert next(policies) == next(policies)
    assert {name: headers[name] for name in named if name != "Content-Security-Policy"} == {
        name: words for name, words in named.items() if name != "Content-Security-Policy"
    }


def test_the_version_changes_with_any_file(monkeypatch):
    first = precache_manifest()
    monkeypatch.setattr(precache, "_bytes_of", lambda name: name.encode())
    changed = precache_manifest.__wrapped__()
    assert changed.version != first.version
    assert json.loads(changed.as_json())["version"] == changed.version


def test_a_file_that_is_not_there_is_named():
    with pytest.raises(FileNotFoundError, match=r"There is no static file triage/none\.css"):
        precache._source_of("triage/none.css")
