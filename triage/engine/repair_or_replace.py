"""Repair or a new oven: what each costs a year, over every cause the answers leave open. Ranges, never a verdict.

Two outlays that last unequally long are compared by their equivalent annual cost: the level yearly payment that is
worth as much as the outlay, over the years it lasts. Both ovens are taken to be of one make: if ovens last long, the
old one has long to go as well.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import exp, log1p

from triage.engine.belief import Belief
from triage.engine.repairs import Costs, Span

# A repair is told as the range that eight in ten fall into.
LOW_TAIL, HIGH_TAIL = 0.1, 0.9
HALVINGS = 60
# An oven past its years still has one to go, and up to two if it was a good one (author's judgement).
LEAST_LEFT = Span(1.0, 2.0)

Outlook = Sequence[tuple[float, Span]]


@dataclass(frozen=True, slots=True)
class Comparison:
    """`repair` is the price of one repair; `years_left` with it; `worth_up_to` the price at which a repair costs as
    much a year as the new oven; `cheaper` the share of ovens that answer like this whose repair costs less."""

    repair: Span
    years_left: Span
    repair_a_year: Span
    new_a_year: Span
    worth_up_to: Span
    cheaper: Span


def annual_cost(outlay: float, years: float, interest: float) -> float:
    """The yearly payment worth `outlay` over `years`."""
    if interest == 0:
        return outlay / years
    return outlay * interest / (1 - exp(-years * log1p(interest)))


def price_classes(costs: Costs, currency: str, call_out: float | None) -> Mapping[str, Span] | None:
    """What repairs of each class cost: from a call-out charge that is known, else from the currency's own table;
    None where there is neither. No currency is ever made into another."""
    if call_out is not None:
        return {name: span.times(call_out) for name, span in costs.call_outs.items()}
    return costs.prices.get(currency)


def outlook(belief: Belief, prices: Mapping[str, Span]) -> Outlook:
    """The chance of each cause and what having it repaired costs. Two faults at once cost at least the dearer, at
    most both."""
    faults = belief.model.pack.faults
    found = []
    for hypothesis, chance in zip(belief.model.hypotheses, belief.chances, strict=True):
        each = [prices[faults[fault].price] for fault in hypothesis.faults]
        found.append((chance, Span(max(p.low for p in each), sum(p.high for p in each))))
    return found


def share_up_to(price: float, prices: Outlook) -> float:
    """The chance that a repair costs no more than `price`, each cause's price spread evenly over its range."""
    return sum(chance * _part_up_to(price, span) for chance, span in prices)


def _part_up_to(price: float, span: Span) -> float:
    if span.high == span.low:
        return float(price >= span.low)
    return min(1.0, max(0.0, (price - span.low) / (span.high - span.low)))


def usual_range(prices: Outlook) -> Span:
    """The range that eight in ten repairs fall into."""
    return Span(_price_at(LOW_TAIL, prices), _price_at(HIGH_TAIL, prices))


def _price_at(share: float, prices: Outlook) -> float:
    low = min(span.low for _, span in prices)
    high = max(span.high for _, span in prices)
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (low, middle) if share_up_to(middle, prices) >= share else (middle, high)
    return high


def years_left(age: float, life: Span) -> Span:
    return Span(max(life.low - age, LEAST_LEFT.low), max(life.high - age, LEAST_LEFT.high))


def compare(prices: Outlook, age: float, new_oven: float, costs: Costs) -> Comparison:
    """What a repair and a new oven cost a year; `age` in years, `new_oven` with fitting."""
    left = years_left(age, costs.life)
    new = Span(
        annual_cost(new_oven, costs.life.high, costs.interest), annual_cost(new_oven, costs.life.low, costs.interest)
    )
    repair = usual_range(prices)
    worth = Span(
        new.high / annual_cost(1 + costs.fails.high, left.low, costs.interest),
        new.low / annual_cost(1 + costs.fails.low, left.high, costs.interest),
    )
    worth = Span(min(worth), max(worth))
    return Comparison(
        repair=repair,
        years_left=left,
        repair_a_year=Span(
            annual_cost(repair.low * (1 + costs.fails.low), left.high, costs.interest),
            annual_cost(repair.high * (1 + costs.fails.high), left.low, costs.interest),
        ),
        new_a_year=new,
        worth_up_to=worth,
        cheaper=Span(share_up_to(worth.low, prices), share_up_to(worth.high, prices)),
    )
