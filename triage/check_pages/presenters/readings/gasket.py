"""The seal test: eight places round the door to tick, on a drawing of the door."""

from django.utils.translation import gettext as _

from triage.check_pages.drawings.door_map import door_map
from triage.check_pages.presenters.readings.told import Told
from triage.check_pages.presenters.readings.typed import READ, Typed
from triage.check_pages.reading_pages import DoorPlace, FieldGroup
from triage.check_pages.region import HasRegion
from triage.check_pages.request import CheckRequest
from triage.engine.readings.gasket import PLACES, Gasket, read, write
from triage.jobsheet.reading_text import SEAL_PLACES, places_text

NO_BOTTOM = "no-bottom"
BOTTOM = "bottom"


def read_gasket(_visit: CheckRequest, _typed: Typed) -> None:
    """Ticks need no reading; what else may stand there counts as not ticked."""


def gasket_groups(_visit: CheckRequest, typed: Typed) -> list[FieldGroup]:
    return [FieldGroup([typed.tick(NO_BOTTOM, _("The door has no seal along the bottom"), _("Many have none there"))])]


def door_places(typed: Typed) -> list[DoorPlace]:
    return [DoorPlace(READ + place, str(SEAL_PLACES[place]), typed.ticked(place)) for place in PLACES]


def write_gasket(_visit: CheckRequest, typed: Typed) -> str:
    left_out = {place for place in PLACES if typed.ticked(NO_BOTTOM) and place.startswith(BOTTOM)}
    return write({place: typed.ticked(place) for place in PLACES if place not in left_out})


def gasket_told(_placed: HasRegion, text: str) -> Told:
    found = read(text)
    legend = (_("tight"), _("lets through"), _("no seal there"))
    return Told(door_map(found.leaks, legend, _picture_words(found)), [_("Try a place that lets through once more.")])


def _picture_words(found: Gasket) -> str:
    if not found.places:
        return _("The seal is tight at every place that was tried.")
    return _("The seal lets through at: %(places)s.") % {"places": places_text(found)}
