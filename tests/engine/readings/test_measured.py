"""Uncertainty arithmetic beside the `uncertainties` package, and likelihoods beside SciPy's integrals."""

from math import log

import pytest
from hypothesis import assume, given, strategies
from scipy.integrate import fixed_quad
from scipy.stats import norm, triang, uniform
from uncertainties import ufloat, umath

from tests.engine.trails import some
from triage.engine.readings.measured import (
    Measured,
    in_quadrature,
    interval_likelihoods,
    overlaps,
    probability_above,
    propagated,
    triangular_uncertainty,
    uniform_uncertainty,
)

LINE = ((0.0, 0.12), (0.12, 0.35), (0.35, 0.8), (0.8, 1.25), (1.25, 1.7))
values = strategies.floats(0.5, 50)
unsure = strategies.floats(0.001, 0.2)


def test_limits_become_the_standard_deviations_of_their_shapes():
    assert uniform_uncertainty(3.0) == pytest.approx(uniform(-3, 6).std())
    assert triangular_uncertainty(3.0) == pytest.approx(triang(0.5, -3, 6).std())


@some
@given(a=values, b=values, ua=unsure, ub=unsure)
def test_a_formula_is_propagated_as_by_the_uncertainties_package(a, b, ua, ub):
    value, u = propagated(lambda x, y: x / y - log(x), (a, b), (ua, ub))
    x, y = ufloat(a, ua), ufloat(b, ub)
    theirs = x / y - umath.log(x)
    assert value == pytest.approx(theirs.nominal_value, rel=1e-9)
    assert u == pytest.approx(theirs.std_dev, rel=1e-4, abs=1e-7)


def test_independent_parts_add_in_quadrature():
    assert in_quadrature(3.0, 4.0) == pytest.approx((ufloat(0, 3) + ufloat(0, 4)).std_dev)


@some
@given(value=strategies.floats(0.0, 1.7), u=strategies.floats(0.02, 2.0))
def test_a_likelihood_is_the_mean_density_over_the_span(value, u):
    means = [fixed_quad(lambda x: norm.pdf(value, x, u), low, high, n=150)[0] / (high - low) for low, high in LINE]
    assume(sum(means) > 1e-6)
    assert interval_likelihoods(Measured(value, u), LINE) == pytest.approx([m / sum(means) for m in means], abs=1e-6)


def test_a_measurement_that_tells_nothing_favours_no_span_however_wide():
    assert interval_likelihoods(Measured(0.5, 1e6), LINE) == pytest.approx([0.2] * 5, abs=1e-6)


@pytest.mark.parametrize(("value", "place"), [(-40.0, 0), (99.0, 4)])
def test_a_value_beyond_the_line_counts_as_at_its_end(value, place):
    assert interval_likelihoods(Measured(value, 0.01), LINE)[place] == pytest.approx(1.0)


def test_a_floor_leaves_open_every_span_above_it():
    assert interval_likelihoods(Measured(0.5, 0.01, p_lower_bound=1.0), LINE) == pytest.approx(
        (0, 0, 1 / 3, 1 / 3, 1 / 3)
    )


def test_equal_spans_share_one_likelihood_each_in_full():
    assert interval_likelihoods(Measured(10.0, 0.1), ((0, 5), (5, 30), (5, 30), (30, 60))) == pytest.approx(
        (0, 1, 1, 0)
    )


def test_the_chance_to_be_above_a_limit_is_even_at_the_limit():
    assert probability_above(Measured(50.0, 5.0), 50.0) == 0.5
    assert probability_above(Measured(45.0, 5.0), 50.0) == pytest.approx(norm.sf(1.0))


@pytest.mark.parametrize(("value", "touches"), [(44.9, False), (45.0, True), (60.0, True), (75.0, True), (75.1, False)])
def test_a_span_is_touched_from_one_standard_uncertainty_away(value, touches):
    assert overlaps(Measured(value, 5.0), (50.0, 70.0)) is touches
