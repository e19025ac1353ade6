"""A written reading in words: the value, what it may be out by, and both units of heat."""

import pytest

from triage.jobsheet.reading_text import answer_in_figures, fahrenheit, run_on_text
from triage.jobsheet.wording import answer_label
from triage.knowledge.library import library


@pytest.mark.parametrize(
    ("observation", "text", "label"),
    [
        # 34 intervals of 3600 J in 60 s are 2040 W; the house's 150 W off, and u of both, give 1890 W ± 2 x 106.
        ("meter-power", "f35~s60~k1000~p2200", "1.89 kW ± 0.21, 88 % of what its plate lets one expect"),
        ("meter-power", "f35~s60~k1000", "1.89 kW ± 0.21, 97 % of a usual heater"),
        ("meter-power", "i300~j300~p2200", "0 W ± 102, 0 % of what its plate lets one expect"),
        ("meter-off", "i300~j340", "40 W ± 103"),
        ("meter-off", "i300~j100", "0 W ± 101"),
        ("meter-off", "i0~j-0", "0 W ± 45"),
        ("fan-run-on", "h20~s25", "heard at 20 min after switch-off and found still at 25"),
        ("fan-run-on", "h20~s20", "found still 20 min after switch-off"),
        ("fan-run-on", "h60~s60~g1", "found still 60 min after switch-off"),
        ("fan-run-on", "h40", "still running 40 min after switch-off"),
        ("fan-run-on", "h40~c1", "still running when the oven was cold"),
        ("paper-strip-test", "pgggggggg", "tight at all 8 places tried"),
        ("paper-strip-test", "psgggxxxg", "leaks at: top left"),
        ("torch-gap-test", "pggssgggg", "leaks at: top right, right"),
    ],
)
def test_in_figures(observation, text, label):
    assert answer_in_figures(observation, text) == label
    assert answer_label(library().texts_for("gb-eng"), observation, text) == label


def test_heat_stands_in_both_units():
    assert answer_in_figures("thermometer-mean", "c180~r30-174").startswith("mean 174 °C (345 °F) ± ")
    assert "°F) between highest and lowest" in answer_in_figures("thermometer-swing", "c180~r30-174_40-190")
    assert answer_in_figures("thermometer-duty", "c180~r30-174_40-190").endswith("% of the time")


def test_a_preheat_says_how_many_times_as_long():
    assert answer_in_figures("preheat-time", "m30~c200").startswith("30 min, ")
    assert answer_in_figures("preheat-time", "m45~c200~w1").startswith(
        "not hot after 45 min; a sound oven needs about "
    )


@pytest.mark.parametrize("text", ["", "f1", "purple", "k0~f2~s1", "~", "x" * 700])
def test_what_cannot_be_read_is_left_as_it_stands(text):
    assert answer_in_figures("meter-power", text) is None
    assert answer_label(library().texts_for("gb-eng"), "meter-power", text) == text


def test_what_takes_no_figures_has_no_such_words():
    assert answer_in_figures("complaint", "f35~s60~k1000") is None
    assert answer_in_figures("from-another-pack", "f35") is None


def test_a_floor_is_called_one():
    """1.2 kWh in an hour are 1.2 kW, less the home's usual 150 W; the thermostat will have rested meanwhile."""
    hour = answer_in_figures("meter-power", "a12345.0~z12346.2~m60~p2200")
    assert hour == "1.05 kW ± 0.22 or more, 49 % of what its plate lets one expect"


def test_boiling_water_in_fahrenheit():
    """212 °F by the definition of the scale at standard pressure."""
    assert fahrenheit(100.0) == 212.0


def test_a_run_on_says_what_was_heard():
    assert run_on_text("h0~s1") == "heard at 0 min after switch-off and found still at 1"
