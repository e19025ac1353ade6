"""The meter test: flashes of its light (tapped along or counted), its register, or a display; and the plate."""

from decimal import Decimal

from triage.check_pages.drawings.drawing import Drawing
from triage.check_pages.drawings.power_bar import power_bar
from triage.check_pages.presenters.readings.fields import METER
from triage.check_pages.presenters.readings.form_input import FormInput, error
from triage.check_pages.presenters.readings.plate import with_usual_volts
from triage.check_pages.presenters.readings.power_class import power_class_facts
from triage.check_pages.region import HasRegion
from triage.check_pages.request import CheckRequest
from triage.check_pages.typed_number import ParseFailure, read_number
from triage.engine.readings.encoding import MAX_ITEMS, encode
from triage.engine.readings.meter import METER_FIELDS, read_meter
from triage.jobsheet.reading_text import is_floor, power_text

RESTED = 0.1
LATEST = Decimal(int(METER_FIELDS["taps"].high))
TAPS = next(one for one in METER.fields() if one.name == "taps")


def parse_taps(found: FormInput) -> None:
    """The moments of the flashes, with a space between; what is no number is named."""
    moments = found.text("taps").replace("_", " ").replace(";", " ").split()
    for moment in moments:
        value = read_number(moment, Decimal(0), LATEST)
        if isinstance(value, ParseFailure):
            found.errors["taps"] = error(value.reason, TAPS.label, moment, "0", f"{LATEST}")
            return
    if len(moments) > MAX_ITEMS:
        found.errors["taps"] = error("too-many")
    elif moments:
        found.figures["taps"] = "_".join(moments)


def write_meter(check_request: CheckRequest, found: FormInput) -> str:
    return encode(METER_FIELDS, with_usual_volts(check_request, found.figures))


def meter_drawing(_where: HasRegion, text: str) -> Drawing:
    power = read_meter(text)
    facts = {
        "kind": "meter",
        "drawn": power_text(power.watts),
        "or_more": is_floor(power.watts),
        "expected": power_text(power.rating.expected),
        "plate_known": power.rating.known,
        "paused": round(100.0 * power.resting_share) if power.resting_share > RESTED else 0,
        "may_be_more": power.watts.p_lower_bound > 0.0,
        **power_class_facts(power),
    }
    expectation = "by-plate" if power.rating.known else "usual-heater"
    return power_bar(power.watts, power.rating.expected, expectation, facts)
