"""Prices in words: always a range, rounded so that nothing looks surer than it is, in the region's own currency."""

from math import floor, log10

from django.utils.translation import gettext as _

from triage.check_pages.request import CheckRequest
from triage.engine import Band, Result
from triage.engine.repair_or_replace import PriceDistribution, central_range, price_classes, price_distribution
from triage.engine.repairs import Range
from triage.knowledge.region_builder import RegionProfile

SIGNS = {"GBP": "£", "EUR": "€", "USD": "$"}
CALL_OUT_CLASS = "p0"
FIVES, FIVES_FROM, HUNDRED = 5, 20, 100


def repair_prices(check_request: CheckRequest, call_out: float | None = None) -> PriceDistribution | None:
    """What a repair may cost here by cause; None where the place has no prices and no call-out charge is known."""
    classes = price_classes(check_request.pack.costs, currency_of(check_request.region), call_out)
    return None if classes is None else price_distribution(check_request.check.belief, classes)


def price_lines(check_request: CheckRequest, call_out: float | None = None) -> list[str]:
    """What a visit may come to, in money or else in call-out charges."""
    costs = check_request.pack.costs
    prices = repair_prices(check_request, call_out)
    if prices is None:
        times = central_range(price_distribution(check_request.check.belief, costs.call_out_multiples))
        return [
            _("We have no prices for this place. Ask what a call-out costs before anybody comes."),
            _("The whole job then usually costs %(times)s times that charge.") % {"times": tenths_words(times)},
        ]
    lines = [
        _("If somebody comes, the whole job usually costs %(range)s.")
        % {"range": money(check_request, central_range(prices))}
    ]
    if call_out is None:
        visit_only = costs.prices[currency_of(check_request.region)][CALL_OUT_CLASS]
        lines.append(
            _("A visit that finds nothing to repair costs %(range)s.") % {"range": money(check_request, visit_only)}
        )
    lines.append(_("Eight in ten ovens that answer like this lie in that range. Agree a price before work starts."))
    return lines


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
    words = {"low": with_currency(low, currency if currency in SIGNS else ""), "high": with_currency(high, currency)}
    if low == high:
        return _("about %(high)s") % words
    return _("about %(low)s to %(high)s") % words


def with_currency(amount: int, currency: str) -> str:
    sign = SIGNS.get(currency)
    return f"{sign}{amount}" if sign else f"{amount} {currency}".strip()


def rounded(amount: float) -> int:
    """Two figures are all that rough prices are worth, and fives below a hundred."""
    if amount < FIVES_FROM:
        return round(amount)
    step = FIVES if amount < HUNDRED else 10 ** (floor(log10(amount)) - 1)
    return int(step * floor(amount / step + 0.5))


def tenths_words(span: Range) -> str:
    return _("%(low)s to %(high)s") % {"low": f"{span.low:.1f}", "high": f"{span.high:.1f}"}
