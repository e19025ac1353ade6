"""Where a warming oven was heading, beside the same oven solved by SciPy."""

import pytest
from scipy.integrate import solve_ivp

from triage.engine.readings import thermometer
from triage.engine.readings.preheat import CAPACITY_JOULES_PER_KELVIN, LOSS_WATTS_PER_KELVIN
from triage.engine.readings.warming import warming_trend

ROOM = 20.0
HALF = 13.1  # minutes: CAPACITY / LOSS * ln 2 / 60


def readings(watts, times, loss=LOSS_WATTS_PER_KELVIN, step=2.0):
    """What a thermometer reads of one heat capacity under constant power, to `step`."""
    found = solve_ivp(
        lambda _, heat: (watts - loss * (heat - ROOM)) / CAPACITY_JOULES_PER_KELVIN,
        (0.0, 60.0 * times[-1]),
        [ROOM],
        t_eval=[60.0 * time for time in times],
        rtol=1e-8,
    )
    return [(time, step * round(heat / step)) for time, heat in zip(times, found.y[0], strict=True)]


def heading_of(points, set_to=180, more=""):
    return warming_trend(
        thermometer.read_thermometer(f"c{set_to}~r" + "_".join(f"{t}-{y:g}" for t, y in points) + more)
    )


EVERY_FIVE = list(range(5, 65, 5))


def test_a_quarter_of_its_power_heads_short_of_the_set_heat():
    found = heading_of(readings(500.0, EVERY_FIVE))
    assert found.falls_short
    assert found.end_temperature.value == pytest.approx(
        ROOM + 500.0 / LOSS_WATTS_PER_KELVIN, abs=2.0 * found.end_temperature.uncertainty
    )
    assert found.half_time_minutes == pytest.approx(HALF, rel=0.1)


def test_half_of_its_power_heads_past_it_and_a_leak_makes_it_lose_its_warmth_faster():
    sound = heading_of(readings(1000.0, EVERY_FIVE))
    leaking = heading_of(readings(1900.0, EVERY_FIVE, loss=2.0 * LOSS_WATTS_PER_KELVIN), more="~a2")
    assert not sound.falls_short
    assert sound.end_temperature.value == pytest.approx(
        ROOM + 1000.0 / LOSS_WATTS_PER_KELVIN, abs=2.0 * sound.end_temperature.uncertainty
    )
    assert leaking is None or leaking.half_time_minutes < 0.6 * sound.half_time_minutes


def test_a_thermostat_that_cuts_out_early_is_never_called_a_weak_heater():
    points = readings(1000.0, [2, 4, 6, 8, 10, 12, 14, 16])
    falling = [(18 + 2 * n, points[-1][1] - 4.0 * n) for n in range(1, 12)]
    found = heading_of(points + falling, more="~a2")
    assert found is None or not found.falls_short


def test_a_control_that_holds_a_heat_without_resting_is_not_called_a_weak_heater():
    points = [(time, min(heat, 150.0)) for time, heat in readings(1000.0, EVERY_FIVE)]
    assert heading_of(points) is None


@pytest.mark.parametrize(
    "points",
    [
        readings(500.0, [5, 10, 15]),
        readings(500.0, [5, 10, 15, 20, 25]),
        readings(700.0, EVERY_FIVE),
        [(time, 150.0) for time in EVERY_FIVE],
        [(time, 250.0 - time) for time in EVERY_FIVE],
        [(time, 20.0 + 2.5 * time) for time in EVERY_FIVE],
        [(5, 40), (10, 110), (15, 60), (20, 120), (25, 70), (40, 130)],
    ],
    ids=["too few", "too short a time", "either side", "flat", "cooling", "straight", "jumping"],
)
def test_nothing_is_told_where_it_is_not_sure(points):
    assert heading_of(points) is None
