"""A written reading in a few words, alike on every page, sheet and message: the value, and what it may be out by.

The figures are worked out here; `templates/triage/sentences/reading.txt` puts them in words, on the phone as well.
"±" is two standard uncertainties: the true value lies within it about 19 times in 20. Temperatures stand in both
units, because a sheet may be read elsewhere than it was written.
"""

from collections.abc import Mapping

from django.utils.translation import gettext_lazy as _

from triage.engine.pack import MeasurementSpec
from triage.engine.readings import READERS, InvalidReading, Measured
from triage.engine.readings.encoding import decode_fields
from triage.engine.readings.gasket import SEAL_PLACES, Gasket
from triage.engine.readings.meter import Power
from triage.engine.readings.preheat import Preheat
from triage.engine.readings.run_on import ENDLESS_MINUTES, RUN_ON_FIELDS, RunOn, read_run_on
from triage.engine.readings.thermometer import Temperatures
from triage.jobsheet.sentences import sentence
from triage.knowledge.library import library

A_KILOWATT = 1000.0
ONLY_A_FLOOR = 0.5
PLACE_NAMES = {
    "top-left": _("top left"),
    "top": _("top"),
    "top-right": _("top right"),
    "right": _("right"),
    "bottom-right": _("bottom right"),
    "bottom": _("bottom"),
    "bottom-left": _("bottom left"),
    "left": _("left"),
}

Facts = Mapping[str, object]
"""What the template asks for by name; `kind` says which reading it is."""


def answer_in_figures(observation: str, answer: str) -> str | None:
    """The text of a written reading; None where the observation takes none or it cannot be read."""
    asked = library().pack.observations.get(observation)
    if asked is None or asked.measurement is None:
        return None
    try:
        return reading_text(asked.measurement, answer)
    except InvalidReading:
        return None


def reading_text(measurement: MeasurementSpec, text: str) -> str:
    """The reading as far as this measurement uses it. Raises InvalidReading."""
    return sentence("reading", reading=_facts(measurement, text))


def run_on_text(text: str) -> str:
    """What was heard, as it was heard. Raises InvalidReading."""
    return sentence("reading", reading=_run_on_facts(text))


def power_text(watts: Measured) -> str:
    """Watts below one kilowatt, else kilowatts; never below nothing."""
    value, unsure = max(0.0, watts.value), 2.0 * watts.uncertainty
    if value >= A_KILOWATT:
        return f"{value / A_KILOWATT:.2f} kW ± {unsure / A_KILOWATT:.2f}"
    return f"{value:.0f} W ± {unsure:.0f}"


def is_floor(measured: Measured) -> bool:
    """Whether the true value is more likely above it than at it."""
    return measured.p_lower_bound > ONLY_A_FLOOR


def places_text(found: Gasket) -> str:
    """The places that let through, by name."""
    return ", ".join(str(PLACE_NAMES[place]) for place in found.leaking_places)


def fahrenheit(celsius: float) -> float:
    return 32.0 + 1.8 * celsius


def _facts(measurement: MeasurementSpec, text: str) -> Facts:
    match READERS[measurement.kind](text):
        case Power() as power:
            return _meter_facts(power, measurement.quantity)
        case Temperatures() as found:
            return _thermometer_facts(found, measurement.quantity)
        case RunOn():
            return _run_on_facts(text)
        case Preheat() as preheat:
            return _preheat_facts(preheat)
        case Gasket() as gasket:
            tried = len(SEAL_PLACES) - gasket.leaks.count(None)
            return {"kind": "gasket", "tried": tried, "leaking": places_text(gasket)}


def _meter_facts(power: Power, quantity: str) -> Facts:
    return {
        "kind": "meter",
        "quantity": quantity,
        "power": power_text(power.watts),
        "or_more": is_floor(power.watts),
        "share": round(100.0 * max(power.share.value, 0.0)),
        "plate_known": power.rating.known,
    }


def _thermometer_facts(found: Temperatures, quantity: str) -> Facts:
    return {
        "kind": "thermometer",
        "quantity": quantity,
        "swing": round(found.swing.value),
        "swing_fahrenheit": round(1.8 * found.swing.value),
        "share": round(100.0 * found.duty.value),
        "mean": round(found.mean.value),
        "mean_fahrenheit": round(fahrenheit(found.mean.value)),
        "unsure": round(2.0 * found.mean.uncertainty),
        "set_to": round(found.set_point),
    }


def _run_on_facts(text: str) -> Facts:
    """What was heard, as it was heard: the evidence counts a long time after much heat for less."""
    found, raw = read_run_on(text), decode_fields(RUN_ON_FIELDS, text)
    return {
        "kind": "run-on",
        "endless": found.minutes.value >= ENDLESS_MINUTES,
        "running": found.running,
        "silent": not found.minutes.value,
        "heard": raw["heard"],
        "stopped": raw.get("stopped", ""),
    }


def _preheat_facts(found: Preheat) -> Facts:
    return {
        "kind": "preheat",
        "waiting": found.ratio.p_lower_bound > 0.0,
        "minutes": f"{found.minutes:g}",
        "needed": round(found.needed.value),
        "ratio": f"{found.ratio.value:.1f}",
    }
