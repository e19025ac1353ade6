"""The normal distribution function beside SciPy's."""

import pytest
from hypothesis import given, strategies
from scipy.stats import norm

from triage.engine.readings.normal import MAX_DEVIATIONS, normal_cdf


@given(x=strategies.floats(-12, 12))
def test_it_agrees_with_scipy(x):
    assert normal_cdf(x) == pytest.approx(float(norm.cdf(x)), abs=1e-14)


@pytest.mark.parametrize(
    ("x", "chance"), [(-float("inf"), 0.0), (-MAX_DEVIATIONS, 0.0), (0.0, 0.5), (float("inf"), 1.0)]
)
def test_the_ends_and_the_middle_are_exact(x, chance):
    assert normal_cdf(x) == chance
