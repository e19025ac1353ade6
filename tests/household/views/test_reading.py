"""The page of a reading: an address like every other, and never a form after a red flag."""

import pytest

from tests.household.checks_done import at, open_page
from triage.check_pages.presenters.readings.kinds import KINDS
from triage.knowledge.library import library

LOOKED = {"danger": "none"}
SURE = {"cold": "yes", "supply-off": "yes"}
FLAGGED = [(o.id, option) for o in library().pack.observations.values() for option in o.flags]


@pytest.mark.parametrize("kind", KINDS)
def test_it_has_one_form_that_works_by_itself_and_goes_back_to_its_own_address(client, kind):
    form = open_page(client, at(f"/reading/{kind}/", {**LOOKED, **SURE})).one("form[data-reading]")
    assert form.attributes["method"] == "get"
    assert form.attributes["action"] == f"/reading/{kind}/#reading-result"
    assert {"region", "danger", "read-form"} <= {e.attributes["name"] for e in form.select('input[type="hidden"]')}


@pytest.mark.parametrize("flagged", FLAGGED, ids="=".join)
def test_after_any_red_flag_there_is_no_form(client, flagged):
    page = open_page(client, at("/reading/meter/", {**LOOKED, **dict([flagged])}))
    assert page.select("form[data-reading]") == []


def test_another_word_is_no_kind(client):
    assert client.get("/reading/magic/").status_code == 404


def test_what_is_wrong_stands_beside_its_field_and_is_named_by_it(client):
    typed = {"read-form": "1", "read-flashes": "35", "read-seconds": "0"}
    page = open_page(client, at("/reading/meter/", {**LOOKED, **typed}))
    field = page.one("#read-seconds")
    assert field.attributes["value"] == "0"
    assert field.attributes["aria-invalid"] == "true"
    wrong = field.attributes["aria-describedby"].split()[0]
    assert page.one(f"#{wrong}").text == "This cannot be less than 1. Check the number and its unit."


def test_a_picture_has_its_words_and_is_hidden_from_those_who_hear_them(client):
    page = open_page(client, at("/reading/run-on/", {**LOOKED, "read-form": "1", "read-heard": "12"}))
    figure = page.one("figure.picture")
    assert figure.one("svg").attributes["aria-hidden"] == "true"
    assert figure.one("figcaption").text.startswith("The fan was still running 12 min after switch-off.")


def test_the_first_page_leads_to_each_quietly_and_to_none_after_a_red_flag(client):
    def links(**answers):
        return {a.attributes["href"].partition("?")[0] for a in open_page(client, at("/", answers)).select("main a")}

    assert {f"/reading/{kind}/" for kind in KINDS} <= links()
    assert not any(address.startswith("/reading/") for address in links(**{"smell-type": "gas"}))
