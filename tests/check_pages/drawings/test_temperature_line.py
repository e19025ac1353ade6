"""Temperature against time, with its band and its cycles."""

import pytest

from tests.check_pages.drawings.looking import at, inside, only
from triage.check_pages.drawings.temperature_line import temperature_line
from triage.engine.readings.thermometer import read_thermometer, whole_cycles

CYCLES = "c180~r30-168_35-180_40-190_45-178_50-166_55-179_60-191_65-176_70-167"


def degrees(celsius):
    return f"{celsius:.0f}°"


def test_every_reading_is_a_point_and_each_whole_cycle_has_its_bracket():
    found = read_thermometer(CYCLES)
    drawing = temperature_line(found, degrees, {})
    assert len(only(drawing, "reading")) == len(found.points) == 9
    assert len(only(drawing, "cycle")) == 3 * len(whole_cycles(found.points)) > 0
    assert inside(drawing)


def test_hotter_is_higher_and_the_band_lies_about_the_set_point():
    drawing = temperature_line(read_thermometer(CYCLES), degrees, {})
    points = only(drawing, "reading")
    assert at(points[2], "cy") < at(points[0], "cy")
    (band,), (setting,) = only(drawing, "band"), only(drawing, "set")
    assert at(band, "y") + at(band, "height") / 2.0 == pytest.approx(at(setting, "y1"), abs=0.2)


def test_one_reading_alone_can_be_drawn():
    assert inside(temperature_line(read_thermometer("c180~r30-174"), degrees, {}))
