"""The resistances a repairer is told, against published curves and Ohm's law, and the traps in them.

A householder measures no resistance, so no reading takes one: what is checked is the words of the pack.
"""

import re

import pytest
from scipy.optimize import brentq

from triage.knowledge.library import library

FAULTS = library().texts_for("gb-eng").faults
TO_REPAIRERS = {fault: " ".join(told.repairer.split()) for fault, told in FAULTS.items()}
PROBE_OPEN, PROBE_DRIFTED = TO_REPAIRERS["probe-open-short"], TO_REPAIRERS["probe-drifted"]
POWER, OHMS, VOLTS = r"(?P<low>\d\.\d)-(?P<high>\d\.\d) kW", r"(?P<least>\d+)-(?P<most>\d+) ohm", r"(?P<volts>\d{3}) V"
WAYS = (rf"{OHMS} \({POWER} at {VOLTS}\)", rf"{VOLTS} \w+ {POWER} = {OHMS}", rf"{POWER} = {OHMS} at {VOLTS}")


def iec(celsius):
    """IEC 60751 above 0 °C, of 1000 ohm; coefficients from memory."""
    return 1000.0 * (1.0 + 3.9083e-3 * celsius - 5.775e-7 * celsius**2)


def ppm_3750(celsius):
    """The platinum curve of 3750 ppm per kelvin; coefficients as public code has them, seen."""
    return 1000.0 * (1.0 + 3.81e-3 * celsius - 6.02e-7 * celsius**2)


def figures(words, pattern):
    (found,) = re.findall(pattern, words)
    return tuple(float(figure) for figure in ([found] if isinstance(found, str) else found))


@pytest.mark.parametrize(
    ("fahrenheit", "ohms"), [(100, 1143), (200, 1350), (300, 1553), (350, 1654), (400, 1753), (500, 1949)]
)
def test_that_curve_is_the_one_of_the_published_table(fahrenheit, ohms):
    """A repair page's table for the "1080 ohm" sensor, which cuts off decimals; seen. It rises, although another page
    calls the sensor a falling one."""
    assert int(ppm_3750((fahrenheit - 32) / 1.8)) == pytest.approx(ohms, abs=1.0)


def test_a_probe_of_1080_ohm_is_told_by_its_own_curve_and_not_as_an_iec_one():
    """1080 ohm at 70 °F (21 °C): stated on two pages, seen."""
    iec_ohms = figures(PROBE_OPEN, r"At 20 °C, IEC Pt1000 (\d+) ohm")
    ohms, degrees = figures(PROBE_OPEN, r"3750 ppm type about (\d+) ohm at (\d+) °C")
    assert iec_ohms == pytest.approx((iec(20.0),), abs=0.5)
    assert ohms == pytest.approx(ppm_3750((70 - 32) / 1.8), abs=0.5)
    assert degrees == pytest.approx((70 - 32) / 1.8, abs=0.5)


def test_both_curves_rise_between_the_two_temperatures_that_are_told():
    at_100, at_200 = figures(PROBE_DRIFTED, r"IEC Pt1000 (\d+) ohm at 100 °C and (\d+) at 200 °C")
    other_100, other_200 = figures(PROBE_DRIFTED, r"3750 ppm type (\d+) and (\d+)")
    assert (at_100, at_200) == pytest.approx((iec(100.0), iec(200.0)), abs=0.5)
    assert (other_100, other_200) == pytest.approx((ppm_3750(100.0), ppm_3750(200.0)), abs=0.5)
    assert at_100 < at_200
    assert other_100 < other_200


def test_the_wrong_curve_misleads_by_as_much_as_is_told():
    """1654 ohm are 176.58 °C by its own curve and 171.69 °C by the IEC one; derived from the two."""
    least, most = figures(PROBE_DRIFTED, r"the wrong curve misleads by (\d)-(\d) K")
    right, wrong = (brentq(lambda t, curve=curve: curve(t) - 1654.0, 0.0, 300.0) for curve in (ppm_3750, iec))
    assert (right, wrong) == pytest.approx((176.58, 171.69), abs=0.02)
    assert least - 0.5 <= right - wrong <= most + 0.5


@pytest.mark.parametrize(
    ("watts", "volts", "ohms"),
    [
        (2000, 230, 26.45),
        (2200, 230, 24.05),
        (2500, 230, 21.16),
        (2000, 240, 28.80),
        (2200, 240, 26.18),
        (2500, 240, 23.04),
    ],
)
def test_no_single_resistance_is_right_for_every_element(watts, volts, ohms):
    """R = V²/P, the textbook identity: 26.5, 24.0 and 21.2 ohm at 230 V, 28.8, 26.2 and 23.0 at 240 V; each within a
    range that the pack tells for that voltage."""
    assert volts**2 / watts == pytest.approx(ohms, abs=0.005)
    assert any(low <= watts <= high and least <= ohms <= most for v, low, high, least, most in told() if v == volts)


def test_every_range_of_ohms_is_that_of_its_range_of_kilowatts_at_its_voltage():
    """Of ring, base, roof loop and grill; the ohms are whole numbers, so one ohm either way."""
    assert len(told()) == 6
    for volts, low, high, least, most in told():
        assert least == pytest.approx(volts**2 / high, abs=1.0)
        assert most == pytest.approx(volts**2 / low, abs=1.0)


def test_a_leakage_that_trips_is_told_in_ohms_by_the_same_law():
    """30 mA at 230 V are 7.7 kohm (a breaker maker's answer page, seen)."""
    told_kohm = figures(TO_REPAIRERS["fan-element-earth-leak"], r"30 mA at 230 V is (\d\.\d) kohm")
    assert told_kohm == pytest.approx((230 / 30,), abs=0.05)


def told():
    """Volts, least and most watts, least and most ohms of each statement to repairers."""
    found = [match for words in TO_REPAIRERS.values() for way in WAYS for match in re.finditer(way, words)]
    return [
        (int(m["volts"]), 1000 * float(m["low"]), 1000 * float(m["high"]), int(m["least"]), int(m["most"]))
        for m in found
    ]


def after_diversity(amperes):
    """What a cooking appliance is counted as: 10 A, and 30 % of the rest; Whitfield, Electrician's Guide, table 6.2,
    seen."""
    return 10.0 + 0.3 * (amperes - 10.0)


def test_the_published_example_of_diversity_cuts_a_decimal_off():
    """16 kW at 240 V: a published page takes 66 A and comes to 26.8 A; uncut it is 66.67 A and 27.0 A. Seen."""
    assert after_diversity(66.0) == pytest.approx(26.8)
    assert after_diversity(16_000 / 240) == pytest.approx(27.0)


def test_an_oven_on_the_wrong_plug_is_told_by_its_full_power():
    """The stricter reading: one oven on a plug or a circuit of its own is given no diversity, which would let through
    a load of half as much again. P = V * I at 230 V."""
    limits = figures(
        TO_REPAIRERS["wrong-supply-overload"], r"Above (\d) kW on a (\d+) A plug, or (\d\.\d) kW on (\d+) A"
    )
    for kilowatts, amperes in (limits[:2], limits[2:]):
        assert kilowatts == pytest.approx(230 * amperes / 1000, abs=0.1)
        assert after_diversity(1.5 * amperes) < amperes
