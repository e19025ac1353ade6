"""The inbox: which job sheets are wanted and how each reads on one line. A list leaves no audit line."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from urllib.parse import urlencode

from django.core.paginator import Page, Paginator
from django.db.models import Q, QuerySet
from django.utils.translation import gettext as _

from triage.desk.presenters.bands import BANDS, band_label
from triage.jobsheet.access import sheets_of
from triage.jobsheet.reference import read_reference
from triage.models import JobSheet, Member
from triage.models.job_sheet import SheetStatus

PAGE_SIZE = 25
MAX_SEARCH_LENGTH = 100
SEARCHED_FIELDS = (
    "name",
    "telephone",
    "email",
    "street",
    "postcode",
    "summary__trouble",  # as it is stored (models.stored_names)
    "plate__maker",
    "plate__model",
)


@dataclass(frozen=True, slots=True)
class SheetFilter:
    """The filters as read; `problems` are sentences about what could not be read, and was left out."""

    status: str = ""
    band: str = ""
    since: date | None = None
    until: date | None = None
    text: str = ""
    problems: tuple[str, ...] = ()

    @property
    def query(self) -> str:
        """The filters as a query string, for the links to other pages of the list."""
        params = {"status": self.status, "band": self.band, "words": self.text}
        params |= {"since": str(self.since or ""), "until": str(self.until or "")}
        return urlencode({name: value for name, value in params.items() if value})


@dataclass(frozen=True, slots=True)
class InboxRow:
    """One job sheet. `grave` marks what may be dangerous now."""

    reference: str
    created: datetime
    contact: str
    complaint: str
    band: str
    band_label: str
    cause: str
    chance: str
    status: str
    status_label: str
    urgent: bool


@dataclass(frozen=True, slots=True)
class Inbox:
    filter: SheetFilter
    rows: tuple[InboxRow, ...]
    page: Page[JobSheet]
    statuses: tuple[tuple[str, object], ...]
    bands: tuple[tuple[str, str], ...]

    @property
    def older_href(self) -> str:
        return self._page_href(self.page.next_page_number()) if self.page.has_next() else ""

    @property
    def newer_href(self) -> str:
        return self._page_href(self.page.previous_page_number()) if self.page.has_previous() else ""

    def _page_href(self, number: int) -> str:
        return "?" + "&".join(part for part in (self.filter.query, f"page={number}") if part)


def parse_filter(params: Mapping[str, str]) -> SheetFilter:
    problems: list[str] = []
    status, band = params.get("status", ""), params.get("band", "")
    return SheetFilter(
        status=status if status in SheetStatus.values else "",
        band=band if band in BANDS else "",
        since=_day(params.get("since", ""), problems),
        until=_day(params.get("until", ""), problems),
        text=" ".join(params.get("words", "").replace("\x00", "").split())[:MAX_SEARCH_LENGTH].rstrip(),
        problems=tuple(problems),
    )


def _day(text: str, problems: list[str]) -> date | None:
    try:
        return date.fromisoformat(text) if text else None
    except ValueError:
        problems.append(_("“%(day)s” is not a date. Write it like 2026-03-01.") % {"day": text[:40]})
        return None


def inbox_page(member: Member, sheet_filter: SheetFilter, number: str) -> Inbox:
    page = Paginator(filtered_sheets(member, sheet_filter), PAGE_SIZE).get_page(number)
    return Inbox(
        filter=sheet_filter,
        rows=tuple(_row(sheet) for sheet in page.object_list),
        page=page,
        statuses=tuple(SheetStatus.choices),
        bands=tuple((band, band_label(band)) for band in BANDS),
    )


def filtered_sheets(member: Member, sheet_filter: SheetFilter) -> QuerySet[JobSheet]:
    found = sheets_of(member)
    if sheet_filter.status:
        found = found.filter(status=sheet_filter.status)
    if sheet_filter.band:
        found = found.filter(band=sheet_filter.band)
    if sheet_filter.since:
        found = found.filter(created__gte=_midnight(sheet_filter.since))
    if sheet_filter.until and sheet_filter.until < date.max:
        found = found.filter(created__lt=_midnight(sheet_filter.until + timedelta(days=1)))
    return found.filter(_matches(sheet_filter.text)) if sheet_filter.text else found


def _midnight(day: date) -> datetime:
    return datetime.combine(day, time(), UTC)


def _matches(text: str) -> Q:
    """Whose fields hold these words; a reference is found however it is written."""
    query = Q()
    for field in SEARCHED_FIELDS:
        query |= Q(**{f"{field}__icontains": text})
    reference = read_reference(text)
    return query | Q(reference=reference) if reference else query | Q(reference__icontains=text)


def _row(sheet: JobSheet) -> InboxRow:
    summary = sheet.summary
    first = summary["causes"][0]
    return InboxRow(
        reference=sheet.reference,
        created=sheet.created,
        contact=", ".join(part for part in (sheet.name or _("No name"), sheet.postcode) if part),
        complaint=summary["complaint"],
        band=sheet.band,
        band_label=band_label(sheet.band),
        cause=first["name"],
        chance=first["probability_text"],
        status=sheet.status,
        status_label=str(SheetStatus(sheet.status).label),
        urgent=sheet.band == "make-safe",
    )
