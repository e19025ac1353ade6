"""How made-up people with known faults are triaged: what band their oven's trouble is, and what band they are told.

The people are simulated (`triage/authoring/simulated_users.py`): they answer as the pack says people answer,
unsure of a good part.
"""

from collections import Counter
from random import Random

from tests.safety.walking import region_named
from triage.authoring.check_runner import CheckRunner
from triage.authoring.simulated_users import draw_user
from triage.engine import Band, Emergency, OutOfScope
from triage.knowledge.library import library


def triaged(region, number, seed):
    """How often each true band was told as each band, by pairs of names; a way out counts as qualified."""
    walk, dice, told = CheckRunner(library().pack, region_named(region)), Random(seed), Counter()
    for _ in range(number):
        household = draw_user(walk.model, dice)
        step = walk.run(household.opening_answers(), household.answer).step
        told[true_band(walk.pack, household).value, told_band(step).value] += 1
    return told


def true_band(pack, household):
    return max((pack.faults[fault].band for fault in household.faults), key=lambda band: band.severity)


def told_band(step):
    if isinstance(step, OutOfScope):
        return Band.QUALIFIED
    return Band.MAKE_SAFE if isinstance(step, Emergency) else step.verdict.band
