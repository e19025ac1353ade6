"""The first page: what people say is wrong, the ways out for other things, and whose rules apply.

Answers given before, such as "none of these" on the danger page, go along with whatever is picked.
"""

from django.utils.translation import gettext as _

from triage.check_pages.page_models import Complaint, RegionChoice, StartPage
from triage.check_pages.place import ELSEWHERE
from triage.check_pages.presenters.readings.kinds import kind_names
from triage.check_pages.presenters.typed_words import typed_words
from triage.check_pages.view_models import Choice
from triage.check_pages.visit import Visit
from triage.engine import OPENING
from triage.engine.safety import raised


def start_page(visit: Visit) -> StartPage:
    words = visit.texts.start
    return StartPage(
        heading=words.heading,
        intro=words.intro,
        filter_label=words.filter_label,
        filter_hint=words.filter_hint,
        none_found=words.none_found,
        complaints=[
            Complaint(
                entry.words,
                typed_words(entry.also),
                visit.links.step({OPENING: complaint.option, **complaint.answers}),
                complaint.picture,
            )
            for complaint, entry in zip(visit.library.pack.complaints, words.entries, strict=True)
        ],
        not_mine=[Choice(way_out.words, visit.links.leave(reason)) for reason, way_out in words.exits.items()],
        readings=_readings(visit),
        region=_region_choice(visit),
    )


def _readings(visit: Visit) -> list[Choice]:
    """What has a page of its own: the readings and the energy label; none once something dangerous was said."""
    if raised(visit.library.pack, visit.reading.answers):
        return []
    measured = [Choice(words, visit.links.reading(kind)) for kind, words in kind_names().items()]
    return [*measured, Choice(_("The energy label"), visit.links.costs())]


def _region_choice(visit: Visit) -> RegionChoice:
    here = visit.place.region.id
    others = [place for place in visit.library.regions.values() if place.region.id != here]
    others.sort(key=lambda place: place.region.id == ELSEWHERE)
    return RegionChoice(
        code=here,
        name=visit.place.name,
        choices=[Choice(place.name, visit.links.at(place.region.id)) for place in others],
    )
