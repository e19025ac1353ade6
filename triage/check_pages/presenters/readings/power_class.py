"""What a meter reading comes to in plain words: nothing at all, fan and lamp only, a share of the heaters, or all.

Named is the class the true value lies in with a fair chance; near an edge both neighbours, so no last digit decides;
where figures are rougher still, the first and the last it may be. An average over a time in which the thermostat may
have rested is told as an average. What fan and lamp draw, and which heaters a share stands for, is common practice,
no source.
"""

from collections.abc import Mapping
from dataclasses import replace
from itertools import pairwise

from django.utils.translation import gettext as _

from triage.check_pages.presenters.readings.told import CLEAR
from triage.engine.readings.measured import chance_above
from triage.engine.readings.meter import Power
from triage.jobsheet.reading_text import is_floor

CLASSES = ("nothing", "fan-and-lamp", "quarter", "half", "three-quarters", "all", "more")
NOTHING_BELOW = 15.0  # watts
# Shares between one class and the next: those of the pack's answers, with its middle one cut in two.
EDGES = (0.12, 0.35, 0.62, 0.8, 1.25)
ROUGH = 1.0  # a range as wide as the whole; author's judgement


def power_class_line(power: Power) -> str:
    """What the power comes to, in a sentence or two."""
    found = power_classes(power)
    return _without_heater(power, found) if found[-1] in CLASSES[:2] else _share_line(power, found)


def power_classes(power: Power) -> tuple[str, ...]:
    """The class that holds it with a fair chance, or as few in a row as do; the lowest first."""
    edges = (NOTHING_BELOW / power.rating.expected.value, *EDGES)
    share = replace(power.share, value=max(power.share.value, 0.0))
    above = [1.0, *(chance_above(share, edge) for edge in edges), 0.0]
    chances = [reached - passed for reached, passed in pairwise(above)]
    first = last = chances.index(max(chances))
    while sum(chances[first : last + 1]) < CLEAR:
        if last + 1 == len(chances) or (first > 0 and chances[first - 1] > chances[last + 1]):
            first -= 1
        else:
            last += 1
    return CLASSES[first : last + 1]


def _without_heater(power: Power, found: tuple[str, ...]) -> str:
    if is_floor(power.watts):
        return _("Next to nothing on average: no heater drew power for most of this time.")
    if found == ("nothing",):
        return _("Nothing at all: neither a heater nor fan and lamp seem to draw power.")
    if found == ("fan-and-lamp",):
        return _("Fan and lamp only: they draw some tens of watts. No heater seems to draw power.")
    words = {"unsure": f"{2.0 * power.watts.uncertainty:.0f}"}
    line = _(
        "No heater seems to draw power. Fan and lamp draw only some tens of watts, and this may be out by %(unsure)s W."
        " It cannot tell them from nothing at all."
    )
    return line % words


def _share_line(power: Power, found: tuple[str, ...]) -> str:
    share, unsure, on_average = power.share.value, 2.0 * power.share.uncertainty, is_floor(power.watts)
    words = {
        "part": _part(found),
        "whole": _("its plate lets one expect") if power.rating.known else _("a usual heater draws"),
        "low": round(100.0 * max(share - unsure, 0.0)),
        "high": round(100.0 * max(share + unsure, 0.0)),
    }
    line = _("This comes to %(part)s of what %(whole)s: from %(low)s to %(high)s %%.") % words
    if on_average:
        line = _("On average this comes to %(part)s of what %(whole)s: from %(low)s to %(high)s %%.") % words
    if len(found) > 2 or 2.0 * unsure > ROUGH:
        return " ".join((line, _("The figures are too rough to tell more.")))
    return line if len(found) > 1 or on_average else f"{line} {_meanings()[found[0]]}"


def _part(found: tuple[str, ...]) -> str:
    names = _names()
    if len(found) == 1:
        return names[found[0]]
    return _("between %(part)s and %(other)s") % {"part": names[found[0]], "other": names[found[-1]]}


def _names() -> Mapping[str, str]:
    return {
        "nothing": _("nothing"),
        "fan-and-lamp": _("next to nothing"),
        "quarter": _("a quarter"),
        "half": _("half"),
        "three-quarters": _("three quarters"),
        "all": _("all"),
        "more": _("more than all"),
    }


def _meanings() -> Mapping[str, str]:
    return {
        "quarter": _("As if one small heater of several worked, or one heater at half its voltage."),
        "half": _("As if about half of the heaters worked, such as one of two alike."),
        "three-quarters": _("As if a smaller heater of several did not work, or the voltage were too low."),
        "all": _("As if every heater of this setting worked."),
        "more": _("As if something else in the home had switched on meanwhile. Try it once more."),
    }
