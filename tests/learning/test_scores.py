"""Scores of stated chances: against scikit-learn, statsmodels and worked examples."""

import warnings

import numpy
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import norm
from sklearn.calibration import calibration_curve
from sklearn.metrics import brier_score_loss, log_loss
from statsmodels.stats.proportion import proportion_confint

from triage.learning.scores import Forecast, brier_terms, mean_difference, reliability, scores

EGGS_HAM_SPAM = ("eggs", "ham", "spam")


def forecasts_of(rows, found, names=EGGS_HAM_SPAM):
    return [Forecast(dict(zip(names, row, strict=True)), name) for row, name in zip(rows, found, strict=True)]


def test_brier_over_three_is_not_halved():
    """The example of scikit-learn 1.9.1's brier_score_loss: 0.1467 (printed 0.146)."""
    rows = [(0.8, 0.1, 0.1), (0.2, 0.7, 0.1), (0.2, 0.2, 0.6)]
    found = scores(forecasts_of(rows, EGGS_HAM_SPAM))
    assert found.brier == pytest.approx(0.44 / 3, abs=1e-12)
    assert found.brier == pytest.approx(brier_score_loss(EGGS_HAM_SPAM, rows, labels=EGGS_HAM_SPAM), abs=1e-12)


@given(st.lists(st.tuples(*[st.floats(0.01, 1.0)] * 3, st.sampled_from(EGGS_HAM_SPAM)), min_size=1, max_size=30))
def test_brier_and_log_score_are_those_of_scikit_learn(drawn):
    rows = [[value / sum(row[:3]) for value in row[:3]] for row in drawn]
    names = [row[3] for row in drawn]
    found = scores(forecasts_of(rows, names))
    assert found.brier == pytest.approx(brier_score_loss(names, rows, labels=EGGS_HAM_SPAM), abs=1e-9)
    assert found.log_score == pytest.approx(log_loss(names, rows, labels=EGGS_HAM_SPAM), abs=1e-9)


def test_the_five_terms_of_binned_forecasts():
    """Worked by hand after Stephenson, Coelho and Jolliffe 2008: three terms alone give 0.188, not 0.160."""
    stated = list(
        zip([0.05, 0.15, 0.25, 0.45, 0.55, 0.65, 0.75, 0.95], map(bool, [0, 0, 1, 0, 0, 1, 1, 1]), strict=True)
    )
    terms = brier_terms(stated, bins=2)
    assert terms.reliability == pytest.approx(0.000625, abs=1e-12)
    assert terms.resolution == pytest.approx(0.0625, abs=1e-12)
    assert terms.uncertainty == pytest.approx(0.25, abs=1e-12)
    assert terms.variance_within == pytest.approx(0.021875, abs=1e-12)
    assert terms.covariance_within == pytest.approx(0.05, abs=1e-12)
    assert terms.total == pytest.approx(0.16, abs=1e-12)


def test_forecasts_that_are_equal_within_each_bin_need_three_terms_only():
    """Murphy's decomposition, worked by hand: 0.01 - 0.05 + 0.25 = 0.21."""
    stated = [
        (p, bool(y)) for p, y in zip([0.1] * 4 + [0.5] * 2 + [0.8] * 4, [0, 0, 0, 1, 0, 1, 1, 1, 1, 0], strict=True)
    ]
    terms = brier_terms(stated)
    assert (terms.reliability, terms.resolution, terms.uncertainty) == pytest.approx((0.01, 0.05, 0.25), abs=1e-12)
    assert (terms.variance_within, terms.covariance_within) == pytest.approx((0.0, 0.0), abs=1e-12)
    assert terms.total == pytest.approx(0.21, abs=1e-12)


@given(st.lists(st.tuples(st.floats(0.0, 1.0), st.booleans()), min_size=1, max_size=60), st.integers(1, 12))
def test_the_five_terms_always_add_up_to_the_brier_score(stated, bins):
    direct = sum((chance - was) ** 2 for chance, was in stated) / len(stated)
    assert brier_terms(stated, bins).total == pytest.approx(direct, abs=1e-9)


def test_the_bins_are_those_of_scikit_learn():
    """The example of scikit-learn 1.9.1's calibration_curve, and its own answer."""
    chances = [0.1, 0.2, 0.3, 0.4, 0.65, 0.7, 0.8, 0.9, 1.0]
    came = [0, 0, 0, 0, 1, 1, 1, 1, 1]
    bins = reliability(list(zip(chances, map(bool, came), strict=True)), bins=3)
    assert [held.right / held.of for held in bins] == pytest.approx([0.0, 0.5, 1.0])
    assert [held.stated for held in bins] == pytest.approx([0.2, 0.525, 0.85])
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        right, stated = calibration_curve(came, chances, n_bins=3)
    assert [held.right / held.of for held in bins] == pytest.approx(list(right))
    assert [held.stated for held in bins] == pytest.approx(list(stated))


def test_the_bars_are_wilson_intervals():
    """statsmodels 0.15.0, and R's binom.confint as its tests quote it: 18 of 20 gives 0.698966 to 0.972134."""
    (held,) = reliability([(0.95, number < 18) for number in range(20)])
    assert held.interval == pytest.approx((0.6989663547715128, 0.972133518786232), abs=1e-9)
    assert held.interval == pytest.approx(proportion_confint(18, 20, method="wilson"), abs=1e-9)


def test_a_chance_of_one_is_in_the_last_bin_and_empty_bins_are_left_out():
    bins = reliability([(1.0, True), (0.0, False)])
    assert [(held.low, held.high, held.of) for held in bins] == [(0.0, 0.1, 1), (0.9, 1.0, 1)]


def test_what_was_found_outside_the_forecast_had_no_chance():
    forecast = Forecast({"ham": 1.0}, "eggs")
    assert (forecast.found_probability, forecast.leading) == (0.0, (1.0, False))
    assert scores([forecast]).brier == 2.0


def test_the_interval_of_a_difference_is_the_normal_one():
    before, after = [1.0, 2.0, 4.0, 3.0], [0.5, 2.5, 3.0, 1.0]
    differences = numpy.subtract(before, after)
    error = differences.std(ddof=1) / 2
    low, high = norm.interval(0.95, differences.mean(), error)
    assert mean_difference(before, after) == pytest.approx((0.75, low, high), abs=1e-9)


def test_one_outcome_alone_shows_nothing():
    middle, low, high = mean_difference([2.0], [1.0])
    assert middle == 1.0
    assert low < -1e9 < 1e9 < high
