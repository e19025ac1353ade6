"""The run-on test: when the fan was last heard and when it was first found still, in minutes after switch-off."""

from django.utils.translation import gettext as _

from triage.check_pages.drawings.minutes_line import Stretch, minutes_line
from triage.check_pages.presenters.readings.told import Told
from triage.check_pages.presenters.readings.typed import Blank, Typed
from triage.check_pages.reading_pages import FieldGroup
from triage.check_pages.region import HasRegion
from triage.check_pages.request import CheckRequest
from triage.engine.readings.run_on import FIELDS, WITHOUT_END, read
from triage.engine.readings.written import write
from triage.jobsheet.reading_text import run_on_text

USUAL, LONG, SHOWN = 30.0, 60.0, 90.0
TICKS = ("cold", "much-heat")


def read_run_on(_visit: CheckRequest, typed: Typed) -> None:
    typed.read(_blanks(), FIELDS)
    typed.figures |= {name: "1" for name in TICKS if typed.ticked(name)}


def run_on_groups(_visit: CheckRequest, typed: Typed) -> list[FieldGroup]:
    ticks = [
        typed.tick("cold", _("The oven is stone cold and the fan still runs")),
        typed.tick("much-heat", _("It was after a very hot clean, or a long time on high or on the grill")),
    ]
    return [FieldGroup([*[typed.field_of(blank) for blank in _blanks()], *ticks], tool="run-on")]


def write_run_on(_visit: CheckRequest, typed: Typed) -> str:
    """Where only the end is known, it was heard until then; a cold oven needs no time."""
    figures = typed.figures
    if "heard" not in figures and "stopped" in figures:
        figures = {**figures, "heard": figures["stopped"]}
    if "heard" not in figures and "cold" in figures:
        figures = {**figures, "heard": "0"}
    return write(FIELDS, figures)


def run_on_told(_placed: HasRegion, text: str) -> Told:
    found = read(text)
    endless = found.minutes.value >= WITHOUT_END
    value, unsure = (SHOWN if endless else found.minutes.value), 2.0 * found.minutes.uncertainty
    length = min(max(SHOWN, value + unsure), 240.0)
    stretches = [
        Stretch(0.0, USUAL, "plate", _("usual")),
        Stretch(USUAL, LONG, "long", _("long")),
        Stretch(LONG, length, "never", _("too long")),
    ]
    told = _("The fan was %(found)s. Up to 30 minutes is usual, up to 60 is long, more is too long.") % {
        "found": run_on_text(text)
    }
    seen = (value if found.running else max(value - unsure, 0.0), value + unsure, found.running)
    lines = [_("Times are as after ordinary baking. After much heat a fan may run half as long again.")]
    if not found.running and not found.minutes.value:
        lines = [_("That counts if the oven was hot and its fan used to run on.")]
    if found.running and not endless:
        lines.append(_("It was not found still yet. Look again later, and once more when the oven is stone cold."))
    return Told(minutes_line(length, stretches, seen, _("minutes after switch-off"), told), lines)


def _blanks() -> list[Blank]:
    return [
        Blank("heard", _("Last heard running"), _("Minutes after you switched the oven off"), "min"),
        Blank("stopped", _("First found still"), _("Leave empty while it runs. 0 if it never ran on"), "min"),
    ]
