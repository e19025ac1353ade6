"""Repair or a new oven: what each costs a year, over every cause the answers leave open. Ranges, never a verdict.

Two outlays that last unequally long are compared by their equivalent annual cost: the level yearly payment that is
worth as much as the outlay, over the years it lasts. Both ovens are taken to be of one make: if ovens last long, the
old one has long to go as well.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import exp, log1p

from triage.engine.belief import Belief
from triage.engine.repairs import Costs, Range

# A repair is told as the range that eight in ten fall into.
LOW_QUANTILE, HIGH_QUANTILE = 0.1, 0.9
BISECTION_STEPS = 60
# An oven past its years still has one to go, and up to two if it was a good one (author's judgement).
MIN_YEARS_LEFT = Range(1.0, 2.0)

PriceDistribution = Sequence[tuple[float, Range]]


@dataclass(frozen=True, slots=True)
class Comparison:
    """`repair` is the price of one repair; `years_left` with it; `worth_up_to` the price at which a repair costs as
    much a year as the new oven; `cheaper` the share of ovens that answer like this whose repair costs less."""

    repair_price: Range
    years_left: Range
    repair_per_year: Range
    new_per_year: Range
    break_even: Range
    share_cheaper: Range


def annual_cost(outlay: float, years: float, interest: float) -> float:
    """The yearly payment worth `outlay` over `years`."""
    if interest == 0:
        return outlay / years
    return outlay * interest / (1 - exp(-years * log1p(interest)))


def price_classes(costs: Costs, currency: str, call_out: float | None) -> Mapping[str, Range] | None:
    """What repairs of each class cost: from a call-out charge that is known, else from the currency's own table;
    None where there is neither. No currency is ever made into another."""
    if call_out is not None:
        return {name: span.scaled(call_out) for name, span in costs.call_out_multiples.items()}
    return costs.prices.get(currency)


def price_distribution(belief: Belief, prices: Mapping[str, Range]) -> PriceDistribution:
    """The chance of each cause and what having it repaired costs. Two faults at once cost at least the dearer, at
    most both."""
    faults = belief.model.pack.faults
    found = []
    for hypothesis, chance in zip(belief.model.hypotheses, belief.probabilities, strict=True):
        each = [prices[faults[fault].price_class] for fault in hypothesis.faults]
        found.append((chance, Range(max(p.low for p in each), sum(p.high for p in each))))
    return found


def cumulative_probability(price: float, prices: PriceDistribution) -> float:
    """The chance that a repair costs no more than `price`, each cause's price spread evenly over its range."""
    return sum(chance * _uniform_cdf(price, span) for chance, span in prices)


def _uniform_cdf(price: float, span: Range) -> float:
    if span.high == span.low:
        return float(price >= span.low)
    return min(1.0, max(0.0, (price - span.low) / (span.high - span.low)))


def central_range(prices: PriceDistribution) -> Range:
    """The range that eight in ten repairs fall into."""
    return Range(_quantile(LOW_QUANTILE, prices), _quantile(HIGH_QUANTILE, prices))


def _quantile(share: float, prices: PriceDistribution) -> float:
    low = min(span.low for _, span in prices)
    high = max(span.high for _, span in prices)
    for _ in range(BISECTION_STEPS):
        middle = (low + high) / 2
        low, high = (low, middle) if cumulative_probability(middle, prices) >= share else (middle, high)
    return high


def years_left(age: float, life: Range) -> Range:
    return Range(max(life.low - age, MIN_YEARS_LEFT.low), max(life.high - age, MIN_YEARS_LEFT.high))


def compare(prices: PriceDistribution, age: float, new_oven: float, costs: Costs) -> Comparison:
    """What a repair and a new oven cost a year; `age` in years, `new_oven` with fitting."""
    left = years_left(age, costs.life_years)
    new = Range(
        annual_cost(new_oven, costs.life_years.high, costs.interest_rate),
        annual_cost(new_oven, costs.life_years.low, costs.interest_rate),
    )
    repair = central_range(prices)
    worth = Range(
        new.high / annual_cost(1 + costs.failure_rate.high, left.low, costs.interest_rate),
        new.low / annual_cost(1 + costs.failure_rate.low, left.high, costs.interest_rate),
    )
    worth = Range(min(worth), max(worth))
    return Comparison(
        repair_price=repair,
        years_left=left,
        repair_per_year=Range(
            annual_cost(repair.low * (1 + costs.failure_rate.low), left.high, costs.interest_rate),
            annual_cost(repair.high * (1 + costs.failure_rate.high), left.low, costs.interest_rate),
        ),
        new_per_year=new,
        break_even=worth,
        share_cheaper=Range(cumulative_probability(worth.low, prices), cumulative_probability(worth.high, prices)),
    )
