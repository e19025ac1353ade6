"""The seal test: eight places round the door to tick, on a drawing of the door."""

from triage.check_pages.drawings.door_diagram import door_diagram
from triage.check_pages.drawings.drawing import Drawing
from triage.check_pages.presenters.readings.form_input import READ, FormInput
from triage.check_pages.reading_pages import DoorPlace
from triage.check_pages.region import HasRegion
from triage.check_pages.request import CheckRequest
from triage.engine.readings.gasket import PLACES, encode, read
from triage.jobsheet.reading_text import SEAL_PLACES, places_text

NO_BOTTOM = "no-bottom"
BOTTOM = "bottom"


def door_places(found: FormInput) -> list[DoorPlace]:
    return [DoorPlace(READ + place, str(SEAL_PLACES[place]), found.is_ticked(place)) for place in PLACES]


def write_gasket(_request: CheckRequest, found: FormInput) -> str:
    left_out = {place for place in PLACES if found.is_ticked(NO_BOTTOM) and place.startswith(BOTTOM)}
    return encode({place: found.is_ticked(place) for place in PLACES if place not in left_out})


def gasket_drawing(_where: HasRegion, text: str) -> Drawing:
    found = read(text)
    return door_diagram(found.leaks, {"kind": "gasket", "leaking": places_text(found)})
