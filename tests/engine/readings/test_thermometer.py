"""The thermometer test: mean, swing, offset, and how many readings they rest on."""

import random
from math import exp, pi, sin, sqrt
from statistics import mean, pstdev

import pytest

from tests.builders import electric_oven
from triage.engine.readings import flags_raised_by, option_likelihoods, thermometer
from triage.engine.readings.thermometer import turning_points, whole_cycles

PACK = electric_oven()


def written(points, set_to=180, more=""):
    return f"c{set_to}~r" + "_".join(f"{t:.2f}-{y:.2f}" for t, y in points) + more


def cycling(middle, swing, times, period=12.0):
    return [(t, middle + swing / 2 * sin(2 * pi * t / period)) for t in times]


def likeliest(observation, text):
    told = option_likelihoods(PACK.observations[observation], text)
    return max(told, key=told.get)


SOUND = written(cycling(180, 22, range(30, 66, 5)))
TOO_COOL = written(cycling(140, 22, range(30, 66, 5)))
WEAK = written([(t, 148 - 128 * exp(-t / 15)) for t in range(5, 75, 5)])


def test_the_mean_lies_midway_between_the_extremes():
    found = thermometer.read_thermometer(SOUND)
    assert found.offset.value == pytest.approx(0.0, abs=1.0)
    assert found.mean.value == pytest.approx(180.0, abs=1.0)


@pytest.mark.parametrize(("count", "off"), [(3, 0.21), (7, 0.07), (20, 0.02)])
def test_what_few_readings_miss_is_the_order_statistics_of_a_uniform(count, off):
    """Simulated: readings anywhere in a rise and fall of 40 K; a perfect thermometer."""
    dice = random.Random(count)
    middles, swings = [], []
    for _ in range(3000):
        values = [160 + 40 * dice.random() for _ in range(count)]
        middles.append((max(values) + min(values)) / 2)
        found = thermometer.read_thermometer(written([(40 + i, v) for i, v in enumerate(values)], more="~a0.1"))
        swings.append(found.swing.value)
    exact = 40 / sqrt(2 * (count + 1) * (count + 2))
    assert pstdev(middles) == pytest.approx(exact, rel=0.06)
    assert thermometer._unsure_middle(40, count) == pytest.approx(exact)
    assert mean(swings) == pytest.approx(40, rel=off)


def test_more_readings_make_the_mean_surer_and_are_asked_for_until_it_is():
    few, many = (
        thermometer.read_thermometer(written(cycling(180, 30, [30]))),
        thermometer.read_thermometer(written(cycling(180, 30, range(30, 90, 5)))),
    )
    assert few.mean.uncertainty > many.mean.uncertainty
    assert (few.readings_wanted > 0, many.readings_wanted) == (True, 0)


def test_readings_while_it_warms_up_say_nearly_nothing_of_the_mean():
    early = thermometer.read_thermometer(written([(5, 90), (10, 140), (15, 165)]))
    told = option_likelihoods(PACK.observations["thermometer-mean"], written([(5, 90), (10, 140), (15, 165)]))
    assert early.mean.uncertainty > 60
    assert max(told.values()) - min(told.values()) < 0.2


def test_a_thermostat_that_is_off_and_a_weak_element_read_cold_alike_but_only_one_of_them_rests():
    assert {likeliest("thermometer-mean", text) for text in (TOO_COOL, WEAK)} == {"cold-over-30"}
    assert likeliest("thermometer-duty", TOO_COOL) == "rests-between"
    assert likeliest("thermometer-duty", WEAK) == "never-rests"


def test_a_weak_element_never_comes_to_the_set_point():
    assert thermometer.read_thermometer(WEAK).reached_minute is None


def test_the_time_to_temperature_is_read_between_two_readings():
    assert thermometer.read_thermometer(
        written([(0, 20), (10, 160), (12, 200), (40, 180)])
    ).reached_minute == pytest.approx(11.0)


def test_overshoot_is_what_the_highest_reading_is_above_the_set_point():
    assert thermometer.read_thermometer(written([(10, 160), (14, 205), (40, 180)])).overshoot == pytest.approx(25.0)


@pytest.mark.parametrize(("last", "flags"), [(236, ("overheats",)), (226, ("overheats",)), (222, ())])
def test_a_climb_past_the_set_point_is_flagged_one_uncertainty_early(last, flags):
    text = written([(5, 100), (10, 180), (15, last)])
    assert flags_raised_by(PACK.observations["thermometer-swing"], text) == flags


def test_a_peak_that_has_fallen_again_is_no_climb():
    text = written([(10, 180), (14, 235), (30, 185), (35, 180)])
    assert flags_raised_by(PACK.observations["thermometer-swing"], text) == ()


def test_a_first_reading_far_too_hot_is_flagged_however_few_there_are():
    assert flags_raised_by(PACK.observations["thermometer-swing"], written([(3, 250)])) == ("overheats",)


def test_a_check_in_boiling_water_corrects_and_makes_surer():
    plain, checked = thermometer.read_thermometer(SOUND), thermometer.read_thermometer(SOUND + "~b94")
    assert checked.offset.value == pytest.approx(plain.offset.value + 6.0)
    assert checked.offset.uncertainty < plain.offset.uncertainty


def test_turns_and_whole_cycles_are_found_for_a_picture():
    points = cycling(180, 30, range(30, 78, 1))
    assert [round(t) for t, _ in turning_points(points)] == [33, 39, 45, 51, 57, 63, 69, 75]
    assert [round(end - start) for start, end in whole_cycles(points)] == [12] * 3


def test_a_shaking_needle_is_no_turn():
    assert turning_points([(t, 180 + t % 2) for t in range(20)]) == ()
