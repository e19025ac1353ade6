"""What the rating plate lets one expect."""

import pytest

from triage.engine.readings.measured import Measured, uniform_uncertainty
from triage.engine.readings.rating import RATING_FIELDS, plate_band, read_rating, share_of


def rating(**typed):
    return read_rating(RATING_FIELDS, {name.replace("_", "-"): value for name, value in typed.items()})


def test_a_small_appliance_may_be_a_tenth_off_either_way():
    assert plate_band(100.0) == pytest.approx((90.0, 110.0))


def test_a_typed_voltage_moves_what_is_expected_and_makes_it_surer():
    plain, low = rating(plate="2200"), rating(plate="2200", rated_volts="230", supply_volts="207")
    assert low.expected.value == pytest.approx(0.81 * plain.expected.value)
    assert low.expected.uncertainty / low.expected.value < 0.5 * plain.expected.uncertainty / plain.expected.value


def test_an_unknown_voltage_is_taken_as_a_tenth_either_way():
    relative = rating(plate="2200").expected.uncertainty / rating(plate="2200").expected.value
    assert relative == pytest.approx(
        (uniform_uncertainty(0.075 / 0.975) ** 2 + (2 * uniform_uncertainty(0.1)) ** 2) ** 0.5
    )


def test_the_whole_ovens_plate_says_less_of_one_setting_and_no_plate_least_of_all():
    own, whole, none = rating(plate="2200"), rating(whole_plate="2750"), rating()
    spreads = [r.expected.uncertainty / r.expected.value for r in (own, whole, none)]
    assert spreads == sorted(spreads)
    assert [r.known for r in (own, whole, none)] == [True, True, False]


def test_the_share_of_nothing_is_nothing_and_still_unsure():
    share = share_of(rating(plate="2200"), Measured(0.0, 40.0))
    assert (share.value, share.uncertainty > 0.0) == (0.0, True)
