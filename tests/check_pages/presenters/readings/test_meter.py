"""The meter test: the taps as people type them, and what comes of it."""

import pytest

from tests.check_pages.fragments import caption_of, lines_about
from triage.check_pages.presenters.readings.degrees import CELSIUS
from triage.check_pages.presenters.readings.fields import METER
from triage.check_pages.presenters.readings.form_input import FormInput
from triage.check_pages.presenters.readings.meter import meter_drawing, parse_taps, write_meter
from triage.engine.readings.meter import METER_FIELDS


@pytest.fixture
def drawing(check_request):
    return lambda text: meter_drawing(check_request("/"), text)


@pytest.mark.parametrize("text", ["0 1.8 3,6 5.4 7.2", "0; 1.8; 3,6; 5.4; 7.2", "0_1.8_3,6_5.4_7.2"])
def test_taps_are_read_however_they_are_set_apart(check_request, text):
    found = FormInput({"read-taps": text, "read-impulses": "1000"}, CELSIUS)
    found.parse(METER, METER_FIELDS)
    parse_taps(found)
    assert write_meter(check_request("/"), found) == "k1000~x0_1.8_3,6_5.4_7.2"


def test_a_pause_of_the_thermostat_is_recognised_and_left_out(drawing):
    """Flashes 1.8 s apart are 2 kW at 1000 imp/kWh; a minute without any is no weak heater."""
    moments = [1.8 * n for n in range(12)] + [80.0 + 1.8 * n for n in range(12)]
    found = drawing("k1000~b0~x" + "_".join(f"{moment:.1f}" for moment in moments))
    assert "The oven drew 2.00 kW" in caption_of(found)
    assert any("seems to have paused" in line for line in lines_about(found))


def test_without_a_plate_it_says_what_is_taken(drawing):
    assert "a usual heater of 2 kW is taken" in lines_about(drawing("f35~s60~k1000"))[1]
    assert "a tenth less than its plate" in lines_about(drawing("f35~s60~k1000~p2000"))[1]


def test_a_count_over_minutes_may_be_a_floor_and_says_so(drawing):
    assert any("Tapping along shows it" in line for line in lines_about(drawing("f300~s600~k1000")))
    assert not any("Tapping along" in line for line in lines_about(drawing("i300~j2300")))
    assert " or more. To be expected: " in caption_of(drawing("f600~s1800~k1000"))


def test_the_first_line_says_in_words_what_the_power_comes_to(drawing):
    assert lines_about(drawing("i0~j1100~p2200"))[0].startswith("This comes to half of what its plate")
