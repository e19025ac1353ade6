"""The thermometer test: the set point and readings with their times, in rows that grow as they are filled."""

from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from triage.check_pages.drawings.temperature_line import Legend, temperature_line
from triage.check_pages.presenters.readings.degrees import Degrees, degrees_of
from triage.check_pages.presenters.readings.reasons import reason_sentence
from triage.check_pages.presenters.readings.told import Told
from triage.check_pages.presenters.readings.typed import Blank, Typed
from triage.check_pages.reading_pages import FieldGroup, ReadingField
from triage.check_pages.region import HasRegion
from triage.check_pages.request import CheckRequest
from triage.engine.readings.thermometer import FIELDS, Temperatures, read, turning_points, whole_cycles
from triage.engine.readings.warming import Heading, heading
from triage.engine.readings.written import MOST_ITEMS, write

FEWEST_ROWS, MORE_ROWS = 6, 2
MOST_ROWS = MOST_ITEMS + 1  # one more than can be used, so that it is there to be refused
NOTICED = 1.0
EARLY = 15.0  # with a first reading later than this nobody saw when the set heat was first reached
TIME, SHOWN = "time-", "shown-"


def read_thermometer(check_request: CheckRequest, typed: Typed) -> None:
    degrees = degrees_of(check_request)
    typed.read([_set(degrees), *_instrument(degrees)], FIELDS)
    time, shown = _row(degrees)
    for number in range(1, _last_filled(typed) + 1):
        for blank, name, other in (
            (time, f"{TIME}{number}", f"{SHOWN}{number}"),
            (shown, f"{SHOWN}{number}", f"{TIME}{number}"),
        ):
            if text := typed.text(name):
                typed.put(blank, name, text, FIELDS["readings" if blank is time else "temperature"])
            elif typed.text(other):
                typed.problems[name] = reason_sentence("missing", {"label": blank.label})


def thermometer_groups(check_request: CheckRequest, typed: Typed) -> list[FieldGroup]:
    degrees = degrees_of(check_request)
    instrument = [typed.field_of(blank) for blank in _instrument(degrees)]
    return [
        FieldGroup([typed.field_of(_set(degrees))]),
        FieldGroup(_rows(degrees, typed), _("Readings"), tool="thermometer", columns=_columns(degrees)),
        FieldGroup(instrument, summary=_("About the thermometer"), open=any(f.value for f in instrument)),
    ]


def write_thermometer(_visit: CheckRequest, typed: Typed) -> str:
    """The rows that are whole, as one list; problems of a row are told beside it."""
    rows = [
        f"{typed.figures[f'{TIME}{n}']}-{typed.figures[f'{SHOWN}{n}']}"
        for n in range(1, _last_filled(typed) + 1)
        if f"{TIME}{n}" in typed.figures and f"{SHOWN}{n}" in typed.figures
    ]
    return write(FIELDS, {**typed.figures, "readings": "_".join(rows)})


def thermometer_told(placed: HasRegion, text: str) -> Told:
    found, degrees = read(text), degrees_of(placed)
    legend = Legend(
        lambda celsius: f"{degrees.shown(celsius):.0f}°", _("min"), _("Shaded: no fault"), _("mean"), _("one cycle")
    )
    return Told(temperature_line(found, legend, _picture_words(found, degrees)), _lines(found, degrees))


def _picture_words(found: Temperatures, degrees: Degrees) -> str:
    lowest = min(value for _time, value in found.points)
    highest = max(value for _time, value in found.points)
    cycles = len(whole_cycles(found.points))
    words = {
        "low": degrees.words(lowest),
        "high": degrees.words(highest),
        "set_to": degrees.words(found.set_to),
        "mean": degrees.words(found.mean.value),
        "apart": degrees.apart(15.0),
        "n": cycles,
    }
    told = _(
        "Readings from %(low)s to %(high)s, mean %(mean)s. Set to %(set_to)s; within %(apart)s of that is no fault."
    )
    ups = _("No whole rise and fall shows yet.")
    if cycles:
        ups = ngettext("%(n)s whole rise and fall shows.", "%(n)s whole rises and falls show.", cycles)
    return f"{told % words} {ups % words}"


