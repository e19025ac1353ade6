"""The page of a reading: an address like every other, and never a form after a red flag."""

from urllib.parse import parse_qsl

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


@pytest.mark.parametrize(
    ("kind", "typed"),
    [
        ("meter", {"flashes": "35", "seconds": "-60", "impulses": "1000"}),
        ("meter", {"flashes": "35", "seconds": "60", "impulses": "0"}),
        ("meter", {"flashes": "35", "seconds": "60", "impulses": "1000", "plate": "20"}),
        ("meter", {"flashes": "35", "seconds": "60", "impulses": "1000", "plate": "20000"}),
        ("meter", {"taps": " ".join(["30"] * 60), "impulses": "1000"}),
        ("thermometer", {"set": "180", "time-1": "30", "shown-1": "900"}),
        ("preheat", {"minutes": "0", "set": "200"}),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence_and_every_figure_stays_in_its_field(client, kind, typed):
    sent = {f"read-{name}": text for name, text in typed.items()}
    page = open_page(client, at(f"/reading/{kind}/", {**LOOKED, "read-form": "1", **sent}))
    assert {name: page.one(f"#{name}").attributes["value"] for name in sent} == sent
    assert page.select("#reading-result .note")
    assert page.select("#reading-result .measured") == []


@pytest.mark.parametrize("kind", KINDS)
def test_its_cautions_stand_before_anything_to_fill_in(client, kind):
    words = client.get(at(f"/reading/{kind}/", {**LOOKED, **SURE})).content.decode()
    order = [words.index(mark) for mark in ("<h1", "signal--", "data-reading")]
    assert order == sorted(order)


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


CALLS_FOR_HEAT = {"complaint": "no-heat", "heating-system": "fan-only", "heating-light": "light-stays-on"}


def taken_into_the_check(client, answers, idle, drawing, **more):
    """The answers of the check after these figures of a display, by the bar that takes them there."""
    typed = {"read-form": "1", "read-idle": idle, "read-drawing": drawing, "read-plate": "2200", **more}
    page = open_page(client, at("/reading/meter/", {**LOOKED, **answers, **typed}))
    (use,) = page.select("#reading-result .bars a")
    return dict(parse_qsl(use.attributes["href"].partition("?")[2])), page.one("#reading-result").text


def test_no_power_on_the_setting_that_fails_and_full_power_on_the_grill_settle_an_open_element(client):
    """From outside, and only by pages a householder can reach: the engine's own test of it is in the readings."""
    asked = open_page(client, at("/check/", {**LOOKED, **CALLS_FOR_HEAT})).one("h1").text
    answers, told = taken_into_the_check(client, CALLS_FOR_HEAT, "100", "160")
    assert "Fan and lamp only: they draw some tens of watts. No heater seems to draw power." in told
    answers, told = taken_into_the_check(client, answers, "180", "2350", **{"read-for": "meter-grill"})
    assert "This comes to all of what its plate lets one expect" in told
    advice = open_page(client, at("/check/", answers))
    assert asked.endswith("?")
    assert library().texts_for("gb-eng", "en").faults["fan-element-open"].name in advice.one("main").text


def test_no_power_on_either_clears_no_element_and_the_check_goes_on(client):
    answers, _ = taken_into_the_check(client, CALLS_FOR_HEAT, "180", "210")
    answers, _ = taken_into_the_check(client, answers, "180", "210", **{"read-for": "meter-grill"})
    assert open_page(client, at("/check/", answers)).one("h1").text.endswith("?")


def test_it_says_what_it_waits_for_and_that_it_does_not_allow_any_heat(client):
    waiting = open_page(client, at("/reading/gasket/", LOOKED)).one('[role="status"].note').text
    assert waiting == "Answer these first. The form shows once each answer is yes."
    heats = open_page(client, at("/reading/thermometer/", LOOKED)).select("p.note")[0].text
    assert "It does not say that your oven may be heated." in heats
