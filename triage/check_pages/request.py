"""One request of a check's page, read once: the place, the words, the answers and the step they lead to.

Nothing is kept between two visits; everything comes from the address and from what the browser says it speaks.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from django.http import HttpRequest

from triage.check_pages.links import Links
from triage.check_pages.region import guess_region
from triage.conf import DEFAULT_REGION
from triage.engine import AnswerProblem, Check, Pack, Step, run_check
from triage.knowledge.library import Library, library
from triage.knowledge.region_builder import RegionProfile
from triage.knowledge.texts import Texts
from triage.models import Firm
from triage.query import ParsedQuery, parse_query

SLUG = re.compile(r"[-a-zA-Z0-9_]{1,50}")


@dataclass(frozen=True)
class Notice:
    """What was not as expected in the address (`sentences/notice.txt`); `region` is the one taken instead."""

    kind: Literal["region", "firm", "truncated"]
    region: str = ""


@dataclass(frozen=True)
class CheckRequest:
    """`region_named`: whether the address itself named a region we know; if not, the page depends on the browser.
    `origin` is the site's own address, without a slash; `typed` what was typed into a form beside the answers; `firm`
    the repair firm the check is done for, if any."""

    library: Library
    region: RegionProfile
    texts: Texts
    check: Check
    links: Links
    notices: tuple[Notice, ...]
    region_named: bool
    origin: str
    typed: Mapping[str, str]
    firm: Firm | None

    @property
    def pack(self) -> Pack:
        return self.check.pack

    @property
    def answers(self) -> Mapping[str, str]:
        return self.check.answers

    @property
    def problems(self) -> tuple[AnswerProblem, ...]:
        return self.check.problems

    @property
    def step(self) -> Step:
        return self.check.step


def read_check_request(request: HttpRequest) -> CheckRequest:
    return check_request_of(request, parse_query(request.META.get("QUERY_STRING", "")))


def check_request_of(request: HttpRequest, asked: ParsedQuery) -> CheckRequest:
    """The visit for what an address asked, whoever read it."""
    known = library()
    firm = _firm_of(asked)
    named = asked.region is not None and asked.region in known.regions
    region = known.regions[_region_of(request, asked, known, firm)]
    check = run_check(known.pack, region.region, asked.pairs)
    return CheckRequest(
        library=known,
        region=region,
        texts=known.texts_for(region.id),
        check=check,
        links=Links(region.id, check.answers, firm.slug if firm else ""),
        notices=tuple(_notices(asked, region, known, firm)),
        region_named=named or (firm is not None and firm.region in known.regions),
        origin=request.build_absolute_uri("/").rstrip("/"),
        typed=asked.typed,
        firm=firm,
    )


def _firm_of(asked: ParsedQuery) -> Firm | None:
    """The firm named; a page that names none asks no database."""
    return Firm.objects.filter(slug=asked.firm).first() if SLUG.fullmatch(asked.firm) else None


def _region_of(request: HttpRequest, asked: ParsedQuery, known: Library, firm: Firm | None) -> str:
    if asked.region in known.regions:
        return str(asked.region)
    if asked.region is None and firm and firm.region in known.regions:
        return firm.region
    if asked.region is not None:
        return DEFAULT_REGION.value()
    return guess_region(request.headers.get("Accept-Language", ""), known.regions, DEFAULT_REGION.value())


def _notices(asked: ParsedQuery, region: RegionProfile, known: Library, firm: Firm | None) -> Iterator[Notice]:
    if asked.region is not None and asked.region not in known.regions:
        yield Notice("region", region.name)
    if asked.firm and firm is None:
        yield Notice("firm")
    if asked.truncated:
        yield Notice("truncated")
