"""The five kinds of reading as people meet them: name, form and result, each from its own module."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from django.utils.translation import gettext as _

from triage.check_pages.presenters.readings.gasket import gasket_groups, gasket_told, read_gasket, write_gasket
from triage.check_pages.presenters.readings.meter import meter_groups, meter_told, read_meter, write_meter
from triage.check_pages.presenters.readings.preheat import preheat_groups, preheat_told, read_preheat, write_preheat
from triage.check_pages.presenters.readings.run_on import read_run_on, run_on_groups, run_on_told, write_run_on
from triage.check_pages.presenters.readings.thermometer import (
    read_thermometer,
    thermometer_groups,
    thermometer_told,
    write_thermometer,
)
from triage.check_pages.presenters.readings.told import Told
from triage.check_pages.presenters.readings.typed import Typed
from triage.check_pages.reading_pages import FieldGroup
from triage.check_pages.region import HasRegion
from triage.check_pages.request import CheckRequest


@dataclass(frozen=True)
class Kind:
    """`read` takes what was typed, `groups` are the fields, `write` the written reading, `told` what comes of it."""

    read: Callable[[CheckRequest, Typed], None]
    groups: Callable[[CheckRequest, Typed], list[FieldGroup]]
    write: Callable[[CheckRequest, Typed], str]
    told: Callable[[HasRegion, str], Told]


KINDS: Mapping[str, Kind] = {
    "meter": Kind(read_meter, meter_groups, write_meter, meter_told),
    "thermometer": Kind(read_thermometer, thermometer_groups, write_thermometer, thermometer_told),
    "run-on": Kind(read_run_on, run_on_groups, write_run_on, run_on_told),
    "preheat": Kind(read_preheat, preheat_groups, write_preheat, preheat_told),
    "gasket": Kind(read_gasket, gasket_groups, write_gasket, gasket_told),
}


def kind_names() -> Mapping[str, str]:
    """What each kind is called, as a heading and as a link."""
    return {
        "meter": _("Power from the home’s meter"),
        "thermometer": _("Heat from an oven thermometer"),
        "run-on": _("How long the fan runs on"),
        "preheat": _("How long the oven takes to get hot"),
        "gasket": _("Where the door seal lets heat out"),
    }


def form_intros() -> Mapping[str, str]:
    """How the form is filled, in one or two sentences."""
    return {
        "meter": _("Fill in one of the three ways. Everything else is optional and makes it surer."),
        "thermometer": _("One reading is enough to begin with. Three or more tell far more."),
        "run-on": _("Say when you last heard the fan and when you first found it still. Listen from a step away."),
        "preheat": _("The more you can say about the oven, the surer the comparison."),
        "gasket": _("Tick each place where the paper slips or the light shows. Leave the others."),
    }
