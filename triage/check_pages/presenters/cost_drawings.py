"""What the page on costs draws: the same rounded ranges as its sentences, and only where there is money to draw."""

from collections.abc import Iterable

from triage.check_pages.drawings.drawing import Drawing
from triage.check_pages.drawings.money_bars import MoneyRange, money_bars
from triage.check_pages.presenters.prices import (
    CURRENCY_SIGNS,
    currency_of,
    money,
    repair_prices,
    rounded,
    visit_price,
)
from triage.check_pages.request import CheckRequest
from triage.engine.repair_or_replace import Comparison, central_range
from triage.engine.repairs import Range
from triage.jobsheet.sentences import sentence


def visit_drawing(check_request: CheckRequest, call_out: float | None) -> Drawing | None:
    """The whole job, and where the place has prices a visit alone; None where no money is known."""
    prices = repair_prices(check_request, call_out)
    if prices is None:
        return None
    rows = [("whole-job", central_range(prices))]
    if call_out is None:
        rows.append(("visit", visit_price(check_request)))
    return _bars(check_request, rows, per_year=False)


def yearly_drawing(check_request: CheckRequest, found: Comparison, wasted: Range | None) -> Drawing:
    """A repair and a new oven, each by the year, and what the fault wastes where that is known in money."""
    rows = [("repair", found.repair_per_year), ("new-oven", found.new_per_year)]
    if wasted is not None:
        rows.append(("wasted", wasted))
    return _bars(check_request, rows, per_year=True)


def _bars(check_request: CheckRequest, rows: Iterable[tuple[str, Range]], *, per_year: bool) -> Drawing:
    ranges = [
        MoneyRange(
            sentence("money_bar", bar=name, range=money(check_request, span)),
            float(rounded(span.low)),
            float(rounded(span.high)),
        )
        for name, span in rows
    ]
    currency = currency_of(check_request.region)
    unit = sentence("money_unit", currency=CURRENCY_SIGNS.get(currency, currency), per_year=per_year)
    caption = sentence("money_caption", unit=unit, bars=". ".join(one.text for one in ranges))
    return money_bars(ranges, unit, {"kind": "costs", "caption": caption})
