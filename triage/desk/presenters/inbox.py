"""The inbox: which job sheets are wanted and how each reads on one line. A list leaves no audit line."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from urllib.parse import urlencode

from django.core.paginator import Page, Paginator
from django.db.models import Q, QuerySet
from django.utils.translation import gettext as _

from triage.desk.presenters.bands import BANDS, band_words
from triage.jobsheet.opening import sheets_of
from triage.jobsheet.reference import read_reference
from triage.models import JobSheet, Member
from triage.models.job_sheet import Status

ON_A_PAGE = 25
LONGEST_SEARCH = 100
SEARCHED = ("name", "telephone", "email", "street", "postcode", "summary__trouble", "plate__maker", "plate__model")


@dataclass(frozen=True, slots=True)
class Wanted:
    """The filters as read; `problems` are sentences about what could not be read, and was left out."""

    status: str = ""
    band: str = ""
    since: date | None = None
    until: date | None = None
    words: str = ""
    problems: tuple[str, ...] = ()

    @property
    def query(self) -> str:
        """The filters as a query string, for the links to other pages of the list."""
        told = {"status": self.status, "band": self.band, "words": self.words}
        told |= {"since": str(self.since or ""), "until": str(self.until or "")}
        return urlencode({name: value for name, value in told.items() if value})


@dataclass(frozen=True, slots=True)
class Line:
    """One job sheet. `grave` marks what may be dangerous now."""

    reference: str
    created: datetime
    who: str
    trouble: str
    band: str
    band_words: str
    cause: str
    chance: str
    status: str
    status_words: str
    grave: bool


@dataclass(frozen=True, slots=True)
class Inbox:
    wanted: Wanted
    lines: tuple[Line, ...]
    page: Page[JobSheet]
    statuses: tuple[tuple[str, object], ...]
    bands: tuple[tuple[str, str], ...]

    @property
    def earlier(self) -> str:
        return self._page(self.page.next_page_number()) if self.page.has_next() else ""

    @property
    def later(self) -> str:
        return self._page(self.page.previous_page_number()) if self.page.has_previous() else ""

    def _page(self, number: int) -> str:
        return "?" + "&".join(part for part in (self.wanted.query, f"page={number}") if part)


def read_wanted(asked: Mapping[str, str]) -> Wanted:
    problems: list[str] = []
    status, band = asked.get("status", ""), asked.get("band", "")
    return Wanted(
        status=status if status in Status.values else "",
        band=band if band in BANDS else "",
        since=_day(asked.get("since", ""), problems),
        until=_day(asked.get("until", ""), problems),
        words=" ".join(asked.get("words", "").replace("\x00", "").split())[:LONGEST_SEARCH].rstrip(),
        problems=tuple(problems),
    )


def _day(text: str, problems: list[str]) -> date | None:
    try:
        return date.fromisoformat(text) if text else None
    except ValueError:
        problems.append(_("“%(day)s” is no day. Write it as 2026-03-01.") % {"day": text[:40]})
        return None


def inbox_page(member: Member, wanted: Wanted, number: str) -> Inbox:
    page = Paginator(found_sheets(member, wanted), ON_A_PAGE).get_page(number)
    return Inbox(
        wanted=wanted,
        lines=tuple(_line(sheet) for sheet in page.object_list),
        page=page,
        statuses=tuple(Status.choices),
        bands=tuple((band, band_words(band)) for band in BANDS),
    )


def found_sheets(member: Member, wanted: Wanted) -> QuerySet[JobSheet]:
    found = sheets_of(member)
    if wanted.status:
        found = found.filter(status=wanted.status)
    if wanted.band:
        found = found.filter(band=wanted.band)
    if wanted.since:
        found = found.filter(created__gte=_midnight(wanted.since))
    if wanted.until and wanted.until < date.max:
        found = found.filter(created__lt=_midnight(wanted.until + timedelta(days=1)))
    return found.filter(_spoken_of(wanted.words)) if wanted.words else found


def _midnight(day: date) -> datetime:
    return datetime.combine(day, time(), UTC)


def _spoken_of(words: str) -> Q:
    """Whose fields hold these words; a reference is found however it is written."""
    holds = Q()
    for field in SEARCHED:
        holds |= Q(**{f"{field}__icontains": words})
    reference = read_reference(words)
    return holds | Q(reference=reference) if reference else holds | Q(reference__icontains=words)


def _line(sheet: JobSheet) -> Line:
    summary = sheet.summary
    first = summary["causes"][0]
    return Line(
        reference=sheet.reference,
        created=sheet.created,
        who=", ".join(part for part in (sheet.name or _("No name"), sheet.postcode) if part),
        trouble=summary["trouble"],
        band=sheet.band,
        band_words=band_words(sheet.band),
        cause=first["name"],
        chance=first["chance_words"],
        status=sheet.status,
        status_words=str(Status(sheet.status).label),
        grave=sheet.band == "make-safe",
    )
