"""The seal test: eight places to tick."""

import pytest

from triage.check_pages.presenters.readings.gasket import (
    door_places,
    gasket_groups,
    gasket_told,
    read_gasket,
    write_gasket,
)
from triage.check_pages.presenters.readings.typed import Typed


def written(check_request, *ticked):
    found = Typed({f"read-{name}": "1" for name in ticked})
    seen = check_request("/")
    read_gasket(seen, found)
    return write_gasket(seen, found)


@pytest.mark.parametrize(
    ("ticked", "text"),
    [((), "pgggggggg"), (("top", "left"), "pgsgggggs"), (("no-bottom", "bottom", "right"), "pgggsxxxg")],
)
def test_what_is_not_ticked_is_tight_and_a_bottom_without_seal_is_left_out(check_request, ticked, text):
    assert written(check_request, *ticked) == text


def test_the_ticks_come_back(check_request):
    places = door_places(Typed({"read-top": "1", "read-right": "no"}))
    assert [place.name for place in places if place.ticked] == ["read-top"]
    assert len(places) == 8
    assert len(gasket_groups(check_request("/"), Typed({}))) == 1


def test_the_picture_names_the_places(check_request):
    assert (
        gasket_told(check_request("/"), "psgggggss").drawing.words
        == "The seal lets through at: top left, bottom left, left."
    )
    assert (
        gasket_told(check_request("/"), "pggggxxxg").drawing.words == "The seal is tight at every place that was tried."
    )
