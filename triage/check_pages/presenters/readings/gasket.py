"""The seal test: eight places round the door to tick, on a drawing of the door."""

from dataclasses import dataclass

from triage.check_pages.drawings.door_diagram import door_diagram
from triage.check_pages.drawings.drawing import Drawing
from triage.check_pages.presenters.readings.form_input import READ, FormInput
from triage.check_pages.region import HasRegion
from triage.check_pages.request import CheckRequest
from triage.engine.readings.gasket import SEAL_PLACES, encode_gasket, read_gasket
from triage.jobsheet.reading_text import PLACE_NAMES, places_text

NO_BOTTOM = "no-bottom"
BOTTOM = "bottom"


@dataclass(frozen=True)
class DoorPlace:
    """One place round the door to tick where the seal lets something through."""

    name: str
    label: str
    ticked: bool


def door_places(found: FormInput) -> list[DoorPlace]:
    return [DoorPlace(READ + place, str(PLACE_NAMES[place]), found.is_ticked(place)) for place in SEAL_PLACES]


def write_gasket(_request: CheckRequest, found: FormInput) -> str:
    left_out = {place for place in SEAL_PLACES if found.is_ticked(NO_BOTTOM) and place.startswith(BOTTOM)}
    return encode_gasket({place: found.is_ticked(place) for place in SEAL_PLACES if place not in left_out})


def gasket_drawing(_where: HasRegion, text: str) -> Drawing:
    found = read_gasket(text)
    return door_diagram(found.leaks, {"kind": "gasket", "leaking": places_text(found)})
