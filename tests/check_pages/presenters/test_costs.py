"""The page on costs: ranges in sentences, what is still missing, and never a word that an oven left off may be used."""

from dataclasses import replace

import pytest

from tests.check_pages.fragments import words_of
from tests.household.checks_done import answers_of, at, open_page
from triage.check_pages.presenters.costs import costs_page
from triage.knowledge.library import library

SEAL = answers_of("door-seal-worn", "door")
ELEMENT = answers_of("fan-element-open", "no-heat")
SEAL_NAME = library().texts["en"].faults["door-seal-worn"].name
ELECTRICITY, COMPARED = "Electricity while the fault lasts", "A repair or a new oven"


def parts(client, answers=SEAL, region="gb-eng", **typed):
    """The paragraphs under each heading."""
    page = open_page(client, at("/check/costs/", {**answers, **{f"cost-{k}": v for k, v in typed.items()}}, region))
    found, heading = {}, ""
    for element in page.one(".words").children:
        if getattr(element, "tag", "") == "h2":
            heading = element.text
        elif getattr(element, "tag", "") == "p":
            found.setdefault(heading, []).append(element.text)
    return found


def test_what_is_missing_is_named(client):
    found = parts(client)
    assert found[ELECTRICITY] == ["Say below how many hours a week the oven is on."]
    assert found[COMPARED] == ["To compare the two, say below: the age of the oven; the price of a new one."]
    assert "The energy label" not in found


def test_where_there_are_no_prices_the_call_out_is_asked_for_too(client):
    assert parts(client, region="se")[COMPARED][0].endswith("the price of a new one; what a call-out costs.")


def test_a_leak_is_told_in_electricity_and_with_a_tariff_in_money(client):
    """Four hours a week through 1 to 10 cm2: 2.3 to 32.9 kWh (see tests/engine/test_running_cost.py)."""
    (line,) = parts(client, use="4")[ELECTRICITY]
    assert line.startswith(f"{SEAL_NAME}: about 2 to 33 kWh a year.")
    (line,) = parts(client, use="4", kwh="0,27")[ELECTRICITY]
    assert line == f"{SEAL_NAME}: about 2 to 33 kWh a year, about £1 to £9."


def test_a_cause_that_wastes_nothing_is_not_given_a_cost(client):
    assert parts(client, ELEMENT, use="4")[ELECTRICITY] == ["None of the likely causes wastes much electricity."]


@pytest.mark.parametrize(("fault", "complaint"), [("hinge-worn", "door"), ("thermostat-stuck-closed", "too-hot")])
def test_an_oven_that_is_to_stay_off_wastes_nothing_whatever_its_use(client, fault, complaint):
    found = parts(client, answers_of(fault, complaint), use="10", kwh="0.3")
    assert found[ELECTRICITY] == ["The oven is to stay off until it has been checked, so it wastes nothing."]


def test_repair_and_new_oven_are_told_as_ranges_and_never_as_a_verdict(client):
    lines = parts(client, age="6", new="450")[COMPARED]
    assert lines[0] == "With a repair, an oven of this age has about 6 to 14 years to go."
    assert "a new oven about £30 to £45 a year." in lines[1]
    assert "at about £210 to £330 for the repair." in lines[2]
    assert lines[-1].startswith("Counted in: 5 to 15 repairs in 100 do not hold")
    assert not any(word in " ".join(lines).lower() for word in ("you should", "buy a", "not worth"))


def test_where_everything_is_open_the_share_says_so(client):
    lines = parts(client, region="se", age="14", new="9000", call="800")[COMPARED]
    assert "anything from fewer than 1 to more than 9 in 10 ovens" in lines[3]


def test_the_label_is_read_there_too(client):
    lines = parts(client, litres="73", cycle="0,82")["The energy label"]
    assert lines == ["These numbers give an energy index of 95.3, which is class A (EU rules)."]


@pytest.mark.parametrize(
    ("fewest", "most", "told"),
    [
        (0, 0, "fewer than 1 in 10 ovens"),
        (10, 10, "more than 9 in 10 ovens"),
        (6, 6, "about 6 in 10 ovens"),
        (0, 4, "anything from fewer than 1 to 4 in 10 ovens"),
        (7, 10, "anything from 7 to more than 9 in 10 ovens"),
        (3, 7, "anything from 3 to 7 in 10 ovens"),
    ],
)
def test_a_share_is_never_all_and_never_none(check_request, fewest, most, told):
    seen = check_request(at("/check/costs/", {**SEAL, "cost-age": "6", "cost-new": "450"}))
    found = replace(costs_page(seen, seen.step).comparison, fewest=fewest, most=most)
    assert f"That is so for {told} that answer like this." in words_of("costs_comparison", found=found)
