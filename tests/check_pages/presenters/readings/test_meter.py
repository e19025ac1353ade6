"""The meter test: its ways, the taps as people type them, and what comes of it."""

import pytest

from triage.check_pages.presenters.readings.meter import meter_groups, meter_told, read_meter, write_meter
from triage.check_pages.presenters.readings.typed import Typed


def typed(check_request, **raw):
    found = Typed({f"read-{name.replace('_', '-')}": text for name, text in raw.items()})
    seen = check_request("/?region=gb-eng")
    read_meter(seen, found)
    return seen, found


def test_only_the_way_in_use_is_unfolded_and_at_first_the_light(check_request):
    def opened(**raw):
        return [group.open for group in meter_groups(*typed(check_request, **raw))[:3]]

    assert opened() == [True, False, False]
    assert opened(idle="300") == [False, False, True]
    assert opened(before="1", flashes="2") == [True, True, False]


@pytest.mark.parametrize("text", ["0 1.8 3,6 5.4 7.2", "0; 1.8; 3,6; 5.4; 7.2", "0_1.8_3,6_5.4_7.2"])
def test_taps_are_read_however_they_are_set_apart(check_request, text):
    seen, found = typed(check_request, taps=text, impulses="1000")
    assert write_meter(seen, found) == "k1000~x0_1.8_3,6_5.4_7.2"


def test_a_pause_of_the_thermostat_is_recognised_and_left_out(check_request):
    """Flashes 1.8 s apart are 2 kW at 1000 imp/kWh; a minute without any is no weak heater."""
    moments = [1.8 * n for n in range(12)] + [80.0 + 1.8 * n for n in range(12)]
    text = "k1000~b0~x" + "_".join(f"{moment:.1f}" for moment in moments)
    told = meter_told(check_request("/"), text)
    assert "The oven drew 2.00 kW" in told.drawing.words
    assert any("seems to have paused" in line for line in told.lines)


def test_without_a_plate_it_says_what_is_taken(check_request):
    assert "a usual heater of 2 kW is taken" in meter_told(check_request("/"), "f35~s60~k1000").lines[1]
    assert "a tenth less than its plate" in meter_told(check_request("/"), "f35~s60~k1000~p2000").lines[1]


def test_a_count_over_minutes_may_be_a_floor_and_says_so(check_request):
    assert any("Tapping along shows it" in line for line in meter_told(check_request("/"), "f300~s600~k1000").lines)
    assert not any("Tapping along" in line for line in meter_told(check_request("/"), "i300~j2300").lines)


def test_the_first_line_says_in_words_what_the_power_comes_to(check_request):
    assert meter_told(check_request("/"), "i0~j1100~p2200").lines[0].startswith("This comes to half of what its plate")
