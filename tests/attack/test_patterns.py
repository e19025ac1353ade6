"""Regular expressions: four times the text takes about four times the time, whatever the text.

No limit in seconds: a backtracking pattern shows in how its time grows. Times too short to compare are not compared.
"""

import re

import pytest

from tests.attack.patterns import every_pattern, hurtful, seconds

TINY = (12, 20)  # a pattern that doubles with each sign is slow here already, and would never end further on
SMALL, LARGE = 500, 2000
MOST_GROWTH = 9.0  # a line grows by 4, a square by 16
SHORTEST = 0.004
PATTERNS = every_pattern()


def growth(pattern):
    """The largest ratio of times for texts four times as long, of those that take long enough to tell; the first that
    is too large is enough."""
    for size in TINY:
        if any(seconds(pattern, text) > SHORTEST for text in hurtful(size)):
            return float("inf")
    worst = 0.0
    for small, large in zip(hurtful(SMALL), hurtful(LARGE), strict=True):
        if seconds(pattern, large) >= SHORTEST:  # the best of three, against a moment's disturbance
            slow = min(seconds(pattern, large) for _ in range(3))
            quick = min(seconds(pattern, small) for _ in range(3))
            worst = max(worst, slow / max(quick, SHORTEST / 50))
            if worst > MOST_GROWTH:
                break
    return worst


def test_all_of_them_are_looked_at():
    assert len(PATTERNS) >= 30
    assert {"triage.web.framing.ORIGIN", "triage.jobsheet.booking.TELEPHONE"} <= set(PATTERNS)


@pytest.mark.parametrize("name", PATTERNS)
def test_it_does_not_get_slower_and_slower(name):
    assert growth(PATTERNS[name]) < MOST_GROWTH


@pytest.mark.parametrize("careless", [r"([0-9/-]+) ?V", r"[.!?]+(?:\s|$)", r"(a+)+b"])
def test_a_careless_pattern_would_be_caught(careless):
    assert growth(re.compile(careless)) > MOST_GROWTH
