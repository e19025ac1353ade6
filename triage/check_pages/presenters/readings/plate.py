"""What the rating plate and a display say of the power and the voltage: typed by whoever can read them, never measured.

A voltage without the plate's own is taken against the voltage of the place.
"""

import re

from django.utils.translation import gettext as _

from triage.check_pages.presenters.readings.typed import Blank, Typed
from triage.check_pages.reading_pages import FieldGroup
from triage.check_pages.request import CheckRequest

ONE_APPLIANCE = 250
_VOLTS = re.compile(r"(?<![0-9/-])([0-9/-]+) ?V")


def plate_blanks(check_request: CheckRequest) -> list[Blank]:
    return [
        Blank("plate", _("Power of this setting"), _("From the manual or the plate, if it is given"), "W", "numeric"),
        Blank("whole-plate", _("Power of the whole oven"), _("It stands on the rating plate"), "W", "numeric"),
        Blank(
            "rated-volts",
            _("Voltage on the plate"),
            _("It stands beside the watts, for example %(volts)s") % {"volts": usual_volts(check_request)},
            "V",
            "numeric",
        ),
        Blank(
            "supply-volts",
            _("Voltage of the supply"),
            _("Only if a display in your home shows it. Never measure it"),
            "V",
            "numeric",
        ),
    ]


def plate_group(check_request: CheckRequest, typed: Typed) -> FieldGroup:
    fields = [typed.field_of(blank) for blank in plate_blanks(check_request)]
    return FieldGroup(
        fields, summary=_("What the rating plate says"), open=any(field.value or field.problem for field in fields)
    )


def with_usual_volts(check_request: CheckRequest, figures: dict[str, str]) -> dict[str, str]:
    """The figures, with the place's voltage where a display's stands alone."""
    if "supply-volts" in figures and "rated-volts" not in figures:
        return {**figures, "rated-volts": str(usual_volts(check_request))}
    return figures


def usual_volts(check_request: CheckRequest) -> int:
    """The highest voltage an oven is rated for there: 240 of "120/240 V", but 230 of "230/400 V"."""
    match = _VOLTS.search(check_request.region.nominal)
    volts = [int(part) for part in re.split(r"[/-]", match[1]) if part] if match else []
    return max((one for one in volts if one <= ONE_APPLIANCE), default=230)
