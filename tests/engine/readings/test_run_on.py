"""The run-on test: normal, stuck on, never on."""

import pytest

from tests.builders import electric_oven
from triage.engine.readings import level_likelihood, option_likelihoods, run_on
from triage.engine.readings.measured import uniform_uncertainty

FAN = electric_oven().observations["fan-run-on"]
LEVELS = electric_oven().conditions["cooling"].levels


def told(text):
    return option_likelihoods(FAN, text)


def test_the_truth_lies_anywhere_between_the_last_look_and_the_one_before():
    minutes = run_on.read_run_on("h10~s16").minutes
    assert minutes.value == 13.0
    assert minutes.uncertainty == pytest.approx((uniform_uncertainty(3.0) ** 2 + 0.25**2) ** 0.5)


@pytest.mark.parametrize(
    ("text", "option"),
    [
        ("h10~s16", "under-30-min"),
        ("h40~s45", "thirty-to-sixty"),
        ("h75", "never-stops"),
        ("h20~c1", "never-stops"),
        ("h0~s0", "no-run-on"),
        ("h61~s65~g1", "thirty-to-sixty"),
    ],
)
def test_what_was_heard_is_likeliest_under_its_answer(text, option):
    assert told(text)[option] == max(told(text).values())


def test_only_a_fan_that_never_ran_on_settles_that_it_does_not():
    """Found still a minute after switch-off and not heard before may be either; silent at once is nearly sure."""
    assert told("h0.0~s0.0")["no-run-on"] > 0.95 > 0.6 > told("h1.0~s1.0")["no-run-on"]


def test_a_fan_that_still_runs_after_ten_minutes_says_only_that_it_runs_on():
    likelihood = told("h10")
    assert likelihood["no-run-on"] == pytest.approx(0.0)
    assert likelihood["under-30-min"] == pytest.approx(likelihood["never-stops"])


def test_what_a_fan_always_did_cannot_be_measured_so_a_usual_time_speaks_for_both():
    levels = dict(zip(LEVELS, level_likelihood(FAN, "h10~s16"), strict=True))
    assert levels["as-always"] == pytest.approx(levels["stops-soon"], rel=0.1)
    assert levels["never-stops"] < 0.15 * levels["as-always"]


def test_only_a_fan_nobody_found_still_is_running():
    assert (run_on.read_run_on("h10").running, run_on.read_run_on("h10~s16").running) == (True, False)
