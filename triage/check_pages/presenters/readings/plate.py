"""The voltage of the supply beside that on the rating plate: typed by whoever can read them, never measured.

A voltage without the plate's own is taken against the voltage of the place.
"""

import re

from triage.check_pages.request import CheckRequest

ONE_APPLIANCE = 250
_VOLTS = re.compile(r"(?<![0-9/-])([0-9/-]+) ?V")


def with_usual_volts(check_request: CheckRequest, figures: dict[str, str]) -> dict[str, str]:
    """The figures, with the place's voltage where a display's stands alone."""
    if "supply-volts" in figures and "rated-volts" not in figures:
        return {**figures, "rated-volts": str(usual_volts(check_request))}
    return figures


def usual_volts(check_request: CheckRequest) -> int:
    """The highest voltage an oven is rated for there: 240 of "120/240 V", but 230 of "230/400 V"."""
    match = _VOLTS.search(check_request.region.nominal_voltage)
    volts = [int(part) for part in re.split(r"[/-]", match[1]) if part] if match else []
    return max((one for one in volts if one <= ONE_APPLIANCE), default=230)
