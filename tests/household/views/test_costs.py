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


@pytest.mark.parametrize(
    ("where", "heading"),
    [
        (address("/check/costs/", complaint="no-heat"), "Is there any danger?"),
        (address("/check/costs/", complaint="smell", smell_type="gas"), None),
    ],
)
def test_before_advice_the_check_goes_on_instead(client, where, heading):
    page = open_page(client, where)
    assert page.select("form") == []
    assert heading is None or page.one("h1").text == heading


def test_what_was_typed_about_the_label_opens_its_fold(client):
    assert (
        "open" in open_page(client, at("/check/costs/", {**SEAL, "cost-litres": "70"})).one("form details").attributes
    )
