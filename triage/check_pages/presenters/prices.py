"""Prices: always a range, rounded so that nothing looks surer than it is, in the region's own currency."""

from dataclasses import dataclass
from math import floor, log10

from triage.check_pages.request import CheckRequest
from triage.engine import Band, Result
from triage.engine.repair_or_replace import PriceDistribution, central_range, price_classes, price_distribution
from triage.engine.repairs import Range
from triage.jobsheet.sentences import sentence
from triage.knowledge.region_builder import RegionProfile

CURRENCY_SIGNS = {"GBP": "£", "EUR": "€", "USD": "$"}
CALL_OUT_CLASS = "p0"
FIVES, FIVES_FROM, HUNDRED = 5, 20, 100


@dataclass(frozen=True)
class Prices:
    """What a repair may come to: the whole `job` and, where the trade's prices are known, a `visit` that finds nothing
    to repair; where no money is known at all, how many times the call-out charge."""

    job: str = ""
    visit: str = ""
    times_low: str = ""
    times_high: str = ""


def repair_prices(check_request: CheckRequest, call_out: float | None = None) -> PriceDistribution | None:
    """What a repair may cost here by cause; None where the place has no prices and no call-out charge is known."""
    classes = price_classes(check_request.pack.costs, currency_of(check_request.region), call_out)
    return None if classes is None else price_distribution(check_request.check.belief, classes)


def prices_of(check_request: CheckRequest, call_out: float | None = None) -> Prices:
    costs = check_request.pack.costs
    prices = repair_prices(check_request, call_out)
    if prices is None:
        times = central_range(price_distribution(check_request.check.belief, costs.call_out_multiples))
        return Prices(times_low=f"{times.low:.1f}", times_high=f"{times.high:.1f}")
    visit = visit_price(check_request) if call_out is None else None
    return Prices(
        job=money(check_request, central_range(prices)), visit=money(check_request, visit) if visit is not None else ""
    )


def visit_price(check_request: CheckRequest) -> Range:
    """What a visit without a repair costs, where the place has prices."""
    return check_request.pack.costs.prices[currency_of(check_request.region)][CALL_OUT_CLASS]


def has_prices(step: Result) -> bool:
    """Whether a price is worth a word: not where the oven works as it should."""
    return step.verdict.band is not Band.NORMAL


def currency_of(region: RegionProfile) -> str:
    """The currency people pay in there; none where the place itself is not known."""
    return region.currency if region.territory else ""


def money(check_request: CheckRequest, span: Range) -> str:
    """A range of money, "about £70 to £190"; "about £40" where both ends round to the same."""
    currency = currency_of(check_request.region)
    low, high = (rounded(end) for end in span)
    least = with_currency(low, currency if currency in CURRENCY_SIGNS else "")
    return sentence("money", low="" if low == high else least, high=with_currency(high, currency))


def with_currency(amount: int, currency: str) -> str:
    sign = CURRENCY_SIGNS.get(currency)
    return f"{sign}{amount}" if sign else f"{amount} {currency}".strip()


def rounded(amount: float) -> int:
    """Two figures are all that rough prices are worth, and fives below a hundred."""
    if amount < FIVES_FROM:
        return round(amount)
    step = FIVES if amount < HUNDRED else 10 ** (floor(log10(amount)) - 1)
    return int(step * floor(amount / step + 0.5))
