"""Prices and wasted energy from YAML, and what their author is told when something is wrong."""

import pytest

from tests.builders import electric_oven
from tests.knowledge.small_packs import SMALL_PACK, copy_of_small_pack, edit, told_about
from triage.engine.enums import PriceClass
from triage.engine.repairs import Range, Waste
from triage.knowledge.library import library
from triage.knowledge.pack_builder import build_pack

COSTS = build_pack(SMALL_PACK).costs


def test_the_costs_are_what_their_author_wrote():
    assert COSTS.prices["GBP"]["p2"] == Range(90, 190)
    assert COSTS.call_out_multiples["p0"] == Range(1, 1)
    assert (COSTS.life_years, COSTS.failure_rate, COSTS.interest_rate) == (Range(12, 20), Range(0.05, 0.15), 0.03)
    assert COSTS.waste == {"lamp-failed": Waste(always_watts=Range(10, 30))}


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        (
            "life_years: [12, 20]",
            "life_years: [20, 12]",
            "4: file, life_years: must be a range, not [20, 12]. Write [low, high], both from 1 to 60.",
        ),
        (
            "life_years: [12, 20]",
            "life_years: 12",
            "4: file, life_years: must be a range, not 12. Write [low, high], both from 1 to 60.",
        ),
        ("life_years: [12, 20]\n", "", "1: file: `life_years` is missing. Write [low, high], both from 1 to 60."),
        (
            "failure_rate: [0.05, 0.15]",
            "failure_rate: [yes, no]",
            "5: file, failure_rate: must be a range, not [True, False]. Write [low, high], both from 0 to 1.",
        ),
        ("p2: [1, 3], ", "", "3: file, call_out_multiples: `p2` is missing. Write [low, high], both from 0 to 100."),
        (
            "interest_rate: 0.03",
            "interest_rate: 3",
            "6: file, interest_rate: must be a number from 0 to 0.5, not 3. Give one in that range.",
        ),
        (
            "lamp-failed: {",
            "element-open: {",
            "8: file, waste, element-open: has to be left off, so it wastes nothing. Take it out.",
        ),
        (
            "lamp-failed: {",
            "lamp: {",
            "8: file, waste, lamp: has no 'lamp'. Allowed: element-open, board-dead, lamp-failed, other.",
        ),
        (
            "always_watts: [10, 30]",
            "power_share: [0.2, 0.5]",
            (
                "8: file, waste, lamp-failed, power_share: must be a range, not [0.2, 0.5]. "
                "Write [low, high], both from 0.4 to 1."
            ),
        ),
        (
            "always_watts",
            "watts",
            (
                "8: file, waste, lamp-failed, watts: is not a field here. "
                "Known fields: always_watts, gap_cm2, power_share, too_hot_kelvin."
            ),
        ),
    ],
)
def test_what_is_wrong_is_told(tmp_path, old, new, told):
    folder = copy_of_small_pack(tmp_path)
    edit(folder, "costs", old, new)
    assert f"small_pack/costs.yaml:{told}" in told_about(folder)


def test_every_price_class_has_a_range_wherever_prices_are_given():
    costs = electric_oven().costs
    for table in (*costs.prices.values(), costs.call_out_multiples):
        assert list(table) == list(PriceClass)


def test_prices_are_only_in_currencies_that_some_region_pays_in():
    assert set(electric_oven().costs.prices) <= {place.currency for place in library().regions.values()}
