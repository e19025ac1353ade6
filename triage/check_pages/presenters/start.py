"""The first page: what people say is wrong, the ways out for other things, and whose rules apply.

Answers given before, such as "none of these" on the danger page, go along with whatever is picked.
"""

import re
from dataclasses import dataclass
from functools import cache

from triage.check_pages.presenters.readings.fields import FORMS
from triage.check_pages.region import ELSEWHERE
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import Choice
from triage.engine import OPENING

BETWEEN_WORDS = re.compile(r"[\s,]+")


@dataclass(frozen=True)
class Complaint:
    """One line of the first page; `also` holds other words people use for it, for the search box."""

    words: str
    also: str
    href: str
    part: str


@dataclass(frozen=True)
class RegionChoice:
    """The region whose rules and numbers are shown, and the others to choose from."""

    name: str
    choices: list[Choice]


@dataclass(frozen=True)
class StartPage:
    """The first page: what the oven does wrong, and the ways out for other appliances."""

    heading: str
    intro: str
    filter_label: str
    filter_hint: str
    none_found: str
    complaints: list[Complaint]
    not_mine: list[Choice]
    readings: list[Choice]
    label_href: str
    region: RegionChoice


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
                entry.label,
                search_terms(entry.search_terms),
                check_request.links.step({OPENING: complaint.option, **complaint.answers}),
                complaint.picture,
            )
            for complaint, entry in zip(check_request.pack.complaints, words.entries, strict=True)
        ],
        not_mine=[Choice(way_out.label, check_request.links.leave(reason)) for reason, way_out in words.exits.items()],
        readings=_readings(check_request),
        label_href=check_request.links.costs(),
        region=_region_choice(check_request),
    )


@cache
def search_terms(phrases: str) -> str:
    """What the search box needs of the words people type: as little of them as finds the same lines.

    The box looks for words that begin with what was typed (`static/triage/pages/start.js`), so each word is needed
    once, and one that another begins with not at all: "trips" finds the line for "trip" too.
    """
    words = list(dict.fromkeys(filter(None, BETWEEN_WORDS.split(phrases.lower()))))
    return " ".join(word for word in words if not any(other != word and other.startswith(word) for other in words))


def _readings(check_request: CheckRequest) -> list[Choice]:
    """The readings with a page of their own; none once something dangerous was said, nor the energy label then."""
    if check_request.check.flags:
        return []
    return [Choice(str(form.name), check_request.links.reading(kind)) for kind, form in FORMS.items()]


def _region_choice(check_request: CheckRequest) -> RegionChoice:
    here = check_request.region.id
    others = [region for region in check_request.library.regions.values() if region.id != here]
    others.sort(key=lambda region: region.id == ELSEWHERE)
    return RegionChoice(
        name=check_request.region.name,
        choices=[Choice(region.name, check_request.links.with_region(region.id)) for region in others],
    )
