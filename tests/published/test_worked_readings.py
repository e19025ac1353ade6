"""Published check values for readings, each with its source, and the traps in them.

No reading takes a resistance, as a householder never measures one: see `test_worked_resistances.py`.
"""

import pytest

from tests.builders import electric_oven
from triage.engine.readings import meter, option_likelihoods, preheat, run_on, thermometer
from triage.engine.readings.measured import triangular_uncertainty
from triage.engine.readings.rating import RATING_FIELDS, plate_band, power_at, read_rating

OBSERVATIONS = electric_oven().observations
STEADY = "~b0"


def watts(text):
    return meter.read_meter(text + STEADY).watts.value


def fahrenheit(degrees):
    return (degrees - 32) / 1.8


# --- the meter's light -------------------------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("impulses", "seconds", "kilowatts"),
    [
        *(
            (1000, s, kw)
            for s, kw in ((1, 3.6), (1.5, 2.4), (2, 1.8), (3, 1.2), (4, 0.9), (5, 0.72), (10, 0.36), (60, 0.06))
        ),
        (800, 1, 4.5),
        (800, 2, 2.25),
        (1600, 0.5, 4.5),
        (3200, 0.25, 4.5),
        (1000, 1.2, 3.0),
        (1000, 3.6, 1.0),
    ],
)
def test_flashes_to_kilowatts(impulses, seconds, kilowatts):
    """P = 3600 n/(t k): two universities' pages on meter lights and two calculators; seen."""
    assert watts(f"f11~s{10 * seconds:g}~k{impulses}") == pytest.approx(1000 * kilowatts, abs=0.5)


def test_eleven_flashes_are_ten_intervals():
    """The fencepost: 11 flashes in 15 s at 1000 impulses are 2.40 kW, not 2.64 kW; derived."""
    assert watts("f11~s15~k1000") == pytest.approx(2400.0)


def test_twenty_flashes_or_more_are_needed_for_five_per_cent():
    """One flash either way is 1/n of the figure; arithmetic. The standard uncertainty is that over root three."""
    power = meter.read_meter("f21~s30~k1000").watts.value + 150.0
    counting = meter._from_count({"flashes": "21", "seconds": "30", "impulses": "1000"}).uncertainty
    assert 3**0.5 * counting / power == pytest.approx(0.05)


def test_half_a_kilowatt_hour_of_flashes():
    """800 flashes at 1600 per kWh are 0.5 kWh; seen. Over an hour that is 500 W."""
    assert watts("f801~s3600~k1600") == pytest.approx(500.0)


@pytest.mark.parametrize(("after", "limit"), [("100.40", 60.0), ("100.4", 600.0), ("100", 6000.0)])
def test_a_registers_last_digit_over_ten_minutes(after, limit):
    """0.01, 0.1 and 1 kWh over ten minutes are 0.06, 0.6 and 6 kW either way; derived."""
    before = f"{100:.{len(after.partition('.')[2])}f}"
    power = meter.read_meter(f"a{before}~z{after}~m10~b0")
    assert (power.watts.uncertainty**2 - 20.0**2) ** 0.5 == pytest.approx(triangular_uncertainty(limit))


def test_a_register_of_whole_units_cannot_test_an_element_in_ten_minutes():
    told = option_likelihoods(OBSERVATIONS["meter-power"], "a100~z101~m10~p2200~b0")
    sharp = option_likelihoods(OBSERVATIONS["meter-power"], "a100.00~z100.36~m10~p2200~b0")
    assert max(told.values()) < 5 * min(told.values())
    assert sharp["as-rated"] > 5 * sharp["near-zero"]


# --- the supply and the plate --------------------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("volts", "expected"),
    [(207, 1782.0), (216.2, 1943.9), (225.6, 2116.6), (240, 2395.5), (253, 2662.0), (254.4, 2691.5)],
)
def test_an_element_of_2200_watts_at_other_voltages(volts, expected):
    """P goes with the square of the voltage; the limits are those of IEC 60038, EN 50160 and the supply before 1995."""
    assert power_at(2200, 230, volts) == pytest.approx(expected, abs=0.06)


def test_a_240_volt_element_on_208_volts():
    assert power_at(1.0, 240, 208) == pytest.approx(0.7511, abs=1e-4)


