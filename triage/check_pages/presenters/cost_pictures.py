"""What the page on costs draws: the same rounded ranges as its sentences, and only where there is money to draw."""

from collections.abc import Iterable

from django.utils.translation import gettext as _

from triage.check_pages.drawings.drawing import Drawing
from triage.check_pages.drawings.money_bars import MoneyRange, money_bars
from triage.check_pages.presenters.prices import CALL_OUT_CLASS, SIGNS, currency_of, money, repair_prices, rounded
from triage.check_pages.request import CheckRequest
from triage.engine.repair_or_replace import Comparison, central_range
from triage.engine.repairs import Range


def visit_picture(check_request: CheckRequest, call_out: float | None) -> Drawing | None:
    """The whole job, and where the place has prices a visit alone; None where no money is known."""
    prices = repair_prices(check_request, call_out)
    if prices is None:
        return None
    rows = [(_("The whole job"), central_range(prices))]
    if call_out is None:
        table = check_request.pack.costs.prices[currency_of(check_request.region)]
        rows.append((_("A visit without a repair"), table[CALL_OUT_CLASS]))
    return _bars(check_request, rows, _unit(check_request))


def yearly_picture(check_request: CheckRequest, found: Comparison, wasted: Range | None) -> Drawing:
    """A repair and a new oven, each by the year, and what the fault wastes where that is known in money."""
    rows = [(_("A repair"), found.repair_per_year), (_("A new oven"), found.new_per_year)]
    if wasted is not None:
        rows.append((_("Wasted electricity"), wasted))
    return _bars(check_request, rows, _("%(unit)s a year") % {"unit": _unit(check_request)})


def _bars(check_request: CheckRequest, rows: Iterable[tuple[str, Range]], unit: str) -> Drawing:
    ranges = [
        MoneyRange(
            _("%(name)s: %(range)s") % {"name": name, "range": money(check_request, span)},
            float(rounded(span.low)),
            float(rounded(span.high)),
        )
        for name, span in rows
    ]
    told = _("In %(unit)s, each from the least to the most, with a mark in the middle. %(ranges)s.")
    caption = told % {"unit": unit, "ranges": ". ".join(one.words for one in ranges)}
    return money_bars(ranges, unit, {"kind": "costs", "text": caption})


def _unit(check_request: CheckRequest) -> str:
    currency = currency_of(check_request.region)
    return SIGNS.get(currency, currency) or _("your currency")
