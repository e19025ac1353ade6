"""The page on costs carries the answers along, shows what was typed, and waits for advice."""

import pytest

from tests.household.checks_done import address, answers_of, at, links_of, open_page

SEAL = answers_of("door-seal-worn", "door")


def test_the_form_carries_the_answers_and_what_was_typed_stays(client):
    page = open_page(client, at("/check/costs/", {**SEAL, "cost-use": "500", "cost-kwh": '"><b>'}))
    kept = {field.attributes["name"]: field.attributes["value"] for field in page.select('input[type="hidden"]')}
    assert kept == {"region": "gb-eng", **SEAL}
    assert page.one("#cost-use").attributes["value"] == "500"
    assert page.one("#cost-kwh").attributes["value"] == '"><b>'
    assert page.one("#cost-use").attributes["aria-describedby"] == "cost-use-wrong cost-use-hint"
    assert page.one("#cost-use-wrong").text.startswith("A week has 168 hours.")


def test_what_is_typed_is_no_answer_and_no_mistake_in_the_address(client):
    page = open_page(client, at("/check/costs/", {**SEAL, "cost-use": "4"}))
    assert page.select("details.note") == []
    assert "cost-use" not in links_of(page)["Back to the advice"]


def test_the_advice_leads_there_and_it_leads_back(client):
    advice = open_page(client, at("/check/", SEAL))
    href = links_of(advice)["Electricity, and a repair or a new oven"]
    assert links_of(open_page(client, href))["Back to the advice"] == at("/check/", SEAL)


LABEL = {"cost-litres": "73", "cost-cycle": "0,82", "cost-class": "A+"}


def test_an_energy_label_is_read_without_a_check_behind_the_danger_signs(client):
    first = open_page(client, "/?region=ie")
    signs = open_page(client, links_of(first)["The energy label"])
    assert signs.one("h1").text == "Is there any danger?"
    page = open_page(
        client, next(href for href in links_of(signs).values() if href.endswith("costs/?region=ie&danger=none"))
    )
    assert page.one("h1").text == "The energy label"
    kept = {field.attributes["name"]: field.attributes["value"] for field in page.select('form input[type="hidden"]')}
    told = open_page(client, at(page.one("form").attributes["action"], {**kept, **LABEL}, kept.pop("region")))
    assert "energy index of 95.3, which is class A (EU rules)." in told.one(".words").text
    assert "The label says class A+, so one of its numbers is not right." in told.one(".words").text
    assert links_of(told)["Go to the check"] == "/?region=ie&danger=none"


def test_in_the_middle_of_a_check_the_label_alone_is_read_and_nothing_typed_is_lost(client):
    begun = {"complaint": "no-heat", "danger": "none"}
    page = open_page(client, at("/check/costs/", {**begun, **LABEL, "cost-use": "4", "cost-age": "x"}))
    kept = {field.attributes["name"]: field.attributes["value"] for field in page.select('form input[type="hidden"]')}
    assert kept == {"region": "gb-eng", **begun, "cost-use": "4", "cost-age": "x"}
    assert page.one("#cost-cycle").attributes["value"] == "0,82"
    assert page.select("#cost-use") == []
    assert links_of(page)["Go to the check"] == at("/check/", begun)


@pytest.mark.parametrize(
    "where",
    [
        address("/check/costs/", complaint="smell", smell_type="gas"),
        at("/check/costs/", {"danger": "none", "smoke-source": "flames", **LABEL}),
        address("/check/costs/", complaint="will-not-light", danger="none", oven_fuel="gas"),
    ],
)
def test_a_red_flag_or_another_appliance_stops_it(client, where):
    page = open_page(client, where)
    assert page.select("#cost-litres") == []
    assert page.one("h1").text != "The energy label"


def test_what_was_typed_about_the_label_opens_its_fold(client):
    assert (
        "open" in open_page(client, at("/check/costs/", {**SEAL, "cost-litres": "70"})).one("form details").attributes
    )
