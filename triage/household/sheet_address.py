"""The address with which the sender of a job sheet can see it and erase it. Who has it may; so it is given out once and
never logged."""

from django.http import HttpRequest

from triage.check_pages.request import CheckRequest, check_request_of
from triage.jobsheet.sender_link import sheet_path
from triage.jobsheet.sender_token import rebuild_token
from triage.models import JobSheet
from triage.query import ParsedQuery, format_query, parse_query

SENT = "sent"


def sheet_address(sheet: JobSheet, sent: str = "") -> str:
    """Without a token where the site's key of that time is forgotten; then the page says that there is none."""
    token = rebuild_token(sheet.reference, sheet.token_hash) or ""
    return sheet_path(sheet, token) + (f"&{format_query([(SENT, sent)])}" if sent else "")


def erase_address(sheet: JobSheet, token: str) -> str:
    return sheet_path(sheet, token, "household-sheet-erase")


def query_params(request: HttpRequest) -> dict[str, str]:
    """What the address says beside the reference."""
    return dict(parse_query(request.META.get("QUERY_STRING", "")).pairs)


def check_request_for_sheet(request: HttpRequest, sheet: JobSheet) -> CheckRequest:
    """The place and the firm are the sheet's, whatever browser opens it; answers there are none."""
    return check_request_of(request, ParsedQuery((), sheet.region, truncated=False, firm=sheet.firm.slug))
