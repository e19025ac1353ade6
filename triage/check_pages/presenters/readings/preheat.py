"""The preheat test: minutes from cold to the set heat, beside what the oven's power and size need."""

from django.utils.translation import gettext as _

from triage.check_pages.drawings.minutes_line import Stretch, minutes_line
from triage.check_pages.presenters.readings.degrees import Degrees, degrees_of
from triage.check_pages.presenters.readings.plate import plate_blanks, plate_group, with_usual_volts
from triage.check_pages.presenters.readings.told import Told
from triage.check_pages.presenters.readings.typed import Blank, Typed
from triage.check_pages.reading_pages import FieldGroup
from triage.check_pages.region import HasRegion
from triage.check_pages.request import CheckRequest
from triage.engine.readings.preheat import CLOCK_MINUTES, FIELDS, read
from triage.engine.readings.written import write

LONGEST = 240.0


def read_preheat(check_request: CheckRequest, typed: Typed) -> None:
    typed.read(
        [*_blanks(degrees_of(check_request)), *_optional(degrees_of(check_request)), *plate_blanks(check_request)],
        FIELDS,
    )
    if typed.ticked("waiting"):
        typed.figures["waiting"] = "1"


def preheat_groups(check_request: CheckRequest, typed: Typed) -> list[FieldGroup]:
    degrees = degrees_of(check_request)
    waiting = typed.tick("waiting", _("It was not hot by then"))
    optional = [typed.field_of(blank) for blank in _optional(degrees)]
    return [
        FieldGroup([*[typed.field_of(blank) for blank in _blanks(degrees)], waiting], tool="preheat"),
        FieldGroup(optional, summary=_("About the oven and the room"), open=any(f.value for f in optional)),
        plate_group(check_request, typed),
    ]


def write_preheat(check_request: CheckRequest, typed: Typed) -> str:
    return write(FIELDS, with_usual_volts(check_request, typed.figures))


def preheat_told(_placed: HasRegion, text: str) -> Told:
    found = read(text)
    low = max(found.needed.value - 2.0 * found.needed.uncertainty, 0.0)
    high = found.needed.value + 2.0 * found.needed.uncertainty
    waiting = found.ratio.at_least > 0.0
    length = min(max(1.15 * found.minutes, 1.15 * high, 30.0), LONGEST)
    seen = (max(found.minutes - CLOCK_MINUTES, 0.0), found.minutes + CLOCK_MINUTES, waiting)
    words = {"minutes": f"{found.minutes:g}", "low": round(low), "high": round(high)}
    told = _("It took %(minutes)s minutes. A sound oven needs about %(low)s to %(high)s.")
    if waiting:
        told = _("After %(minutes)s minutes it was not hot. A sound oven needs about %(low)s to %(high)s.")
    stretches = [Stretch(low, min(high, length), "plate", _("needed"))]
    lines = [_("What it needs is worked out from its power and size; by how much ovens differ is counted in.")]
    return Told(minutes_line(length, stretches, seen, _("minutes from cold"), told % words), lines)


def _blanks(degrees: Degrees) -> list[Blank]:
    hint = _("From cold until the light goes off, it beeps, or a thermometer shows it")
    return [
        Blank("minutes", _("Time it took"), hint, "min"),
        Blank("set", _("Heat that was set"), "", degrees.unit, "numeric", degrees.kept, degrees.shown),
    ]


def _optional(degrees: Degrees) -> list[Blank]:
    return [
        Blank("room", _("Heat of the kitchen"), "", degrees.unit, "numeric", degrees.kept, degrees.shown),
        Blank("litres", _("Size of the oven"), _("It stands on the label or in the manual"), "l", "numeric"),
    ]
