"""The preheat test: minutes taken beside minutes needed."""

from math import log

import pytest
from hypothesis import given, strategies
from scipy.integrate import solve_ivp
from uncertainties import ufloat, umath

from tests.builders import electric_oven
from tests.engine.trails import few
from triage.engine.readings import option_likelihoods, preheat
from triage.engine.readings.preheat import CAPACITY_JOULES_PER_KELVIN, LOSS_WATTS_PER_KELVIN, minutes_needed

TIME = electric_oven().observations["preheat-time"]


def likeliest(text):
    told = option_likelihoods(TIME, text)
    return max(told, key=told.get)


@few
@given(watts=strategies.floats(1000, 3500), litres=strategies.floats(40, 90), rise=strategies.floats(100, 200))
def test_the_minutes_are_those_of_the_equation_solved_by_scipy(watts, litres, rise):
    walls = (litres / 65.0) ** (2 / 3)

    def there(_time, above):
        return above[0] - rise

    there.terminal = True
    if LOSS_WATTS_PER_KELVIN * walls * rise / watts > 0.95:
        return
    warming = solve_ivp(
        lambda _t, above: (watts - LOSS_WATTS_PER_KELVIN * walls * above) / (CAPACITY_JOULES_PER_KELVIN * walls),
        (0, 40_000),
        [0.0],
        events=there,
        rtol=1e-9,
        atol=1e-9,
    )
    assert minutes_needed(rise, watts, litres) == pytest.approx(warming.t_events[0][0] / 60.0, rel=1e-5)


def test_the_ratio_is_propagated_as_by_the_uncertainties_package():
    found = preheat.read_preheat("m20~c200~p2200~l65")
    power, litres = (
        ufloat(2145.0, preheat.read_rating(preheat.PREHEAT_FIELDS, {"plate": "2200"}).expected.uncertainty),
        65.0,
    )
    capacity, loss, size = ufloat(5000, 1000), ufloat(4.4, 0.88), ufloat(litres, 1.0)
    walls = (size / 65.0) ** (2 / 3)
    needed = -capacity / loss * umath.log(1 - loss * walls * 180.0 / power) / 60.0
    ratio = ufloat(20.0, 1.0) / needed
    assert found.needed.value == pytest.approx(needed.nominal_value)
    assert (found.ratio.value, found.ratio.uncertainty) == pytest.approx((ratio.nominal_value, ratio.std_dev), rel=1e-3)


@pytest.mark.parametrize(
    ("text", "option"),
    [
        ("m10~c200~p2200~l65", "usual-time"),
        ("m28~c200~p2200~l65", "twice-or-more"),
        ("m70~c200~p2200~l65~w1", "never-gets-there"),
        ("m4~c200~p2200~l65", "quicker"),
    ],
)
def test_what_it_took_is_likeliest_under_its_answer(text, option):
    assert likeliest(text) == option


def test_half_the_power_takes_more_than_twice_the_time():
    assert minutes_needed(180, 1100, 65) > 2 * minutes_needed(180, 2200, 65)


def test_a_power_that_cannot_reach_it_takes_very_long_and_no_error():
    assert minutes_needed(180, 300, 65) == pytest.approx(
        -CAPACITY_JOULES_PER_KELVIN / LOSS_WATTS_PER_KELVIN * log(0.03) / 60.0
    )
