"""What a meter reading comes to: nothing at all, fan and lamp only, a share of the heaters, or all.

Named is the class the true value lies in with a fair chance; near an edge both neighbours, so no last digit decides;
where figures are rougher still, the first and the last it may be. An average over a time in which the thermostat may
have rested is told as an average. What fan and lamp draw, and which heaters a share stands for, is common practice,
no source.
"""

from dataclasses import replace
from itertools import pairwise

from triage.check_pages.drawings.drawing import Facts
from triage.check_pages.presenters.readings.interpretation import CLEAR
from triage.engine.readings.measured import probability_above
from triage.engine.readings.meter import Power
from triage.jobsheet.reading_text import is_floor

CLASSES = ("nothing", "fan-and-lamp", "quarter", "half", "three-quarters", "all", "more")
NOTHING_BELOW = 15.0  # watts
# Shares between one class and the next: those of the pack's answers, with its middle one cut in two.
EDGES = (0.12, 0.35, 0.62, 0.8, 1.25)
ROUGH = 1.0  # a range as wide as the whole; author's judgement


def power_class_facts(power: Power) -> Facts:
    """What the power comes to; `_power_class.html` says it in a sentence or two."""
    found = power_classes(power)
    share, unsure = power.share.value, 2.0 * power.share.uncertainty
    return {
        "heater": found[-1] not in CLASSES[:2],
        "part": found[0],
        "other_part": found[-1],
        "on_average": is_floor(power.watts),
        "watts_unsure": f"{2.0 * power.watts.uncertainty:.0f}",
        "share_low": round(100.0 * max(share - unsure, 0.0)),
        "share_high": round(100.0 * max(share + unsure, 0.0)),
        "rough": len(found) > 2 or 2.0 * unsure > ROUGH,
    }


def power_classes(power: Power) -> tuple[str, ...]:
    """The class that holds it with a fair chance, or as few in a row as do; the lowest first."""
    edges = (NOTHING_BELOW / power.rating.expected.value, *EDGES)
    share = replace(power.share, value=max(power.share.value, 0.0))
    above = [1.0, *(probability_above(share, edge) for edge in edges), 0.0]
    chances = [reached - passed for reached, passed in pairwise(above)]
    first = last = chances.index(max(chances))
    while sum(chances[first : last + 1]) < CLEAR:
        if last + 1 == len(chances) or (first > 0 and chances[first - 1] > chances[last + 1]):
            first -= 1
        else:
            last += 1
    return CLASSES[first : last + 1]
