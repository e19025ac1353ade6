"""Dirichlet counts shrunk to the pack."""

import pytest
from scipy.stats import dirichlet

from triage.learning.shrinkage import dirichlet_mean, rate_factor


def test_one_of_each_and_three_and_one_more():
    """Conjugate update of a flat Dirichlet over three with counts 3, 1, 0: 4/7, 2/7, 1/7 (textbook)."""
    assert dirichlet_mean([1 / 3] * 3, 3, [3, 1, 0]) == pytest.approx((4 / 7, 2 / 7, 1 / 7), abs=1e-12)


def test_eighteen_of_twenty_by_the_rule_of_succession():
    """Laplace: (18 + 1) / (20 + 2)."""
    assert dirichlet_mean([0.5, 0.5], 2, [18, 2])[0] == pytest.approx(19 / 22, abs=1e-12)


@pytest.mark.parametrize("counts", [(0, 0, 0), (20, 0, 0), (1, 2.5, 300)])
def test_the_mean_is_that_of_scipy(counts):
    shares, worth = (0.7, 0.2, 0.1), 250.0
    after = dirichlet([worth * share + count for share, count in zip(shares, counts, strict=True)])
    assert dirichlet_mean(shares, worth, counts) == pytest.approx(after.mean(), abs=1e-12)


def test_rates_of_ovens_that_can_all_have_every_fault_are_a_dirichlet():
    shares, found, worth = (0.5, 0.3, 0.2), (2, 0, 8), 250.0
    rates = [s * rate_factor(s, worth, n, 10 * s) for s, n in zip(shares, found, strict=True)]
    after = dirichlet([worth * share + count for share, count in zip(shares, found, strict=True)])
    assert [rate / sum(rates) for rate in rates] == pytest.approx(after.mean(), abs=1e-12)


def test_a_fault_that_no_oven_seen_could_have_keeps_its_rate():
    assert rate_factor(0.1, 250.0, found=0, expected=0.0) == 1.0
