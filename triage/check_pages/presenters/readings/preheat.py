"""The preheat test: minutes from cold to the set heat, beside what the oven's power and size need."""

from triage.check_pages.drawings.drawing import Drawing
from triage.check_pages.drawings.minutes_line import Stretch, minutes_line
from triage.check_pages.presenters.readings.form_input import FormInput
from triage.check_pages.presenters.readings.plate import with_usual_volts
from triage.check_pages.region import HasRegion
from triage.check_pages.request import CheckRequest
from triage.engine.readings.encoding import encode
from triage.engine.readings.preheat import CLOCK_UNCERTAINTY_MINUTES, PREHEAT_FIELDS, read_preheat

MAX_MINUTES = 240.0


def write_preheat(check_request: CheckRequest, found: FormInput) -> str:
    return encode(PREHEAT_FIELDS, with_usual_volts(check_request, found.figures))


def preheat_drawing(_where: HasRegion, text: str) -> Drawing:
    found = read_preheat(text)
    low = max(found.needed.value - 2.0 * found.needed.uncertainty, 0.0)
    high = found.needed.value + 2.0 * found.needed.uncertainty
    waiting = found.ratio.p_lower_bound > 0.0
    length = min(max(1.15 * found.minutes, 1.15 * high, 30.0), MAX_MINUTES)
    seen = (max(found.minutes - CLOCK_UNCERTAINTY_MINUTES, 0.0), found.minutes + CLOCK_UNCERTAINTY_MINUTES, waiting)
    stretches = [Stretch(low, min(high, length), "plate", "needed")]
    facts = {
        "kind": "preheat",
        "waiting": waiting,
        "minutes": f"{found.minutes:g}",
        "low": round(low),
        "high": round(high),
    }
    return minutes_line(length, stretches, seen, "minutes-from-cold", facts)
