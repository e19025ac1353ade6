"""How made-up people with known faults are triaged: what band their oven's trouble is, and what band they are told.

The people come from `tests/engine/simulating.py`: they answer as the pack says people answer, unsure of a good part.
"""

from collections import Counter
from random import Random

from tests.engine.simulating import draw_household, follow
from tests.safety.walking import region_named
from triage.engine import Band, MakeSafe, NotThis, compile_model
from triage.engine.pack import OPENING
from triage.knowledge.library import library


def triaged(region, number, seed):
    """How often each true band was told as each band, by pairs of names; a way out counts as qualified."""
    pack, place, dice, told = library().pack, region_named(region), Random(seed), Counter()
    for _ in range(number):
        household = draw_household(compile_model(pack, place), dice)
        step = follow(household, pack, place, [(OPENING, household.answer(OPENING)), household.danger_page()])
        told[true_band(pack, household).value, told_band(step).value] += 1
    return told


def true_band(pack, household):
    return max((pack.faults[fault].band for fault in household.faults), key=lambda band: band.severity)


def told_band(step):
    if isinstance(step, NotThis):
        return Band.QUALIFIED
    return Band.MAKE_SAFE if isinstance(step, MakeSafe) else step.verdict.band
