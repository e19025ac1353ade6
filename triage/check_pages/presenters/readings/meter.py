"""The meter test: flashes of its light (tapped along or counted), its register, or a display; and the plate."""

from decimal import Decimal

from django.utils.translation import gettext as _

from triage.check_pages.drawings.power_bar import power_bar
from triage.check_pages.presenters.readings.plate import plate_blanks, plate_group, with_usual_volts
from triage.check_pages.presenters.readings.power_class import power_class_line
from triage.check_pages.presenters.readings.reasons import reason_sentence
from triage.check_pages.presenters.readings.told import Told
from triage.check_pages.presenters.readings.typed import Blank, Typed
from triage.check_pages.reading_pages import FieldGroup
from triage.check_pages.region import HasRegion
from triage.check_pages.request import CheckRequest
from triage.check_pages.typed_number import Unread, read_number
from triage.engine.readings.meter import FIELDS, Power, read
from triage.engine.readings.written import MOST_ITEMS, write
from triage.jobsheet.reading_text import is_floor, power_text

RESTED = 0.1
LATEST = Decimal(int(FIELDS["taps"].high))


def read_meter(check_request: CheckRequest, typed: Typed) -> None:
    typed.read([*_light(), *_counted(), *_register(), *_display(), _background(), *plate_blanks(check_request)], FIELDS)
    _read_taps(typed)


def meter_groups(check_request: CheckRequest, typed: Typed) -> list[FieldGroup]:
    light, taps = [typed.field_of(blank) for blank in (*_light(), *_counted())], typed.field_of(_taps())
    ways = [
        FieldGroup([light[0], taps, *light[1:]], summary=_("By the flashes of the meter’s light"), tool="meter"),
        FieldGroup([typed.field_of(b) for b in _register()], summary=_("By two readings of the meter’s figures")),
        FieldGroup([typed.field_of(b) for b in _display()], summary=_("By a display that shows watts")),
    ]
    used = [any(field.value for field in way.fields) for way in ways]
    shown = [
        FieldGroup(way.fields, summary=way.summary, open=use or (at == 0 and not any(used)), tool=way.tool)
        for at, (way, use) in enumerate(zip(ways, used, strict=True))
    ]
    return [*shown, FieldGroup([typed.field_of(_background())]), plate_group(check_request, typed)]


def write_meter(check_request: CheckRequest, typed: Typed) -> str:
    return write(FIELDS, with_usual_volts(check_request, typed.figures))


def meter_told(_placed: HasRegion, text: str) -> Told:
    power = read(text)
    drawn, expected = power_text(power.watts), power_text(power.rating.expected)
    words = {
        "drawn": _("%(power)s or more") % {"power": drawn} if is_floor(power.watts) else drawn,
        "expected": expected,
    }
    upper = _("By its plate") if power.rating.known else _("A usual heater")
    told = _("The oven drew %(drawn)s. To be expected: %(expected)s.") % words
    return Told(power_bar(power.watts, power.rating.expected, (upper, _("Drawn now")), told), _lines(power))


def _lines(power: Power) -> list[str]:
    sound = _(
        "A sound oven may draw a tenth less than its plate says or a twentieth more. The supply may be a tenth off."
    )
    guess = _("No plate was typed, so a usual heater of 2 kW is taken. The figures on the plate make it surer.")
    paused = _("The oven seems to have paused for %(share)s %% of the time, as a thermostat does. That is left out.")
    floor = _("If the oven paused meanwhile, it draws more than this while it heats. Tapping along shows it.")
    lines = [power_class_line(power), sound if power.rating.known else guess]
    if power.rested > RESTED:
        lines.append(paused % {"share": round(100.0 * power.rested)})
    return [*lines, floor] if power.watts.at_least > 0.0 else lines


def _read_taps(typed: Typed) -> None:
    """The moments of the flashes, with a space between; what is no number is named."""
    moments = typed.text("taps").replace("_", " ").replace(";", " ").split()
    for moment in moments:
        value = read_number(moment, Decimal(0), LATEST)
        if isinstance(value, Unread):
            words = {"typed": moment[:20], "low": "0", "high": f"{LATEST}", "label": _taps().label}
            typed.problems["taps"] = reason_sentence(value.reason, words)
            return
    if len(moments) > MOST_ITEMS:
        typed.problems["taps"] = reason_sentence("too-many", {})
    elif moments:
        typed.figures["taps"] = "_".join(moments)


def _light() -> list[Blank]:
    hint = _("It stands on the meter, often 1000 imp/kWh")
    return [Blank("impulses", _("Flashes for one kilowatt-hour"), hint, "imp/kWh", "numeric")]


def _taps() -> Blank:
    hint = _("At least five, with a space between. The counter fills this in where it runs")
    return Blank("taps", _("Moment of each flash"), hint, "s", "text")


def _counted() -> list[Blank]:
    return [
        Blank(
            "flashes", _("Or: flashes counted"), _("Start the clock at a flash and count that one as 1"), "", "numeric"
        ),
        Blank("seconds", _("Time from the first to the last"), "", "s"),
    ]


def _register() -> list[Blank]:
    return [
        Blank("before", _("First reading"), _("With all its decimals"), "kWh"),
        Blank("after", _("Second reading"), "", "kWh"),
        Blank("minutes", _("Time between the two"), "", "min"),
    ]


def _display() -> list[Blank]:
    return [
        Blank("idle", _("With the oven off"), "", "W", "numeric"),
        Blank("drawing", _("With the oven heating"), "", "W", "numeric"),
    ]


def _background() -> Blank:
    return Blank(
        "background", _("What the rest of the home draws"), _("With the oven off, if you know it"), "W", "numeric"
    )
