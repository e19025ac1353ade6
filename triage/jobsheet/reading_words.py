"""A written reading in a few words, alike on every page, sheet and message: the value, and what it may be out by.

"±" is two standard uncertainties: the true value lies within it about 19 times in 20. Temperatures stand in both
units, because a sheet may be read elsewhere than it was written.
"""

from collections.abc import Mapping

from django.utils.translation import gettext as _

from triage.engine.pack import Gauge
from triage.engine.readings import KINDS, Measured, Unreadable
from triage.engine.readings.gasket import PLACES, Gasket
from triage.engine.readings.meter import Power
from triage.engine.readings.preheat import Preheat
from triage.engine.readings.run_on import FIELDS, WITHOUT_END, RunOn
from triage.engine.readings.run_on import read as read_run_on
from triage.engine.readings.thermometer import Temperatures
from triage.engine.readings.written import fields_of
from triage.knowledge.library import library

A_KILOWATT = 1000.0
ONLY_A_FLOOR = 0.5


def answer_in_figures(observation: str, answer: str) -> str | None:
    """The words of a written reading; None where the observation takes none or it cannot be read."""
    asked = library().pack.observations.get(observation)
    if asked is None or asked.gauge is None:
        return None
    try:
        return reading_words(asked.gauge, answer)
    except Unreadable:
        return None


def reading_words(gauge: Gauge, text: str) -> str:
    """The reading as far as this gauge uses it. Raises Unreadable."""
    match KINDS[gauge.kind](text):
        case Power() as power:
            return _of_meter(power, gauge.quantity)
        case Temperatures() as found:
            return _of_thermometer(found, gauge.quantity)
        case RunOn():
            return run_on_words(text)
        case Preheat() as preheat:
            return _of_preheat(preheat)
        case Gasket() as gasket:
            return _of_gasket(gasket)


def power_words(watts: Measured) -> str:
    """Watts below one kilowatt, else kilowatts; never below nothing."""
    value, unsure = max(0.0, watts.value), 2.0 * watts.uncertainty
    words = {"value": f"{value:.0f}", "unsure": f"{unsure:.0f}"}
    line = _("%(value)s W ± %(unsure)s")
    if value >= A_KILOWATT:
        words = {"value": f"{value / A_KILOWATT:.2f}", "unsure": f"{unsure / A_KILOWATT:.2f}"}
        line = _("%(value)s kW ± %(unsure)s")
    return _("%(power)s or more") % {"power": line % words} if watts.at_least > ONLY_A_FLOOR else line % words


def fahrenheit(celsius: float) -> float:
    return 32.0 + 1.8 * celsius


def place_words() -> Mapping[str, str]:
    """The eight places round the door."""
    return {
        "top-left": _("top left"),
        "top": _("top"),
        "top-right": _("top right"),
        "right": _("right"),
        "bottom-right": _("bottom right"),
        "bottom": _("bottom"),
        "bottom-left": _("bottom left"),
        "left": _("left"),
    }


def run_on_words(text: str) -> str:
    """What was heard, as it was heard: the evidence counts a long time after much heat for less. Raises Unreadable."""
    found, raw = read_run_on(text), fields_of(FIELDS, text)
    words = {"heard": raw["heard"], "stopped": raw.get("stopped", "")}
    if found.minutes.value >= WITHOUT_END:
        return _("still running when the oven was cold")
    if found.running:
        return _("still running %(heard)s min after switch-off") % words
    if not found.minutes.value:
        return _("silent from switch-off on")
    if words["heard"] == words["stopped"]:
        return _("found still %(stopped)s min after switch-off") % words
    return _("heard at %(heard)s min after switch-off and found still at %(stopped)s") % words


def _of_meter(power: Power, quantity: str) -> str:
    words = {"power": power_words(power.watts), "share": round(100.0 * max(power.share.value, 0.0))}
    if quantity == "watts":
        return power_words(power.watts)
    if power.rating.known:
        return _("%(power)s, %(share)s %% of what its plate lets one expect") % words
    return _("%(power)s, %(share)s %% of a usual heater") % words


def _of_thermometer(found: Temperatures, quantity: str) -> str:
    if quantity == "swing":
        return _("%(c)s °C (%(f)s °F) between highest and lowest") % {
            "c": round(found.swing.value),
            "f": round(1.8 * found.swing.value),
        }
    if quantity == "duty":
        return _("rising or level for %(share)s %% of the time") % {"share": round(100.0 * found.duty.value)}
    return _("mean %(c)s °C (%(f)s °F) ± %(unsure)s °C, set to %(set_to)s °C") % {
        "c": round(found.mean.value),
        "f": round(fahrenheit(found.mean.value)),
        "unsure": round(2.0 * found.mean.uncertainty),
        "set_to": round(found.set_to),
    }


def _of_preheat(found: Preheat) -> str:
    words = {"minutes": f"{found.minutes:g}", "needed": round(found.needed.value), "ratio": f"{found.ratio.value:.1f}"}
    if found.ratio.at_least:
        return _("not hot after %(minutes)s min; a sound oven needs about %(needed)s min") % words
    return _("%(minutes)s min, %(ratio)s times the %(needed)s min a sound oven needs") % words


def _of_gasket(found: Gasket) -> str:
    names = place_words()
    tried = len(PLACES) - found.leaks.count(None)
    if not found.places:
        return _("tight at all %(n)s places tried") % {"n": tried}
    return _("leaks at: %(places)s") % {"places": ", ".join(names[place] for place in found.places)}
