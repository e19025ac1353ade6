"""The first page: what people say is wrong, the ways out for other things, and whose rules apply.

Answers given before, such as "none of these" on the danger page, go along with whatever is picked.
"""

from django.utils.translation import gettext as _

from triage.check_pages.page_models import Complaint, RegionChoice, StartPage
from triage.check_pages.presenters.readings.fields import FORMS
from triage.check_pages.presenters.typed_words import typed_words
from triage.check_pages.region import ELSEWHERE
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import Choice
from triage.engine import OPENING


def start_page(check_request: CheckRequest) -> StartPage:
    words = check_request.texts.start
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
                check_request.links.step({OPENING: complaint.option, **complaint.answers}),
                complaint.picture,
            )
            for complaint, entry in zip(check_request.pack.complaints, words.entries, strict=True)
        ],
        not_mine=[Choice(way_out.words, check_request.links.leave(reason)) for reason, way_out in words.exits.items()],
        readings=_readings(check_request),
        region=_region_choice(check_request),
    )


def _readings(check_request: CheckRequest) -> list[Choice]:
    """What has a page of its own: the readings and the energy label; none once something dangerous was said."""
    if check_request.check.flags:
        return []
    measured = [Choice(str(texts.name), check_request.links.reading(kind)) for kind, texts in FORMS.items()]
    return [*measured, Choice(_("The energy label"), check_request.links.costs())]


def _region_choice(check_request: CheckRequest) -> RegionChoice:
    here = check_request.region.id
    others = [region for region in check_request.library.regions.values() if region.id != here]
    others.sort(key=lambda region: region.id == ELSEWHERE)
    return RegionChoice(
        code=here,
        name=check_request.region.name,
        choices=[Choice(region.name, check_request.links.with_region(region.id)) for region in others],
    )