@pytest.mark.parametrize(("volts", "shown"), [(207, 1782), (253, 2662)])
def test_a_sound_element_is_not_called_weak_or_strong_for_its_supply(volts, shown):
    """The trap: 2200 W may honestly read 1.8 to 2.7 kW. With the voltage typed it is as rated and nothing else."""
    unknown = option_likelihoods(OBSERVATIONS["meter-power"], f"i0~j{shown}~p2200")
    known = option_likelihoods(OBSERVATIONS["meter-power"], f"i0~j{shown}~p2200~r230~v{volts}")
    assert unknown["as-rated"] == max(unknown.values())
    assert known["as-rated"] > 0.95


@pytest.mark.parametrize(
    ("plate", "band"), [(300, (270, 320)), (2000, (1800, 2100)), (2200, (1980, 2310)), (2500, (2250, 2625))]
)
def test_the_input_a_sound_appliance_may_draw(plate, band):
    """IEC/EN 60335-1 clause 10.1, table 1, heating appliances above 200 W: from memory."""
    assert plate_band(plate) == pytest.approx(band)


def test_the_expected_draw_is_converted_to_the_supply_before_anything_is_compared():
    """Rated power holds at rated voltage only (the standard's own note); seen."""
    rating = read_rating(RATING_FIELDS, {"plate": "2200", "rated-volts": "230", "supply-volts": "207"})
    assert rating.expected.value == pytest.approx(power_at(sum(plate_band(2200)) / 2, 230, 207))


# --- temperatures --------------------------------------------------------------------------------------------------
def test_normal_cycling_of_a_350_degree_oven():
    """A domestic oven at 350 F is designed to swing from about 330 to 370 F (a magazine article, quoted; seen): mean
    right, 22.2 K between the extremes, no fault."""
    low, high = fahrenheit(330), fahrenheit(370)
    points = [(30 + 5 * i, high if i % 2 else low) for i in range(8)]
    text = f"c{fahrenheit(350):.3f}~r" + "_".join(f"{t}-{y:.3f}" for t, y in points)
    found = thermometer.read_thermometer(text)
    assert found.offset.value == pytest.approx(0.0, abs=0.05)
    assert max(y for _, y in found.points) - min(y for _, y in found.points) == pytest.approx(22.2, abs=0.05)
    for observation, option in (("thermometer-mean", "within-15"), ("thermometer-swing", "swing-up-to-30")):
        told = option_likelihoods(OBSERVATIONS[observation], text)
        assert told[option] == max(told.values())


@pytest.mark.parametrize(("mean", "offset"), [(222, 42), (150, -30)])
def test_offsets_of_a_consumer_test(mean, offset):
    """One oven 42 C over, one 30 C under at 180 C; a consumer organisation's test, seen."""
    text = "c180~r" + "_".join(f"{30 + 5 * i}-{mean + (4 if i % 2 else -4)}" for i in range(8))
    assert thermometer.read_thermometer(text).offset.value == pytest.approx(offset)


def test_an_offset_within_a_makers_tolerance_is_not_taken_for_certain():
    """Up to 20 C either way was accepted as no fault by one maker's service (one householder's account)."""
    text = "c180~r" + "_".join(f"{30 + 5 * i}-{180 + 18 + (4 if i % 2 else -4)}" for i in range(8))
    told = option_likelihoods(OBSERVATIONS["thermometer-mean"], text)
    assert 0.1 < told["within-15"] < 0.6


# --- heating up and cooling down -------------------------------------------------------------------------------------
def test_a_measured_preheat_is_a_usual_one():
    """12 minutes at 1.6 kW to 200 C, 0.32 kWh: one oven, measured, on an energy-saving page; seen."""
    found = preheat.read_preheat("m12~c200~p1600~l65")
    assert 1.6 * found.minutes / 60 == pytest.approx(0.32)
    assert found.needed.value == pytest.approx(12.0, rel=0.15)


@pytest.mark.parametrize("watts", [1600, 1800, 2000, 2200, 2500, 3000])
def test_a_sound_preheat_takes_five_to_fifteen_minutes_at_usual_powers(watts):
    """5 to 15 minutes and 0.2 to 0.4 kWh are plausible by the same page."""
    minutes = preheat.minutes_needed(180, watts, 65)
    assert 5 <= minutes <= 15
    assert 0.2 <= watts / 1000 * minutes / 60 <= 0.4


def test_newtons_cooling_from_180_to_60_degrees():
    """tau 40 min, room 25 C: 59.52 min; derived (an example, not a limit on any fan). Such a fan is still within
    what is usual."""
    told = option_likelihoods(OBSERVATIONS["fan-run-on"], "h59~s60")
    assert run_on.read_run_on("h59~s60").minutes.value == pytest.approx(59.52, abs=0.1)
    assert told["thirty-to-sixty"] == max(told.values())
