"""Prices are ranges in the region's own money, and where there are none the call-out charge is asked for."""

import pytest

from tests.check_pages.fragments import lines_of, words_of
from tests.household.checks_done import answers_of, at
from triage.check_pages.presenters.prices import currency_of, has_prices, money, prices_of, rounded
from triage.engine.repairs import Range

ELEMENT = answers_of("fan-element-open", "no-heat")


@pytest.mark.parametrize(
    ("amount", "shown"), [(0.4, 0), (7.2, 7), (19.6, 20), (47.6, 50), (98.7, 100), (212.9, 210), (15_532, 16_000)]
)
def test_a_rough_price_has_two_figures(amount, shown):
    assert rounded(amount) == shown


@pytest.mark.parametrize(
    ("region", "words"),
    [
        ("gb-eng", "about £70 to £190"),
        ("de", "about €70 to €190"),
        ("se", "about 70 to 190 SEK"),
        ("iec", "about 70 to 190"),
    ],
)
def test_money_is_that_of_the_place_and_of_none_where_the_place_is_not_known(check_request, region, words):
    assert money(check_request(at("/check/", {}, region)), Range(70, 190)) == words


def test_two_ends_that_round_to_one_are_told_once(check_request):
    assert money(check_request(at("/check/", {})), Range(39.6, 40.2)) == "about £40"


def test_a_price_is_a_range_with_the_cost_of_a_visit_for_nothing(check_request):
    seen = check_request(at("/check/", ELEMENT))
    lines = lines_of("prices", prices=prices_of(seen))
    assert lines[0].startswith("If somebody comes, the whole job usually costs about £")
    assert lines[1] == "A visit that finds nothing to repair costs about £40 to £110."


@pytest.mark.parametrize("region", ["se", "ca", "iec"])
def test_no_price_of_another_currency_is_shown(check_request, region):
    seen = check_request(at("/check/", ELEMENT, region))
    text = words_of("prices", prices=prices_of(seen))
    assert text.startswith("We have no prices for this place.")
    assert "times that charge" in text
    assert not any(sign in text for sign in "£€$")


def test_a_call_out_charge_that_is_known_gives_the_price_anywhere(check_request):
    seen = check_request(at("/check/", ELEMENT, "se"))
    assert prices_of(seen, 800.0).job.endswith(" SEK")
    assert currency_of(seen.region) == "SEK"


def test_nothing_is_priced_where_the_oven_works_as_it_should(check_request):
    fan = check_request(at("/check/", answers_of("normal-fan-run-on", "fan-after")))
    assert not has_prices(fan.step)
    assert has_prices(check_request(at("/check/", ELEMENT)).step)
