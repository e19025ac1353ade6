"""The first-order fit beside SciPy's."""

from math import exp

import numpy
import pytest
from hypothesis import given, strategies
from scipy.optimize import curve_fit

from tests.engine.trails import few
from triage.engine.readings.fitting import MAX_TAU, MIN_POINTS, MIN_TAU, fit


def warming(time, start, end, tau):
    return end + (start - end) * numpy.exp(-time / tau)


@few
@given(
    end=strategies.floats(120, 260),
    tau=strategies.floats(6, 40),
    noise=strategies.lists(strategies.floats(-3, 3), min_size=8, max_size=14),
)
def test_a_noisy_warm_up_is_fitted_as_well_as_by_scipy(end, tau, noise):
    times = [5.0 * i for i in range(len(noise))]
    points = [(t, float(warming(t, 20.0, end, tau)) + n) for t, n in zip(times, noise, strict=True)]
    ours = fit(points, 1.0)
    reach = ([-2000, -2000, MIN_TAU * times[-1]], [2000, 20_000, MAX_TAU * times[-1]])
    theirs, _ = curve_fit(warming, times, [y for _, y in points], p0=(20.0, end, tau), bounds=reach, max_nfev=20_000)
    left = sum((warming(t, *theirs) - y) ** 2 for t, y in points)
    assert ours.rms_residual**2 * len(points) <= left * (1 + 1e-6) + 1e-6


def test_an_exact_curve_is_found_again():
    points = [(t, 148.0 - 128.0 * exp(-t / 13.0)) for t in range(0, 60, 6)]
    found = fit(points, 1.0)
    assert (found.start, found.end, found.tau) == pytest.approx((20.0, 148.0, 13.0), rel=1e-5)
    assert found.at(24) == pytest.approx(points[4][1])


def test_how_far_off_the_end_may_be_is_what_scipy_says_of_it():
    """SciPy's covariance has the share of a known tau as well, about a tenth of it all."""
    times = [5.0 * i for i in range(1, 9)]
    noise = [1, -1, 0, 1, -1, 1, 0, -1]
    points = [(t, float(warming(t, 20.0, 240.0, 19.0)) + n) for t, n in zip(times, noise, strict=True)]
    found = fit(points, 1.0)
    _, spread = curve_fit(
        warming, times, [y for _, y in points], p0=(20.0, 240.0, 19.0), sigma=[1.0] * 8, absolute_sigma=True
    )
    assert found.end_uncertainty == pytest.approx(spread[1][1] ** 0.5, rel=0.15)


def test_a_straight_rise_leaves_the_end_open():
    assert fit([(t, 20.0 + 5.0 * t) for t in range(0, 30, 5)], 1.0).end_uncertainty > 100.0


def test_too_few_points_fit_nothing():
    assert fit([(0, 1), (1, 2), (2, 3)], 1.0) is None
    assert MIN_POINTS == 4
