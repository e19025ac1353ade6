"""The form of the page on costs: what may be typed, how it is read, and what is wrong with what cannot be used.

Everything is optional, and everything typed comes back as it was typed.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from django.utils.translation import gettext_lazy as _

from triage.check_pages.form_fields import BoundField, FieldError, InputField
from triage.check_pages.presenters.prices import currency_of, with_currency
from triage.check_pages.request import CheckRequest
from triage.check_pages.typed_number import ParseFailure, read_number
from triage.engine.energy_index import CLASS_NAMES
from triage.jobsheet.sentences import sentence

USE, TARIFF, AGE, NEW_OVEN, CALL_OUT = "cost-use", "cost-kwh", "cost-age", "cost-new", "cost-call"
LITRES, CYCLE, CLASS = "cost-litres", "cost-cycle", "cost-class"
# `%(unit)s` is the money of the place.
ABOUT_FAULT = (
    InputField(USE, _("Hours the oven is on in a week"), _("For example 4")),
    InputField(
        TARIFF, _("What one kilowatt-hour (kWh) costs, in %(unit)s"), _("It stands on your bill. For example 0.30")
    ),
    InputField(AGE, _("Age of the oven in years"), _("A guess will do. For example 8")),
    InputField(
        NEW_OVEN,
        _("What a new oven like it costs, in %(unit)s"),
        _("With delivery, fitting and taking the old one away"),
    ),
    InputField(CALL_OUT, _("What a call-out costs, in %(unit)s"), _("If you have been told")),
)
ON_LABEL = (
    InputField(LITRES, _("Volume in litres"), _("For example 70")),
    InputField(CYCLE, _("Energy for one cycle in kWh"), _("The lower one if two are given. For example 0.80")),
)
LABEL_CLASS = InputField(CLASS, _("Class"))
LIMITS = {
    USE: (Decimal(0), Decimal(168)),
    AGE: (Decimal(0), Decimal(80)),
    NEW_OVEN: (Decimal(10), Decimal(1_000_000)),
    CALL_OUT: (Decimal(1), Decimal(100_000)),
    LITRES: (Decimal(10), Decimal(200)),
    CYCLE: (Decimal("0.1"), Decimal(5)),
}
# Nobody pays more for a kilowatt-hour; a higher number is meant in hundredths of the currency.
MAX_TARIFF = Decimal(50)
MAX_TARIFF_BY_CURRENCY = dict.fromkeys(("GBP", "EUR", "USD", "CAD", "AUD", "NZD"), Decimal(3))
MAX_QUOTED = 20


@dataclass(frozen=True)
class CostsForm:
    """`numbers` holds what was typed and can be used, `label_class` the class on the label or nothing."""

    fields: list[BoundField]
    label_fields: list[BoundField]
    numbers: Mapping[str, Decimal]
    label_class: str

    def number(self, name: str) -> float | None:
        value = self.numbers.get(name)
        return None if value is None else float(value)


def read_form(check_request: CheckRequest) -> CostsForm:
    numbers: dict[str, Decimal] = {}
    errors: dict[str, FieldError] = {}
    for field in (*ABOUT_FAULT, *ON_LABEL):
        text = check_request.typed.get(field.name, "").strip()
        if text:
            value = read_number(text, *_limits(check_request, field.name))
            if isinstance(value, Decimal):
                numbers[field.name] = value
            else:
                errors[field.name] = _error(check_request, field.name, text, value)
    label_class = check_request.typed.get(CLASS, "").strip().upper()
    if label_class and label_class not in CLASS_NAMES:
        errors[CLASS] = FieldError("not-a-class")
    return CostsForm(
        fields=[_bound(check_request, field, errors) for field in ABOUT_FAULT],
        label_fields=[_bound(check_request, field, errors) for field in (*ON_LABEL, LABEL_CLASS)],
        numbers=numbers,
        label_class=label_class if label_class in CLASS_NAMES else "",
    )


def _limits(check_request: CheckRequest, name: str) -> tuple[Decimal, Decimal]:
    if name == TARIFF:
        return Decimal(0), MAX_TARIFF_BY_CURRENCY.get(currency_of(check_request.region), MAX_TARIFF)
    return LIMITS[name]


def _bound(check_request: CheckRequest, field: InputField, errors: Mapping[str, FieldError]) -> BoundField:
    unit = sentence("money_unit", currency=currency_of(check_request.region), per_year=False)
    return BoundField(
        name=field.name,
        label=str(field.label) % {"unit": unit},
        value=check_request.typed.get(field.name, ""),
        hint=str(field.hint),
        error=errors.get(field.name),
        choices=tuple((name, name) for name in CLASS_NAMES) if field.name == CLASS else (),
    )


def _error(check_request: CheckRequest, name: str, text: str, failure: ParseFailure) -> FieldError:
    low, high = _limits(check_request, name)
    if failure.reason == "too-large" and name == TARIFF:
        return FieldError("tariff-too-large", high=with_currency(int(high), currency_of(check_request.region)))
    if failure.reason == "too-large" and name == USE:
        return FieldError("more-than-a-week")
    return FieldError(failure.reason, typed=text[:MAX_QUOTED], low=f"{low:f}", high=f"{high:f}")
