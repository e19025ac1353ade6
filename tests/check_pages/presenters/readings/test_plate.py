"""The voltage of the place where only a display's is known."""

import pytest

from triage.check_pages.presenters.readings.fields import PLATE
from triage.check_pages.presenters.readings.plate import usual_volts, with_usual_volts


@pytest.mark.parametrize(("region", "volts"), [("gb-eng", 230), ("us", 240), ("de", 230), ("iec", 240), ("ca", 240)])
def test_an_oven_is_rated_for_the_highest_single_voltage_there(check_request, region, volts):
    assert usual_volts(check_request(f"/?region={region}")) == volts


def test_the_plates_own_voltage_comes_first(check_request):
    seen = check_request("/?region=us")
    assert with_usual_volts(seen, {"supply-volts": "236"}) == {"supply-volts": "236", "rated-volts": "240"}
    assert with_usual_volts(seen, {"supply-volts": "236", "rated-volts": "208"})["rated-volts"] == "208"
    assert with_usual_volts(seen, {"plate": "2000"}) == {"plate": "2000"}


def test_nobody_is_asked_to_measure_a_voltage():
    hints = {one.name: str(one.hint) for one in PLATE.fields}
    assert "Never measure it" in hints["supply-volts"]
