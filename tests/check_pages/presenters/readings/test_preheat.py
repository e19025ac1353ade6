"""The preheat test: minutes, and what the oven's power and size need."""

from triage.check_pages.presenters.readings.preheat import preheat_groups, preheat_told, read_preheat, write_preheat
from triage.check_pages.presenters.readings.typed import Typed


def written(check_request, region, **raw):
    found = Typed({f"read-{name}": text for name, text in raw.items()})
    seen = check_request(f"/?region={region}")
    read_preheat(seen, found)
    return write_preheat(seen, found)


def test_it_is_written_in_celsius_wherever_it_is_typed(check_request):
    """400 °F is 204.4 °C."""
    assert written(check_request, "gb-eng", minutes="30", set="200", waiting="1") == "m30~c200~w1"
    assert written(check_request, "us", minutes="30", set="400") == "m30~c204.4"


def test_the_picture_says_whether_it_ever_got_hot(check_request):
    assert preheat_told(check_request("/"), "m30~c200").drawing.words.startswith("It took 30 minutes.")
    assert preheat_told(check_request("/"), "m45~c200~w1").drawing.words.startswith("After 45 minutes it was not hot.")


def test_what_it_needs_falls_with_power(check_request):
    """Twice the power needs less than half the time of the same heat where there are losses."""
    few, many = (preheat_told(check_request("/"), f"m12~c200~p{watts}").drawing.words for watts in (3200, 1600))
    assert few != many


def test_what_may_be_left_out_is_folded(check_request):
    assert [group.open for group in preheat_groups(check_request("/"), Typed({}))] == [True, False, False]