def _lines(found: Temperatures, degrees: Degrees) -> list[str]:
    off = found.offset.value
    words = {
        "off": degrees.apart(abs(off)),
        "unsure": degrees.apart(2.0 * found.offset.uncertainty),
        "swing": degrees.apart(found.swing.value),
        "usual": degrees.apart(22.0),
        "over": degrees.apart(found.overshoot),
        "reached": round(found.reached or 0.0),
    }
    line = _("The mean is %(off)s above the set heat, give or take %(unsure)s.")
    if off < 0.0:
        line = _("The mean is %(off)s below the set heat, give or take %(unsure)s.")
    lines = [line % words]
    if turning_points(found.points):
        lines.append(_("It goes up and down by about %(swing)s. Up and down by %(usual)s is how ovens work.") % words)
    if found.reached is not None and found.points[0][0] < EARLY:
        lines.append(_("It first came to the set heat after about %(reached)s minutes.") % words)
    if headed := heading(found):
        lines.append(_heading_line(headed, degrees))
    if found.overshoot >= NOTICED:
        lines.append(_("At its highest it was %(over)s over the set heat.") % words)
    if found.more:
        more = ngettext(
            "%(n)s more reading after the first half hour would make this surer.",
            "%(n)s more readings after the first half hour would make this surer.",
            found.more,
        )
        lines.append(more % {"n": found.more})
    return lines


def _heading_line(headed: Heading, degrees: Degrees) -> str:
    """How hot it could have got, how fast it loses heat, and which parts either speaks for."""
    words = {
        "end": degrees.words(headed.end.value),
        "unsure": degrees.apart(2.0 * headed.end.uncertainty),
        "half": round(headed.half),
    }
    went = _("As it warmed up it was heading for %(end)s, give or take %(unsure)s.")
    meant = _("That is past the set heat, so a mean that is off speaks for the thermostat.")
    if headed.short:
        meant = _("That is short of the set heat and speaks for a weak heater or a leaking door.")
    loses = _("It would lose half its warmth in about %(half)s minutes. Far fewer than 13 speak for a leaking door.")
    return f"{went % words} {meant} {loses % words}"


def _last_filled(typed: Typed) -> int:
    """The number of the last row with anything in it."""
    rows = range(MOST_ROWS, 0, -1)
    return next((n for n in rows if typed.text(f"{TIME}{n}") or typed.text(f"{SHOWN}{n}")), 0)


def _rows(degrees: Degrees, typed: Typed) -> list[ReadingField]:
    """Time and temperature by turns, with some rows to spare while there may be more."""
    last = _last_filled(typed)
    count = max(FEWEST_ROWS, last, min(last + MORE_ROWS, MOST_ITEMS))
    time, shown = _row(degrees)
    fields = []
    for number in range(1, count + 1):
        for blank, start in ((time, TIME), (shown, SHOWN)):
            numbered = Blank(blank.name, f"{blank.label} {number}")
            fields.append(typed.field_of(numbered, f"{start}{number}"))
    return fields


def _columns(degrees: Degrees) -> tuple[str, str]:
    return _("Minutes since it was switched on"), _("Temperature in %(unit)s") % {"unit": degrees.unit}


def _set(degrees: Degrees) -> Blank:
    return Blank("set", _("Heat that was set"), "", degrees.unit, "numeric", degrees.kept, degrees.shown)


def _row(degrees: Degrees) -> tuple[Blank, Blank]:
    return (
        Blank("readings", _("Minutes of reading")),
        Blank("temperature", _("Temperature of reading"), "", "", "decimal", degrees.kept, degrees.shown),
    )


def _instrument(degrees: Degrees) -> list[Blank]:
    return [
        Blank(
            "tolerance",
            _("How far off it may be"),
            _("If it came with a note. Cheap ones: %(apart)s") % {"apart": degrees.apart(10.0)},
            degrees.unit,
            "decimal",
            degrees.kept_apart,
            degrees.shown_apart,
        ),
        Blank(
            "boiling",
            _("What it showed in boiling water"),
            _("If you tried that before"),
            degrees.unit,
            "decimal",
            degrees.kept,
            degrees.shown,
        ),
    ]
