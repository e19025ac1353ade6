"""The call page over HTTP: whole or in part, never cached, and it always has the way out."""

import pytest
from django.test import Client

from tests.reading_pages import read_page

COLD = "/desk/call/?region=gb-eng&complaint=no-heat&heat-main=no-heat&danger=none"


def test_the_whole_page_has_one_heading_the_way_out_and_works_by_links(client):
    page = read_page(client.get(COLD))
    assert len(page.select("h1")) == 1
    assert page.select("nav.shortcuts a")[0].text.startswith("D")
    assert "Emergency 999" in page.one("nav.shortcuts").text
    assert all(link.attributes["href"].startswith("/desk/call/?") for link in page.select("a[data-go]"))


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
    assert {"private", "no-store"} <= set(client.get(COLD).headers["Cache-Control"].split(", "))


@pytest.mark.parametrize("query", ["", "region=atlantis&call-read=%00", "%FF=%FE&call-id=;", "call-ask=" + "x" * 5000])
def test_any_address_opens_a_page(client, query):
    assert client.get(f"/desk/call/?{query}").status_code == 200


def test_a_pasted_letter_in_the_address_opens_a_page(client):
    assert client.get("/desk/call/?" + "&".join(f"word{n}=letter" for n in range(3000))).status_code == 200


def test_danger_is_announced(client):
    page = read_page(client.get("/desk/call/?region=gb-eng&smoke-source=flames"))
    assert page.one("section.alarm").attributes["role"] == "alert"
    assert "999" in page.one("section.alarm").text
    assert page.select("ul.options") == []


def test_it_only_shows(client):
    assert client.post(COLD).status_code == 405


def test_the_address_of_before_leads_there_with_all_it_says():
    response = Client().get("/call/?region=gb-eng&complaint=no-heat&call-id=ABCDE")
    assert (response.status_code, response.url) == (302, "/desk/call/?region=gb-eng&complaint=no-heat&call-id=ABCDE")
    assert not response.cookies


def test_who_is_not_signed_in_comes_back_to_the_same_call_after_the_door():
    response = Client().get(f"{COLD}&call-id=ABCDE")
    assert response.url.startswith("/desk/sign-in/?next=%2Fdesk%2Fcall%2F%3Fregion%3Dgb-eng%26complaint%3Dno-heat")
    assert response.url.endswith("call-id%3DABCDE")


def test_the_place_is_the_firms_until_the_address_names_another(client, agent):
    agent.firm.region = "ie"
    agent.firm.save()
    assert "Emergency 112" in read_page(client.get("/desk/call/")).one("nav.shortcuts").text
    assert "Emergency 911" in read_page(client.get("/desk/call/?region=us")).one("nav.shortcuts").text
    assert "Emergency 112" in read_page(client.get("/desk/call/?region=atlantis")).one("nav.shortcuts").text


def test_whose_call_it_is_stands_at_the_top(client):
    assert read_page(client.get("/desk/call/")).one("header.call-header .wordmark").text == "Hearth Repairs"


def test_what_an_address_says_that_cannot_be_used_is_said_in_its_own_words(client):
    text = read_page(client.get(f"{COLD}&lamp-state=blue&call-board=perhaps")).one("main").text
    assert "Part of the address about the caller could not be read and was left out: call-board." in text
    assert "We did not know the answer “blue” to “Oven light”. It was left out." in text
