"""A page from the shelf is the page that was made: same bytes, same headers, and never another's."""

import gzip

import pytest

from triage.check_pages import keeping
from triage.check_pages.keeping import KeptPage, Shelf

ASKED = "/check/?region=gb-eng&complaint=no-heat&heat-main=no-heat&danger=none"


@pytest.fixture(autouse=True)
def shelf(monkeypatch):
    empty = Shelf(5)
    monkeypatch.setattr(keeping, "SHELF", empty)
    return empty


def headers_of(response):
    return {name: value for name, value in response.headers.items() if name != "Content-Length"}


@pytest.mark.parametrize("address", ["/?region=gb-eng", "/danger/?region=us", ASKED])
def test_the_second_answer_is_the_first_one_again(client, shelf, address):
    first = client.get(address)
    assert len(shelf) == 1
    again = client.get(address)
    assert again.content == first.content
    assert headers_of(again) == headers_of(first)
    assert len(shelf) == 1


def test_it_is_not_worked_out_again(client, monkeypatch):
    client.get(ASKED)
    monkeypatch.setattr("triage.household.views.step.page_of", None)
    assert client.get(ASKED).status_code == 200


def test_a_browser_that_takes_gzip_gets_the_same_page_packed(client):
    plain = client.get(ASKED)
    packed = client.get(ASKED, headers={"accept-encoding": "br, gzip"})
    assert packed.headers["Content-Encoding"] == "gzip"
    assert gzip.decompress(packed.content) == plain.content
    assert packed.headers["ETag"] == f"W/{plain.headers['ETag']}"
    assert "Accept-Encoding" in plain.headers["Vary"]


def test_a_browser_that_has_it_is_told_so(client):
    etag = client.get(ASKED).headers["ETag"]
    assert client.get(ASKED, headers={"if-none-match": etag}).status_code == 304


@pytest.mark.parametrize(
    "other",
    [
        {"headers": {"hx-request": "true"}},
        {"headers": {"host": "127.0.0.1"}},
        {"secure": True},
        {"query_params": {"region": "gb-eng", "complaint": "door"}},
    ],
    ids=["fragment", "host", "scheme", "answers"],
)
def test_what_a_page_depends_on_gets_a_page_of_its_own(client, shelf, other):
    client.get(ASKED)
    client.get("/check/" if "query_params" in other else ASKED, **other)
    assert len(shelf) == 2


def test_where_no_place_is_named_the_language_of_the_browser_counts(client, shelf):
    here = client.get("/", headers={"accept-language": "en-GB"})
    there = client.get("/", headers={"accept-language": "en-AU"})
    assert here.content != there.content
    assert len(shelf) == 2


@pytest.mark.parametrize("address", [f"{ASKED}&firm=nobody", f"{ASKED}&x={'y' * 400}", "/nowhere/"])
@pytest.mark.django_db
def test_what_depends_on_a_firm_or_hardly_comes_twice_is_not_kept(client, shelf, address):
    client.get(address)
    assert len(shelf) == 0


def test_the_page_not_asked_for_longest_leaves_first():
    shelf, page = Shelf(2), KeptPage(b"", b"", {})
    shelf.put(("a",), page)
    shelf.put(("b",), page)
    shelf.take(("a",))
    shelf.put(("c",), page)
    assert [shelf.take((key,)) is page for key in "abc"] == [True, False, True]
    shelf.clear()
    assert len(shelf) == 0
