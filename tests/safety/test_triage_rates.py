"""How often harmless trouble is called dangerous, and how often danger is missed.

Danger signs come before any odds, so what is missed here is danger that showed no sign: a joint that burns with no
smell yet. Measured on 6,000 made-up checks in each of two regions: of the dangerous 1 to 2 in 100 were told that they
may do something themselves, and of the harmless 11 to 12 in 100 were told to make it safe.
"""

from collections import Counter

import pytest

from tests.published.replaying import play, seen_cases
from tests.safety.parallel import in_parallel
from tests.safety.triaging import triaged
from triage.engine import Band

CHECKS, SEED = 200, 7
PLACES = ("gb-eng", "us")
HARMLESS = ("self-check", "normal")
FALSE_ALARMS_AT_MOST = 0.15
MISSED_AT_MOST = 0.04


@pytest.fixture(scope="module")
def told():
    jobs = [(place, CHECKS, SEED + part) for place in PLACES for part in range(4)]
    return sum(in_parallel(triaged, jobs), Counter())


def share(told, true_bands, told_bands):
    these = {pair: number for pair, number in told.items() if pair[0] in true_bands}
    return sum(number for pair, number in these.items() if pair[1] in told_bands) / sum(these.values())


def test_harmless_trouble_is_seldom_called_dangerous(told):
    assert share(told, HARMLESS, ["make-safe"]) <= FALSE_ALARMS_AT_MOST


def test_danger_is_almost_never_called_harmless(told):
    assert share(told, ["make-safe"], HARMLESS) <= MISSED_AT_MOST


def test_most_danger_is_called_dangerous_and_nearly_all_the_rest_a_qualified_persons_work(told):
    assert share(told, ["make-safe"], ["make-safe"]) >= 0.85
    assert share(told, ["make-safe"], ["make-safe", "qualified"]) >= 1 - MISSED_AT_MOST


@pytest.mark.parametrize("case", seen_cases(), ids=lambda case: case.id)
@pytest.mark.parametrize("most", [None, 10, 3])
def test_no_danger_that_people_really_had_is_called_harmless(case, most):
    played = play(case, most)
    if played.expected.bands == (Band.MAKE_SAFE,):
        assert played.band.value not in HARMLESS
