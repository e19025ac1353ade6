"""What a fault costs: the visit, the electricity while it lasts, and a repair against a new oven. Ranges, no verdict.

While an oven has to stay off it wastes nothing, and nothing here may sound as if it could be used.
"""

from collections.abc import Mapping

from django.urls import reverse
from django.utils.translation import gettext as _

from triage.check_pages.costs_page import CostsPage, CostsPart
from triage.check_pages.presenters.causes import short_chance, tenths
from triage.check_pages.presenters.cost_pictures import visit_picture, yearly_picture
from triage.check_pages.presenters.costs_form import (
    AGE,
    CALL_OUT,
    NEW_OVEN,
    TARIFF,
    USE,
    CostsForm,
    read_form,
)
from triage.check_pages.presenters.energy_label import label_lines
from triage.check_pages.presenters.prices import money, price_lines, repair_prices
from triage.check_pages.presenters.result import result_page
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import Choice
from triage.engine import Result
from triage.engine.repair_or_replace import Comparison, compare
from triage.engine.repairs import Costs, Range, Waste
from triage.engine.running_cost import OvenUse, wasted_kwh

WORTH_NAMING = 0.1
AN_HOUR_EACH = 1.0
SURE = 0.95


def costs_page(check_request: CheckRequest, step: Result) -> CostsPage:
    advice = result_page(check_request, step)
    form = read_form(check_request)
    call_out, stays_off = form.number(CALL_OUT), bool(advice.leave_off)
    wastes = {} if stays_off else _wastes(check_request, step)
    drawn = visit_picture(check_request, call_out)
    parts = [
        CostsPart(_("The visit and the repair"), price_lines(check_request, call_out), drawn),
        CostsPart(_("Electricity while the fault lasts"), _electricity(check_request, wastes, form, stays_off)),
        _repair_or_new(check_request, form, wastes),
        CostsPart(_("The energy label"), label_lines(form)),
    ]
    return CostsPage(
        heading=_("What it may cost"),
        intro=_("These are ranges, not prices. Safety comes first: the advice on your oven stays as it is."),
        parts=[part for part in parts if part.lines],
        fields=form.fields,
        label_fields=form.label_fields,
        label_open=any(field.value for field in form.label_fields),
        kept=list({**check_request.links.context_params(), **check_request.answers}.items()),
        action=reverse("household-costs"),
        back=Choice(_("Back to the advice"), check_request.links.step()),
        local_line=check_request.region.local_line,
        part=advice.part,
        problems=advice.problems,
    )


def _wastes(check_request: CheckRequest, step: Result) -> Mapping[str, Waste]:
    """How each likely cause wastes electricity, where it does."""
    known = check_request.pack.costs.waste
    likely = [cause.fault for cause in step.verdict.causes if cause.chance >= WORTH_NAMING]
    return {fault: known[fault] for fault in likely if fault in known}


def _electricity(
    check_request: CheckRequest, wastes: Mapping[str, Waste], form: CostsForm, stays_off: bool
) -> list[str]:
    """What each likely cause wastes in a year at this use."""
    if stays_off:
        return [_("The oven is to stay off until it has been checked, so it wastes nothing.")]
    if not wastes:
        return [_("None of the likely causes wastes much electricity.")]
    hours = form.number(USE)
    if hours is None:
        return [_("Say below how many hours a week the oven is on.")]
    tariff = form.number(TARIFF)
    return [
        _waste_line(check_request, fault, wasted_kwh(waste, _use(hours)), tariff) for fault, waste in wastes.items()
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


def _waste_line(check_request: CheckRequest, fault: str, wasted: Range, tariff: float | None) -> str:
    words = {"cause": check_request.texts.faults[fault].name, "low": round(wasted.low), "high": round(wasted.high)}
    if tariff is None:
        line = _("%(cause)s: about %(low)s to %(high)s kWh a year. Say below what a kWh costs to see it in money.")
        return line % words
    words["money"] = money(check_request, wasted.scaled(tariff))
    return _("%(cause)s: about %(low)s to %(high)s kWh a year, %(money)s.") % words


def _repair_or_new(check_request: CheckRequest, form: CostsForm, wastes: Mapping[str, Waste]) -> CostsPart:
    heading = _("A repair or a new oven")
    age, new_oven = form.number(AGE), form.number(NEW_OVEN)
    prices = repair_prices(check_request, form.number(CALL_OUT))
    wanted = [
        _("the age of the oven") if age is None else "",
        _("the price of a new one") if new_oven is None else "",
        _("what a call-out costs") if prices is None else "",
    ]
    if age is None or new_oven is None or prices is None:
        missing = "; ".join(word for word in wanted if word)
        return CostsPart(heading, [_("To compare the two, say below: %(missing)s.") % {"missing": missing}])
    found = compare(prices, age, new_oven, check_request.pack.costs)
    lines = [*_compared(check_request, found), _counted_in(check_request.pack.costs)]
    return CostsPart(heading, lines, yearly_picture(check_request, found, _wasted_money(wastes, form)))


def _counted_in(costs: Costs) -> str:
    words = {
        "low": round(100 * costs.failure_rate.low),
        "high": round(100 * costs.failure_rate.high),
        "interest": round(100 * costs.interest_rate),
    }
    return (
        _("Counted in: %(low)s to %(high)s repairs in 100 do not hold, and interest of %(interest)s in 100 a year.")
        % words
    )


def _compared(check_request: CheckRequest, found: Comparison) -> list[str]:
    years = {"low": round(found.years_left.low), "high": round(found.years_left.high)}
    a_year = {"repair": money(check_request, found.repair_per_year), "new": money(check_request, found.new_per_year)}
    return [
        _("With a repair, an oven of this age has about %(low)s to %(high)s years to go.") % years,
        _("Spread over those years a repair costs %(repair)s a year, a new oven %(new)s a year.") % a_year,
        _("Where both cost the same a year: at %(price)s for the repair. Below that range the repair costs less.")
        % {"price": money(check_request, found.break_even)},
        _("That is so for %(share)s ovens that answer like this.") % {"share": _tens(found.share_cheaper)},
        _("A price for your own oven counts for more than these ranges."),
    ]


def _tens(share: Range) -> str:
    """A range of shares as so many in ten; never all, never none."""
    low, high = (tenths(end) for end in share)
    if low == high or share.low >= SURE:
        words = short_chance(share.low)
        return words[:1].lower() + words[1:]
    least = str(low) if low else _("fewer than 1")
    most = str(high) if share.high < SURE else _("more than 9")
    return _("anything from %(low)s to %(high)s in 10") % {"low": least, "high": most}
