"""The form of the page on costs: what may be typed, how it is read, and what is said about what cannot be used.

Everything is optional, and everything typed comes back as it was typed.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from django.utils.translation import gettext as _

from triage.check_pages.costs_page import TypedField
from triage.check_pages.presenters.prices import currency_of, with_currency
from triage.check_pages.request import CheckRequest
from triage.check_pages.typed_number import ParseFailure, read_number
from triage.engine.energy_index import CLASS_NAMES

USE, TARIFF, AGE, NEW_OVEN, CALL_OUT = "cost-use", "cost-kwh", "cost-age", "cost-new", "cost-call"
LITRES, CYCLE, CLASS = "cost-litres", "cost-cycle", "cost-class"
ABOUT_FAULT = (USE, TARIFF, AGE, NEW_OVEN, CALL_OUT)
ON_LABEL = (LITRES, CYCLE)
LIMITS = {
    USE: (Decimal(0), Decimal(168)),
    AGE: (Decimal(0), Decimal(80)),
    NEW_OVEN: (Decimal(10), Decimal(1_000_000)),
    CALL_OUT: (Decimal(1), Decimal(100_000)),
    LITRES: (Decimal(10), Decimal(200)),
    CYCLE: (Decimal("0.1"), Decimal(5)),
}
# Nobody pays more for a kilowatt-hour; a higher number is meant in hundredths of the currency.
DEAREST_KWH = Decimal(50)
DEAREST_BY_CURRENCY = dict.fromkeys(("GBP", "EUR", "USD", "CAD", "AUD", "NZD"), Decimal(3))


@dataclass(frozen=True)
class CostsForm:
    """`numbers` holds what was typed and can be used, `label_class` the class on the label or nothing."""

    fields: list[TypedField]
    label_fields: list[TypedField]
    numbers: Mapping[str, Decimal]
    label_class: str

    def number(self, name: str) -> float | None:
        value = self.numbers.get(name)
        return None if value is None else float(value)


def read_form(check_request: CheckRequest) -> CostsForm:
    numbers: dict[str, Decimal] = {}
    problems: dict[str, str] = {}
    for name in (*ABOUT_FAULT, *ON_LABEL):
        text = check_request.typed.get(name, "").strip()
        if text:
            value = read_number(text, *_limits(check_request, name))
            if isinstance(value, Decimal):
                numbers[name] = value
            else:
                problems[name] = _problem(check_request, name, text, value)
    told = check_request.typed.get(CLASS, "").strip().upper()
    if told and told not in CLASS_NAMES:
        problems[CLASS] = _("Pick one of the classes in the list.")
    return CostsForm(
        fields=[_field(check_request, name, problems) for name in ABOUT_FAULT],
        label_fields=[_field(check_request, name, problems) for name in (*ON_LABEL, CLASS)],
        numbers=numbers,
        label_class=told if told in CLASS_NAMES else "",
    )


def _limits(check_request: CheckRequest, name: str) -> tuple[Decimal, Decimal]:
    if name == TARIFF:
        return Decimal(0), DEAREST_BY_CURRENCY.get(currency_of(check_request.region), DEAREST_KWH)
    return LIMITS[name]


def _field(check_request: CheckRequest, name: str, problems: Mapping[str, str]) -> TypedField:
    label, hint = _words(check_request)[name]
    typed = check_request.typed.get(name, "")
    return TypedField(name, label, hint, typed, problems.get(name, ""), CLASS_NAMES if name == CLASS else ())


def _words(check_request: CheckRequest) -> dict[str, tuple[str, str]]:
    """Label and hint of each field."""
    unit = {"unit": currency_of(check_request.region) or _("your currency")}
    return {
        USE: (_("Hours the oven is on in a week"), _("For example 4")),
        TARIFF: (
            _("What one kilowatt-hour (kWh) costs, in %(unit)s") % unit,
            _("It stands on your bill. For example 0.30"),
        ),
        AGE: (_("Age of the oven in years"), _("A guess will do. For example 8")),
        NEW_OVEN: (
            _("What a new oven like it costs, in %(unit)s") % unit,
            _("With delivery, fitting and taking the old one away"),
        ),
        CALL_OUT: (_("What a call-out costs, in %(unit)s") % unit, _("If you have been told")),
        LITRES: (_("Volume in litres"), _("For example 70")),
        CYCLE: (_("Energy for one cycle in kWh"), _("The lower one if two are given. For example 0.80")),
        CLASS: (_("Class"), ""),
    }


def _problem(check_request: CheckRequest, name: str, text: str, failure: ParseFailure) -> str:
    low, high = _limits(check_request, name)
    words = {"typed": text[:20], "low": f"{low:f}", "high": f"{high:f}"}
    if failure.reason == "not-a-number":
        return _("“%(typed)s” is not a number we can read. Write it in digits, such as 12.5.") % words
    if failure.reason == "two-ways":
        return _("“%(typed)s” can be read in two ways. Leave out the sign between thousands, such as 1200.") % words
    if name == TARIFF and failure.reason == "too-large":
        words["limit"] = with_currency(int(high), currency_of(check_request.region))
        return (
            _("No kilowatt-hour costs more than %(limit)s. If you meant hundredths, write 0.27 instead of 27.") % words
        )
    if name == USE and failure.reason == "too-large":
        return _("A week has 168 hours. Write how many of them the oven is on.")
    if failure.reason == "too-small":
        return _("This cannot be less than %(low)s. Check the number.") % words
    return _("This cannot be more than %(high)s. Check the number.") % words
