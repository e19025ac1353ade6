"""Each page answers four ways, carries the way out and the region's number, and has one heading."""

import pytest

from tests.household.every_page import PAGES
from tests.reading_pages import read_page

WAYS = {
    "page": ({}, True),
    "fragment": ({"HX-Request": "true"}, False),
    "boosted": ({"HX-Request": "true", "HX-Boosted": "true"}, True),
    "history restore": ({"HX-Request": "true", "HX-History-Restore-Request": "true"}, True),
}


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("name", PAGES)
def test_each_page_answers_four_ways(client, name, way):
    headers, whole = WAYS[way]
    response = client.get(PAGES[name], headers=headers)
    assert response.status_code == 200
    page = read_page(response)
    assert len(page.select("h1")) == 1
    assert len(page.select("html")) == whole
    assert len(page.select("main")) == whole
    assert len(page.select("nav.way-out")) == 1


@pytest.mark.parametrize("name", PAGES)
def test_each_page_has_the_way_out_with_the_answers_and_the_number_of_the_region(client, name):
    page = read_page(client.get(PAGES[name]))
    danger, call = page.select("nav.way-out a")
    assert danger.attributes["href"].startswith("/danger/?region=")
    assert "hx-get" not in danger.attributes
    assert (call.attributes["href"], call.text) == ("tel:999", "Call 999")


@pytest.mark.parametrize("name", PAGES)
def test_each_page_names_itself_and_the_heading_says_the_same(client, name):
    page = read_page(client.get(PAGES[name]))
    assert page.one("title").text == f"{page.one('h1').text} – Oven fault check"


@pytest.mark.parametrize("name", PAGES)
def test_every_link_leads_to_a_page(client, name):
    links = {link.attributes["href"] for link in read_page(client.get(PAGES[name])).select("a")}
    for href in sorted(links):
        if href.startswith("/"):
            assert client.get(href).status_code == 200, href
        else:
            assert href.startswith(("tel:", "#"))


@pytest.mark.parametrize("name", PAGES)
def test_no_page_says_anything_else_with_no_id_twice(client, name):
    ids = [element.attributes["id"] for element in read_page(client.get(PAGES[name])).select("[id]")]
    assert len(ids) == len(set(ids))


def test_only_reading_is_possible(client):
    for path in ("/", "/danger/", "/check/", "/check/summary/", "/check/task/set-clock/", "/not-this/microwave/"):
        assert client.post(path).status_code == 405
        assert client.head(path).status_code == 200
