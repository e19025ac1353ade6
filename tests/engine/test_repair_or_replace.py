"""What a repair and a new oven cost a year: against numpy-financial, published exercises, and thrown dice."""

import numpy as np
import numpy_financial as npf
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.builders import ANYWHERE, electric_oven
from triage.engine.belief import infer_belief
from triage.engine.model import compile_model
from triage.engine.repair_or_replace import (
    annual_cost,
    central_range,
    compare,
    cumulative_probability,
    price_classes,
    price_distribution,
    years_left,
)
from triage.engine.repairs import Costs, Range

COSTS = Costs()
POUNDS = electric_oven().costs.prices["GBP"]


@given(st.floats(1, 10_000), st.floats(1, 40), st.floats(0.001, 0.4))
def test_the_yearly_cost_is_the_payment_numpy_financial_gives(outlay, years, interest):
    assert annual_cost(outlay, years, interest) == pytest.approx(-npf.pmt(interest, years, outlay), rel=1e-9)


def test_money_that_costs_nothing_is_spread_evenly():
    assert annual_cost(300, 12, 0) == 25 == -npf.pmt(0, 12, 300)


@pytest.mark.parametrize(
    ("outlay", "a_year", "years", "interest", "published"),
    [
        # A textbook exercise as answered on a study site (seen).
        (290_000, 8_000, 3, 0.14, 132_912.13),
        (180_000, 12_000, 2, 0.14, 121_312.15),
        # The usual example of an encyclopaedia article on the method (from memory).
        (50_000, 13_000, 3, 0.05, 31_360.43),
        (150_000, 7_500, 8, 0.05, 30_708.27),
    ],
)
def test_published_exercises_come_out(outlay, a_year, years, interest, published):
    assert annual_cost(outlay, years, interest) + a_year == pytest.approx(published, abs=0.01)


def test_the_range_of_prices_is_that_of_a_hundred_thousand_ovens():
    prices = [(0.6, Range(90, 190)), (0.3, Range(200, 400)), (0.1, Range(75, 75))]
    dice = np.random.default_rng(3)
    which = dice.choice(3, 100_000, p=[chance for chance, _ in prices])
    lows, highs = (np.array([span[end] for _, span in prices])[which] for end in (0, 1))
    drawn = dice.uniform(lows, highs)
    assert central_range(prices) == pytest.approx(np.quantile(drawn, [0.1, 0.9]), rel=0.01)
    assert cumulative_probability(150, prices) == pytest.approx((drawn <= 150).mean(), abs=0.01)


def test_two_faults_at_once_cost_at_least_the_dearer_and_at_most_both():
    model = compile_model(electric_oven(), ANYWHERE)
    told = dict(
        zip((h.faults for h in model.hypotheses), price_distribution(infer_belief(model, {}), POUNDS), strict=True)
    )
    one, other = POUNDS["p2"], POUNDS["p4"]
    assert told[("cooling-fan-seized", "board-or-display-dead")][1] == (other.low, one.high + other.high)
    assert sum(chance for chance, _ in told.values()) == pytest.approx(1)


def test_no_currency_is_made_into_another():
    costs = electric_oven().costs
    assert price_classes(costs, "GBP", None) == costs.prices["GBP"]
    assert price_classes(costs, "SEK", None) is None
    assert price_classes(costs, "SEK", 600.0)["p0"] == (600, 600)


def test_multiples_of_the_call_out_agree_with_every_table():
    """The middle of each class, over the middle of the call-out, lies within the multiples."""
    costs = electric_oven().costs
    for table in costs.prices.values():
        for name, span in table.items():
            ratio = sum(span) / sum(table["p0"])
            assert costs.call_out_multiples[name].low <= ratio <= costs.call_out_multiples[name].high, name


@pytest.mark.parametrize(("age", "left"), [(0, (12, 20)), (6, (6, 14)), (11.5, (1, 8.5)), (30, (1, 2))])
def test_an_old_oven_has_fewer_years_to_go_but_never_none(age, left):
    assert years_left(age, Range(12, 20)) == left


def test_at_the_price_a_repair_is_worth_both_cost_the_same_a_year():
    found = compare([(1.0, Range(100, 200))], 6, 450, COSTS)
    short, long = found.break_even
    assert annual_cost(short * 1.15, 6, 0.03) == pytest.approx(annual_cost(450, 12, 0.03))
    assert annual_cost(long * 1.05, 14, 0.03) == pytest.approx(annual_cost(450, 20, 0.03))


def test_in_the_middle_of_its_life_an_oven_is_worth_about_half_the_price_of_a_new_one():
    """The trade's own rule: repair if it costs under half of a like oven (common practice, seen on one page)."""
    found = compare([(1.0, Range(100, 200))], 8, 1000, COSTS)
    assert found.break_even.low < 500 < found.break_even.high


@given(st.floats(0, 40), st.floats(50, 5000), st.floats(50, 400), st.floats(0, 400))
def test_every_range_is_in_order_and_an_older_oven_is_worth_no_more(age, new_oven, low, width):
    prices = [(1.0, Range(low, low + width))]
    now, later = compare(prices, age, new_oven, COSTS), compare(prices, age + 1, new_oven, COSTS)
    for span in (now.repair_price, now.repair_per_year, now.new_per_year, now.break_even, now.share_cheaper):
        assert 0 <= span.low <= span.high
    assert later.break_even.low <= now.break_even.low + 1e-9
    assert later.break_even.high <= now.break_even.high + 1e-9
    assert now.share_cheaper.high <= 1
