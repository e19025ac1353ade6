"""The class of a meter reading in words: against published values, and without a cliff anywhere."""

import pytest
from hypothesis import given, strategies

from tests.check_pages.fragments import words_of
from tests.engine.trails import some
from triage.check_pages.presenters.readings.power_class import CLASSES, power_class_facts, power_classes
from triage.engine.readings.meter import read_meter
from triage.engine.readings.rating import power_at


def classes(text):
    return power_classes(read_meter(text))


def line(text):
    power = read_meter(text)
    return words_of("power_class", facts={**power_class_facts(power), "plate_known": power.rating.known})


def shown(watts, plate=2200):
    """A display's figures with a supply that is known."""
    return f"i0~j{watts:.0f}~p{plate}~r230~v230"


@pytest.mark.parametrize(
    ("watts", "name"),
    [(0, "nothing"), (60, "fan-and-lamp"), (500, "quarter"), (1100, "half"), (1540, "three-quarters"), (2150, "all")],
)
def test_the_middle_of_each_class_is_named_alone(watts, name):
    assert classes(shown(watts)) == (name,)


@pytest.mark.parametrize(
    ("seconds", "name"),
    [(60, "fan-and-lamp"), (10, "quarter"), (5, "quarter"), (4, "half"), (3, "half"), (1.5, "all"), (1, "more")],
)
def test_seconds_between_flashes_as_a_published_table_gives_them(seconds, name):
    """1000 imp/kWh: 60 s 60 W, 10 s 360 W, 5 s 720 W, 4 s 900 W, 3 s 1.2 kW, 1.5 s 2.4 kW, 1 s 3.6 kW
    (a university's page on meter lights, seen); here of a 2200 W plate."""
    taps = "_".join(f"{seconds * n:g}" for n in range(21))
    assert classes(f"x{taps}~k1000~b0~p2200~r230~v230") == (name,)


@pytest.mark.parametrize(("rated", "volts", "name"), [(240, 120, "quarter"), (240, 208, "three-quarters")])
def test_a_lower_voltage_shows_by_the_square_of_it(rated, volts, name):
    """P = V²/R, a textbook identity: half the voltage is a quarter of the power; 208 of 240 V is 75.1 %."""
    watts = power_at(2400.0, rated, volts)
    text = f"i0~j{watts:.0f}~p2400~r{rated}~v{rated}"
    assert classes(text) == (name,)
    assert ("half its voltage" if name == "quarter" else "voltage were too low") in line(text)


@pytest.mark.parametrize("volts", [207, 253])
def test_a_sound_heater_at_the_limits_of_its_supply_is_whole(volts):
    """2200 W at 230 V are 1782 W at 207 V and 2662 W at 253 V (IEC 60038, EN 50160): with the voltage told, all."""
    assert classes(f"i0~j{power_at(2200.0, 230, volts):.0f}~p2200~r230~v{volts}") == ("all",)


@pytest.mark.parametrize("plate", [300, 2000, 2200, 2500])
def test_a_sound_heater_at_either_end_of_its_tolerance_is_whole(plate):
    """IEC/EN 60335-1 clause 10.1: a tenth less to the greater of a twentieth and 20 W more (from memory)."""
    for watts in (0.9 * plate, plate + max(0.05 * plate, 20.0)):
        assert classes(shown(watts, plate)) == ("all",)


@pytest.mark.parametrize(
    ("left", "whole", "name"),
    [
        (1000, 2000, "half"),  # one of two alike
        (1000, 2200, "half"),  # top 1.0 kW without bottom 1.2 kW
        (1200, 2200, "half"),  # and the other way round
        (1600, 2300, "three-quarters"),  # the grill's inner loop of 0.7 kW out
        (700, 2300, "quarter"),  # nothing but that loop
        (2300, 2300, "all"),
    ],
)
def test_several_heaters_tell_how_many_of_them_work(left, whole, name):
    """Powers in common use (common practice, no source); the share is arithmetic."""
    assert classes(shown(left, whole)) == (name,)


