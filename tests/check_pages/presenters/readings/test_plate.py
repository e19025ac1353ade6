"""The rating plate, and the voltage of the place where only a display's is known."""

import pytest

from triage.check_pages.presenters.readings.plate import plate_group, usual_volts, with_usual_volts
from triage.check_pages.presenters.readings.typed import Typed


@pytest.mark.parametrize(("region", "volts"), [("gb-eng", 230), ("us", 240), ("de", 230), ("iec", 240), ("ca", 240)])
def test_an_oven_is_rated_for_the_highest_single_voltage_there(check_request, region, volts):
    assert usual_volts(check_request(f"/?region={region}")) == volts


def test_the_plates_own_voltage_comes_first(check_request):
    seen = check_request("/?region=us")
    assert with_usual_volts(seen, {"supply-volts": "236"}) == {"supply-volts": "236", "rated-volts": "240"}
    assert with_usual_volts(seen, {"supply-volts": "236", "rated-volts": "208"})["rated-volts"] == "208"
    assert with_usual_volts(seen, {"plate": "2000"}) == {"plate": "2000"}


def test_it_is_folded_until_something_stands_in_it(check_request):
    seen = check_request("/?region=gb-eng")
    assert not plate_group(seen, Typed({})).open
    assert plate_group(seen, Typed({"read-plate": "2000"})).open


def test_nobody_is_asked_to_measure_a_voltage(check_request):
    hints = {field.name: field.hint for field in plate_group(check_request("/"), Typed({})).fields}
    assert "Never measure it" in hints["read-supply-volts"]
