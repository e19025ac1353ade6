"""The preheat test: minutes, and what the oven's power and size need."""

from tests.check_pages.fragments import caption_of
from triage.check_pages.presenters.readings.degrees import degrees_of
from triage.check_pages.presenters.readings.fields import PREHEAT
from triage.check_pages.presenters.readings.form_input import FormInput
from triage.check_pages.presenters.readings.preheat import preheat_drawing, write_preheat
from triage.engine.readings.preheat import PREHEAT_FIELDS


def written(check_request, region, **raw):
    seen = check_request(f"/?region={region}")
    found = FormInput({f"read-{name}": text for name, text in raw.items()}, degrees_of(seen))
    found.parse(PREHEAT, PREHEAT_FIELDS)
    return write_preheat(seen, found)


def test_it_is_written_in_celsius_wherever_it_is_typed(check_request):
    """400 °F is 204.4 °C."""
    assert written(check_request, "gb-eng", minutes="30", set="200", waiting="1") == "m30~c200~w1"
    assert written(check_request, "us", minutes="30", set="400") == "m30~c204.4"


def test_the_picture_says_whether_it_ever_got_hot(check_request):
    hot, waiting = (preheat_drawing(check_request("/"), text) for text in ("m30~c200", "m45~c200~w1"))
    assert caption_of(hot).startswith("It took 30 minutes.")
    assert caption_of(waiting).startswith("After 45 minutes it was not hot.")


def test_what_it_needs_falls_with_power(check_request):
    """Twice the power needs less than half the time of the same heat where there are losses."""
    strong, weak = (preheat_drawing(check_request("/"), f"m12~c200~p{watts}").facts for watts in (3200, 1600))
    assert 2 * strong["high"] < weak["high"]
