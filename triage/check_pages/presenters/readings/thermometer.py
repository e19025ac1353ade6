"""The thermometer test: the set point and readings with their times, in rows that grow as they are filled."""

from triage.check_pages.drawings.drawing import Drawing, Facts
from triage.check_pages.drawings.temperature_line import NO_FAULT, temperature_line
from triage.check_pages.presenters.readings.degrees import Degrees, degrees_of
from triage.check_pages.presenters.readings.fields import THERMOMETER
from triage.check_pages.presenters.readings.form_input import FormInput, error
from triage.check_pages.region import HasRegion
from triage.check_pages.request import CheckRequest
from triage.engine.readings.encoding import encode
from triage.engine.readings.thermometer import (
    THERMOMETER_FIELDS,
    Temperatures,
    read_thermometer,
    turning_points,
    whole_cycles,
)
from triage.engine.readings.warming import warming_trend

ROWS = next(group for group in THERMOMETER.groups if group.columns)
USUAL_SWING = 22.0
NOTICED = 1.0
EARLY = 15.0  # with a first reading later than this nobody saw when the set heat was first reached


def parse_rows(found: FormInput) -> None:
    for number in range(1, found.last_row(ROWS) + 1):
        for one in ROWS.fields:
            name = f"{one.name}-{number}"
            if found.text(name):
                found.parse_field(one, name, THERMOMETER_FIELDS)
            elif any(found.text(f"{other.name}-{number}") for other in ROWS.fields):
                found.errors[name] = error("missing", one.label)


def write_thermometer(_request: CheckRequest, found: FormInput) -> str:
    """The rows that are whole, as one list; what is wrong in a row is said beside it."""
    numbers = range(1, found.last_row(ROWS) + 1)
    rows = [[found.figures.get(f"{one.name}-{number}", "") for one in ROWS.fields] for number in numbers]
    whole = ["-".join(row) for row in rows if all(row)]
    return encode(THERMOMETER_FIELDS, {**found.figures, "readings": "_".join(whole)})


def thermometer_drawing(where: HasRegion, text: str) -> Drawing:
    found, degrees = read_thermometer(text), degrees_of(where)
    facts = {"kind": "thermometer", **_shown(found, degrees), **_told_by(found, degrees), **_warming(found, degrees)}
    return temperature_line(found, lambda celsius: f"{degrees.from_celsius(celsius):.0f}°", facts)


def _shown(found: Temperatures, degrees: Degrees) -> Facts:
    """What the drawing shows."""
    values = [value for _time, value in found.points]
    return {
        "low": degrees.temperature_text(min(values)),
        "high": degrees.temperature_text(max(values)),
        "mean": degrees.temperature_text(found.mean.value),
        "set_to": degrees.temperature_text(found.set_point),
        "no_fault": degrees.difference_text(NO_FAULT),
        "cycles": len(whole_cycles(found.points)),
    }


def _told_by(found: Temperatures, degrees: Degrees) -> Facts:
    """What the readings say; nothing under a name where there is nothing to say."""
    reached = found.reached_minute if found.points[0][0] < EARLY else None
    return {
        "off": degrees.difference_text(abs(found.offset.value)),
        "below": found.offset.value < 0.0,
        "unsure": degrees.difference_text(2.0 * found.offset.uncertainty),
        "swing": degrees.difference_text(found.swing.value) if turning_points(found.points) else "",
        "usual_swing": degrees.difference_text(USUAL_SWING),
        "reached": "" if reached is None else f"{reached:.0f}",
        "over": degrees.difference_text(found.overshoot) if found.overshoot >= NOTICED else "",
        "more": found.readings_wanted,
    }


def _warming(found: Temperatures, degrees: Degrees) -> Facts:
    """How hot it could have got, and how fast it loses heat; nothing where that cannot be told."""
    headed = warming_trend(found)
    if headed is None:
        return {}
    return {
        "heading_for": degrees.temperature_text(headed.end_temperature.value),
        "heading_unsure": degrees.difference_text(2.0 * headed.end_temperature.uncertainty),
        "short": headed.falls_short,
        "half": round(headed.half_time_minutes),
    }
