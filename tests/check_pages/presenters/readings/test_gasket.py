"""The seal test: eight places to tick."""

import pytest

from tests.check_pages.fragments import caption_of
from triage.check_pages.presenters.readings.degrees import CELSIUS
from triage.check_pages.presenters.readings.form_input import FormInput
from triage.check_pages.presenters.readings.gasket import door_places, gasket_drawing, write_gasket


def typed(**raw):
    return FormInput({f"read-{name}": text for name, text in raw.items()}, CELSIUS)


@pytest.mark.parametrize(
    ("ticked", "text"),
    [((), "pgggggggg"), (("top", "left"), "pgsgggggs"), (("no-bottom", "bottom", "right"), "pgggsxxxg")],
)
def test_what_is_not_ticked_is_tight_and_a_bottom_without_seal_is_left_out(check_request, ticked, text):
    assert write_gasket(check_request("/"), typed(**dict.fromkeys(ticked, "1"))) == text


def test_the_ticks_come_back():
    places = door_places(typed(top="1", right="no"))
    assert [place.name for place in places if place.ticked] == ["read-top"]
    assert len(places) == 8


def test_the_picture_names_the_places(check_request):
    leaking, tight = (gasket_drawing(check_request("/"), text) for text in ("psgggggss", "pggggxxxg"))
    assert caption_of(leaking) == "The seal lets through at: top left, bottom left, left."
    assert caption_of(tight) == "The seal is tight at every place that was tried."
