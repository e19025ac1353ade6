"""The call page over HTTP: whole or in part, never cached, and it always has the way out."""

import pytest

from tests.reading_pages import read_page

COLD = "/call/?region=gb-eng&complaint=no-heat&heat-main=no-heat&danger=none"


def test_the_whole_page_has_one_heading_the_way_out_and_works_by_links(client):
    page = read_page(client.get(COLD))
    assert len(page.select("h1")) == 1
    assert page.select("nav.tools a")[0].text.startswith("D")
    assert "Emergency 999" in page.one("nav.tools").text
    assert all(link.attributes["href"].startswith("/call/?") for link in page.select("a[data-go]"))


@pytest.mark.parametrize(
    ("headers", "whole"),
    [
        ({}, True),
        ({"HX-Request": "true"}, False),
        ({"HX-Request": "true", "HX-Boosted": "true"}, True),
        ({"HX-Request": "true", "HX-History-Restore-Request": "true"}, True),
    ],
)
def test_a_part_is_sent_only_where_it_is_put_in_place(client, headers, whole):
    response = client.get(COLD, headers=headers)
    assert bool(read_page(response).select("html")) is whole
    assert "HX-Request" in response.headers["Vary"]


def test_nobody_keeps_a_callers_story(client):
    assert set(client.get(COLD).headers["Cache-Control"].split(", ")) == {"private", "no-store"}


@pytest.mark.parametrize("query", ["", "region=atlantis&call-read=%00", "%FF=%FE&call-id=;", "call-ask=" + "x" * 5000])
def test_any_address_opens_a_page(client, query):
    assert client.get(f"/call/?{query}").status_code == 200


def test_a_pasted_letter_in_the_address_opens_a_page(client):
    assert client.get("/call/?" + "&".join(f"word{n}=letter" for n in range(3000))).status_code == 200


def test_danger_is_announced(client):
    page = read_page(client.get("/call/?region=gb-eng&smoke-source=flames"))
    assert page.one("section.alarm").attributes["role"] == "alert"
    assert "999" in page.one("section.alarm").text
    assert page.select("ul.options") == []


def test_it_only_shows(client):
    assert client.post(COLD).status_code == 405
