"""Shares, intervals and scores, beside statsmodels, scikit-learn and published tables."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sklearn.metrics import log_loss
from statsmodels.stats.proportion import proportion_confint

from triage.authoring.case_result import CaseResult
from triage.authoring.cases import Expected
from triage.authoring.figures import figures, log_score, share, wilson
from triage.engine import Band


@given(st.integers(1, 5000).flatmap(lambda of: st.tuples(st.integers(0, of), st.just(of))))
def test_the_interval_is_that_of_statsmodels(counted):
    count, of = counted
    low, high = proportion_confint(count, of, alpha=0.05, method="wilson")
    assert wilson(count, of) == pytest.approx((low, high), abs=1e-12)


@pytest.mark.parametrize(
    ("count", "of", "low", "high"),
    [
        # Newcombe, "Two-sided confidence intervals for the single proportion", Statistics in Medicine 1998, Table I;
        # from memory.
        (81, 263, 0.2553, 0.3662),
        (0, 20, 0.0, 0.1611),
        # R's binom.confint as kept in the tests of statsmodels; seen.
        (18, 20, 0.698966, 0.972134),
        (4, 200, 0.007804, 0.050287),
    ],
)
def test_the_interval_is_the_published_one(count, of, low, high):
    assert wilson(count, of) == pytest.approx((low, high), abs=5e-5)


def test_a_share_of_nothing_says_so():
    assert wilson(0, 0) == (0.0, 1.0)
    assert str(share([])) == "none to count"


def test_a_share_is_said_with_its_interval():
    assert str(share([True] * 4 + [False] * 16)) == "4 of 20, 20.0 % (8.1 to 41.6)"


@given(st.lists(st.lists(st.floats(0.01, 1.0), min_size=3, max_size=3), min_size=1, max_size=30), st.data())
def test_the_log_score_is_that_of_scikit_learn(weights, data):
    chances = [[weight / sum(row) for weight in row] for row in weights]
    truths = data.draw(st.lists(st.integers(0, 2), min_size=len(chances), max_size=len(chances)))
    given_to_truth = [row[truth] for row, truth in zip(chances, truths, strict=True)]
    assert log_score(given_to_truth) == pytest.approx(log_loss(truths, chances, labels=[0, 1, 2]), abs=1e-9)


def test_a_chance_of_nothing_is_bounded_and_a_missing_one_left_out():
    assert log_score([0.0]) == pytest.approx(27.631, abs=1e-3)
    assert log_score([None, 1.0]) == 0.0
    assert log_score([None]) is None


def finding(causes, band, wanted, bands, asked=3, chance=0.5):
    named = tuple((cause, 0.2) for cause in causes)
    jobs = frozenset(f"{cause}-job" for cause in wanted)
    expected = Expected(tuple(wanted), tuple(bands))
    job = f"{causes[0]}-job"
    return CaseResult("case", ("q",) * asked, asked, band, named, 1, job, 0.4, jobs, chance, 0.1, expected)


def test_each_figure_counts_what_it_says():
    found = figures(
        [
            finding("abcd", Band.QUALIFIED, "a", [Band.QUALIFIED], asked=2),
            finding("abcd", Band.QUALIFIED, "cx", [Band.MAKE_SAFE], asked=4),
            finding("abcd", Band.QUALIFIED, "d", [Band.SELF_CHECK, Band.NORMAL], asked=9),
            finding("abcd", Band.NORMAL, "b", [Band.SELF_CHECK, Band.QUALIFIED], asked=4),
        ]
    )
    counts = {name: getattr(found, name).count for name in ("cause_first", "cause_in_three", "job_first")}
    assert counts == {"cause_first": 1, "cause_in_three": 3, "job_first": 1}
    assert (found.right_band.count, found.under_triage.count, found.over_triage.count) == (1, 2, 1)
    assert (found.questions_median, found.questions_most) == (4, 9)
    assert found.log_score == pytest.approx(0.693147, abs=1e-6)
    assert found.log_score_before == pytest.approx(2.302585, abs=1e-6)


def test_the_rows_for_people_say_each_figure_once():
    rows = dict(figures([finding("a", Band.NORMAL, "a", [Band.NORMAL])]).as_rows())
    assert rows["Right cause first"] == "1 of 1, 100.0 % (20.7 to 100.0)"
    assert rows["Questions, median and most"] == "3 and 3"
    assert rows["Log score of the job"] == "0.693 (0 is perfect; 2.303 before anything is said)"
    outside = figures([finding("a", Band.NORMAL, "a", [Band.NORMAL], chance=None)])
    assert dict(outside.as_rows())["Log score of the job"] == "no check to score"
