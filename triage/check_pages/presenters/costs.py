"""What a fault costs: the visit, the electricity while it lasts, and a repair against a new oven. Ranges, no verdict.

While an oven has to stay off it wastes nothing, and nothing here may sound as if it could be used.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from triage.check_pages.drawings.drawing import Drawing
from triage.check_pages.presenters.cost_drawings import visit_drawing, yearly_drawing
from triage.check_pages.presenters.costs_form import AGE, CALL_OUT, NEW_OVEN, TARIFF, USE, CostsForm, read_form
from triage.check_pages.presenters.energy_label import EnergyLabel, energy_label
from triage.check_pages.presenters.prices import Prices, money, prices_of, repair_prices
from triage.check_pages.presenters.problems import ProblemNote
from triage.check_pages.presenters.result import result_page
from triage.check_pages.request import CheckRequest
from triage.engine import Result
from triage.engine.repair_or_replace import compare
from triage.engine.repairs import Range, Waste
from triage.engine.running_cost import OvenUse, wasted_kwh
from triage.jobsheet.wording import per_ten, tenths

WORTH_NAMING = 0.1
AN_HOUR_EACH = 1.0


@dataclass(frozen=True)
class WastedElectricity:
    """What a cause wastes in a year; `money` is empty where no tariff is known."""

    cause: str
    low: int
    high: int
    money: str


@dataclass(frozen=True)
class RepairOrNew:
    """A repair against a new oven: years and money in ranges, and of ten ovens that answer like this the fewest and the
    most whose repair costs less; 0 stands for fewer than one, 10 for more than nine. Then what was counted in."""

    years_low: int
    years_high: int
    repair_per_year: str
    new_per_year: str
    break_even: str
    fewest: int
    most: int
    failures_low: int
    failures_high: int
    interest: int
    drawing: Drawing


@dataclass(frozen=True)
class CostsPage:
    """What the fault may cost as far as it is known: what is missing is the use of the oven (`hours_known`), or what
    stands in `missing`. `hidden` is what the form carries along unseen."""

    prices: Prices
    visit_drawing: Drawing | None
    stays_off: bool
    hours_known: bool
    wastes_any: bool
    wasted: list[WastedElectricity]
    comparison: RepairOrNew | None
    missing: list[str]
    label: EnergyLabel | None
    form: CostsForm
    label_open: bool
    hidden: list[tuple[str, str]]
    check_href: str
    local_line: str
    part: str
    problems: list[ProblemNote]


def costs_page(check_request: CheckRequest, step: Result) -> CostsPage:
    result = result_page(check_request, step)
    form, stays_off = read_form(check_request), bool(result.leave_off)
    wastes = {} if stays_off else _wastes(check_request, step)
    return CostsPage(
        prices=prices_of(check_request, form.number(CALL_OUT)),
        visit_drawing=visit_drawing(check_request, form.number(CALL_OUT)),
        stays_off=stays_off,
        hours_known=form.number(USE) is not None,
        wastes_any=bool(wastes),
        wasted=_wasted(check_request, wastes, form),
        comparison=_comparison(check_request, form, wastes),
        missing=_missing(check_request, form),
        label=energy_label(form),
        form=form,
        label_open=any(field.value for field in form.label_fields),
        hidden=list({**check_request.links.context_params(), **check_request.answers}.items()),
        check_href=check_request.links.step(),
        local_line=check_request.region.local_line,
        part=result.part,
        problems=result.problems,
    )


def _wastes(check_request: CheckRequest, step: Result) -> Mapping[str, Waste]:
    """How each likely cause wastes electricity, where it does."""
    known = check_request.pack.costs.waste
    likely = [cause.fault for cause in step.verdict.causes if cause.chance >= WORTH_NAMING]
    return {fault: known[fault] for fault in likely if fault in known}


def _wasted(check_request: CheckRequest, wastes: Mapping[str, Waste], form: CostsForm) -> list[WastedElectricity]:
    """What each likely cause wastes in a year at this use; nothing while the use is not known."""
    hours, tariff = form.number(USE), form.number(TARIFF)
    if hours is None:
        return []
    found = [(check_request.texts.faults[fault].name, wasted_kwh(w, _use(hours))) for fault, w in wastes.items()]
    return [
        WastedElectricity(
            name,
            round(wasted.low),
            round(wasted.high),
            "" if tariff is None else money(check_request, wasted.scaled(tariff)),
        )
        for name, wasted in found
    ]


def _use(hours: float) -> OvenUse:
    return OvenUse(hours / AN_HOUR_EACH, AN_HOUR_EACH)


def _wasted_money(wastes: Mapping[str, Waste], form: CostsForm) -> Range | None:
    """What is wasted in a year, whichever of the likely causes it is; None where use or tariff is not known."""
    hours, tariff = form.number(USE), form.number(TARIFF)
    if not wastes or hours is None or tariff is None:
        return None
    each = [wasted_kwh(waste, _use(hours)).scaled(tariff) for waste in wastes.values()]
    return Range(min(one.low for one in each), max(one.high for one in each))


def _missing(check_request: CheckRequest, form: CostsForm) -> list[str]:
    """What a comparison still needs."""
    known = {
        "age": form.number(AGE),
        "new-oven": form.number(NEW_OVEN),
        "call-out": repair_prices(check_request, form.number(CALL_OUT)),
    }
    return [name for name, value in known.items() if value is None]


def _comparison(check_request: CheckRequest, form: CostsForm, wastes: Mapping[str, Waste]) -> RepairOrNew | None:
    prices = repair_prices(check_request, form.number(CALL_OUT))
    age, new_oven, costs = form.number(AGE), form.number(NEW_OVEN), check_request.pack.costs
    if age is None or new_oven is None or prices is None:
        return None
    found = compare(prices, age, new_oven, costs)
    fewest, most = _of_ten(found.share_cheaper)
    return RepairOrNew(
        years_low=round(found.years_left.low),
        years_high=round(found.years_left.high),
        repair_per_year=money(check_request, found.repair_per_year),
        new_per_year=money(check_request, found.new_per_year),
        break_even=money(check_request, found.break_even),
        fewest=fewest,
        most=most,
        failures_low=round(100 * costs.failure_rate.low),
        failures_high=round(100 * costs.failure_rate.high),
        interest=round(100 * costs.interest_rate),
        drawing=yearly_drawing(check_request, found, _wasted_money(wastes, form)),
    )


def _of_ten(share: Range) -> tuple[int, int]:
    """The fewest and the most of ten; never all, never none."""
    fewest, most = (per_ten(end) for end in share)
    return (fewest, fewest) if tenths(share.low) == tenths(share.high) else (fewest, most)