def test_near_an_edge_both_neighbours_are_named_and_no_meaning_is_made_of_them():
    text = shown(0.62 * 2145)
    assert classes(text) == ("half", "three-quarters")
    assert line(text) == (
        "This comes to between half and three quarters of what its plate lets one expect: from 55 to 69 %."
    )


BESIDE = strategies.sampled_from(["", "~b0", "~b300", "~p2200", "~p2200~b100", "~t3000~b50", "~p2200~r230~v230~b0"])
WAYS = strategies.sampled_from(["i200~j{0:.0f}", "f{1:.0f}~s60~k1000", "f{2:.0f}~s1200~k1000", "a10~z{3:.2f}~m10"])


def written(way, watts):
    return way.format(watts + 200.0, 1 + watts / 60.0, 1 + watts / 3.0, 10 + watts / 6000.0)


@some
@given(way=WAYS, rest=BESIDE, watts=strategies.floats(0, 6000))
def test_a_little_more_never_jumps_a_class(way, rest, watts):
    """Ends move by one class at most where the reading moves by 5 W or one flash, and never downwards."""
    before, after = (classes(written(way, w) + rest) for w in (watts, watts + 5.0))
    for end in (0, -1):
        assert 0 <= CLASSES.index(after[end]) - CLASSES.index(before[end]) <= 1


@some
@given(way=WAYS, rest=BESIDE, watts=strategies.floats(0, 6000))
def test_what_is_named_is_a_run_of_classes_without_a_gap(way, rest, watts):
    found = classes(written(way, watts) + rest)
    start = CLASSES.index(found[0])
    assert found == CLASSES[start : start + len(found)]


def test_the_time_a_count_took_changes_its_words_and_not_its_class():
    """Ten seconds across the time from which an average is told as one."""
    short, long = (f"f{1 + round(s / 3)}~s{s}~k1000~b0~p2200~r230~v230" for s in (895, 905))
    assert classes(short) == classes(long) == ("half",)
    assert line(short).startswith("This comes to half")
    assert "As if" in line(short)
    assert line(long).startswith("On average this comes to half")
    assert "As if" not in line(long)


def test_flashes_tapped_along_with_a_thermostat_that_rests_are_told_as_the_heater_draws():
    """Flashes 1.6 s apart are 2.25 kW; a rest of two minutes brings the average below half of it."""
    moments = [1.6 * n for n in range(25)] + [160.0 + 1.6 * n for n in range(25)]
    text = "x" + "_".join(f"{moment:.1f}" for moment in moments) + "~k1000~b0~p2200"
    assert 49 * 3600 / moments[-1] < 0.45 * 2200
    assert classes(text) == ("all",)


def test_next_to_nothing_on_a_long_average_leaves_room_for_rests():
    assert line("f15~s1800~k1000~b0~p2200") == (
        "Next to nothing on average: no heater drew power for most of this time."
    )


def test_nothing_and_fan_and_lamp_are_told_apart_only_where_the_figures_can():
    assert line(shown(0)).startswith("Nothing at all")
    assert line(shown(60)).startswith("Fan and lamp only")
    assert line("f1~s60~k1000~p2200") == (
        "No heater seems to draw power. Fan and lamp draw only some tens of watts, and this may be out by 212 W."
        " It cannot tell them from nothing at all."
    )


def test_a_register_of_whole_units_is_too_rough_over_ten_minutes():
    """1 kWh over ten minutes is 6 kW either way, 0.1 kWh is 0.6 kW (arithmetic)."""
    assert line("a100~z101~m10~p2200~b0").endswith("The figures are too rough to tell more.")
    assert "too rough" not in line("a100.0~z100.2~m10~p2200~b0")


def test_without_a_plate_a_usual_heater_is_the_whole():
    assert "of what a usual heater draws" in line("i0~j500")
    assert "of what its plate lets one expect" in line("i0~j500~p2000")
