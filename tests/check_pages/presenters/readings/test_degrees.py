"""Temperatures in the unit of the place, by the definition of the Fahrenheit scale."""

from decimal import Decimal

import pytest

from triage.check_pages.presenters.readings.degrees import CELSIUS, FAHRENHEIT, degrees_of


@pytest.mark.parametrize(("fahrenheit", "celsius"), [("32", "0"), ("212", "100"), ("350", "176.7"), ("-40", "-40")])
def test_fahrenheit_is_kept_as_celsius(fahrenheit, celsius):
    assert FAHRENHEIT.to_celsius(Decimal(fahrenheit)) == Decimal(celsius)
    assert FAHRENHEIT.from_celsius(float(celsius)) == pytest.approx(float(fahrenheit), abs=0.1)


def test_a_difference_has_no_zero_point():
    assert FAHRENHEIT.difference_text(15.0) == "27 °F"
    assert FAHRENHEIT.to_kelvin(Decimal(18)) == Decimal(10)


def test_celsius_is_left_alone():
    assert CELSIUS.temperature_text(180.0) == "180 °C"
    assert CELSIUS.to_celsius(Decimal("180.5")) == Decimal("180.5")


def test_the_place_decides(check_request):
    assert degrees_of(check_request("/?region=us")) is FAHRENHEIT
    assert degrees_of(check_request("/?region=de")) is CELSIUS
