"""The meter test: four ways to the same power, each as sure as its figures are."""

import pytest
from hypothesis import given, strategies
from uncertainties import ufloat

from tests.builders import electric_oven
from tests.engine.trails import some
from triage.engine.readings import meter, option_likelihoods
from triage.engine.readings.measured import uniform_uncertainty

PLATE = "~p2200~b100"


def likeliest(text):
    told = option_likelihoods(electric_oven().observations["meter-power"], text)
    return max(told, key=told.get)


def taps_at(watts, count, start=0.0, impulses=1000.0):
    """The moments of that many flashes at this total power."""
    step = 3.6e6 / impulses / watts
    return [start + step * (i + 1) for i in range(count)]


def written(taps):
    return "x" + "_".join(f"{tap:.3f}" for tap in taps) + "~k1000" + PLATE


@pytest.mark.parametrize("text", ["f21~s30~k1000~b100", "a1000.00~z1000.40~m10~b100", "i100~j2400"])
def test_the_ways_agree_on_the_power(text):
    assert meter.read_meter(text).watts.value == pytest.approx(2300.0)


def test_a_steady_tap_along_gives_the_same_power():
    power = meter.read_meter("x" + "_".join(str(1.5 * i) for i in range(21)) + "~k1000~b100")
    assert (power.watts.value, power.resting_share) == pytest.approx((2300.0, 0.0))


@some
@given(flashes=strategies.integers(2, 200), seconds=strategies.floats(5, 600), background=strategies.floats(0, 500))
def test_the_power_and_its_uncertainty_are_what_the_uncertainties_package_makes_of_them(flashes, seconds, background):
    power = meter.read_meter(f"f{flashes}~s{seconds:.3f}~k1000~b{background:.2f}~p2200~r230~v236")
    intervals = ufloat(flashes - 1, uniform_uncertainty(1.0))
    rest = ufloat(round(background, 2), (20.0**2 + (0.15 * round(background, 2)) ** 2) ** 0.5)
    watts = intervals * 3600.0 / round(seconds, 3) - rest
    expected = ufloat(2145.0, 2145.0 * uniform_uncertainty(165.0 / 2145.0)) * (ufloat(236.0, 2.0) / 230.0) ** 2
    share = watts / expected
    assert power.watts.value == pytest.approx(watts.nominal_value)
    assert power.watts.uncertainty == pytest.approx(watts.std_dev)
    assert power.share.value == pytest.approx(share.nominal_value)
    assert power.share.uncertainty == pytest.approx(share.std_dev, rel=1e-6)


@pytest.mark.parametrize(
    ("text", "option"),
    [
        ("f40~s60~k1000" + PLATE, "as-rated"),
        ("f20~s60~k1000" + PLATE, "half-to-three-quarter"),
        ("f11~s60~k1000" + PLATE, "about-a-quarter"),
        ("f3~s60~k1000" + PLATE, "near-zero"),
        ("f0~s60~k1000" + PLATE, "near-zero"),
        ("f70~s60~k1000" + PLATE, "well-above"),
    ],
)
def test_a_reading_is_likeliest_in_the_class_it_falls_in(text, option):
    assert likeliest(text) == option


def test_without_a_note_of_the_rest_of_the_house_the_oven_is_less_sure():
    assert (
        meter.read_meter("f40~s60~k1000").watts.uncertainty
        > 2 * meter.read_meter("f40~s60~k1000~b100").watts.uncertainty
    )


def test_a_thermostat_that_rests_between_is_not_taken_for_a_weak_element():
    """Two thirds of the time at rest: the average is a third of the power, the element is sound."""
    on = taps_at(2300, 12)
    rest = taps_at(100, 1, on[-1])
    again = taps_at(2300, 12, rest[-1] + 20.0)
    power = meter.read_meter(written([0.0, *on, *rest, *again]))
    average = 25 * 3600.0 / again[-1] - 100.0
    assert average < 0.45 * 2200
    assert likeliest(written([0.0, *on, *rest, *again])) == "as-rated"
    assert power.resting_share == pytest.approx(1.0 - 25 * 3600.0 / 2300 / again[-1], abs=0.02)


def test_a_weak_element_is_seen_in_steady_taps():
    power = meter.read_meter(written([0.0, *taps_at(1200, 20)]))
    assert likeliest(written([0.0, *taps_at(1200, 20)])) == "half-to-three-quarter"
    assert power.resting_share == pytest.approx(0.0, abs=1e-3)


def test_a_long_count_may_have_met_a_rest_so_a_low_one_says_less():
    short, long = "f17~s60~k1000" + PLATE, "f280~s1050~k1000" + PLATE
    power = electric_oven().observations["meter-power"]
    assert meter.read_meter(short).watts.value == pytest.approx(meter.read_meter(long).watts.value, rel=0.01)
    assert option_likelihoods(power, long)["as-rated"] > 3 * option_likelihoods(power, short)["as-rated"]


def test_the_middle_of_an_even_number_is_between_the_two():
    assert (meter.median([4, 1, 3, 2]), meter.median([5, 1, 3])) == (2.5, 3)
