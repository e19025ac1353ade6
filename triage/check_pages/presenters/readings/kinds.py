"""The five kinds of reading: how what was typed is read, written as a reading, and drawn, each from its own module."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from triage.check_pages.drawings.drawing import Drawing
from triage.check_pages.presenters.readings.form_input import FormInput
from triage.check_pages.presenters.readings.gasket import gasket_drawing, write_gasket
from triage.check_pages.presenters.readings.meter import meter_drawing, parse_taps, write_meter
from triage.check_pages.presenters.readings.preheat import preheat_drawing, write_preheat
from triage.check_pages.presenters.readings.run_on import run_on_drawing, write_run_on
from triage.check_pages.presenters.readings.thermometer import parse_rows, thermometer_drawing, write_thermometer
from triage.check_pages.region import HasRegion
from triage.check_pages.request import CheckRequest
from triage.engine.readings import meter, preheat, run_on, thermometer
from triage.engine.readings.encoding import Field


@dataclass(frozen=True)
class ReadingKind:
    """`limits` are those of the fields, `parse_more` reads what is not one figure in one field, `write` makes the
    written reading, `drawing` what comes of it: the picture and the facts about it."""

    limits: Mapping[str, Field]
    write: Callable[[CheckRequest, FormInput], str]
    drawing: Callable[[HasRegion, str], Drawing]
    parse_more: Callable[[FormInput], None] = lambda _: None


KINDS: Mapping[str, ReadingKind] = {
    "meter": ReadingKind(meter.METER_FIELDS, write_meter, meter_drawing, parse_taps),
    "thermometer": ReadingKind(thermometer.THERMOMETER_FIELDS, write_thermometer, thermometer_drawing, parse_rows),
    "run-on": ReadingKind(run_on.RUN_ON_FIELDS, write_run_on, run_on_drawing),
    "preheat": ReadingKind(preheat.PREHEAT_FIELDS, write_preheat, preheat_drawing),
    "gasket": ReadingKind({}, write_gasket, gasket_drawing),
}
