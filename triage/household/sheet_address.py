"""The address with which the sender of a job sheet can see it and erase it. Who has it may; so it is given out once and
never logged."""

from urllib.parse import quote

from django.http import HttpRequest
from django.urls import reverse

from triage.check_pages.query import ParsedQuery, parse_query
from triage.check_pages.request import CheckRequest, check_request_for
from triage.jobsheet.sender_token import rebuild_token
from triage.models import JobSheet

TOKEN, SENT = "token", "sent"


def sheet_address(sheet: JobSheet, sent: str = "") -> str:
    """Without a token where the site's key of that time is forgotten; then the page says that there is none."""
    token = rebuild_token(sheet.reference, sheet.token_hash) or ""
    return _to("household-sheet", sheet.reference, token) + (f"&{SENT}={quote(sent)}" if sent else "")


def erase_address(reference: str, token: str) -> str:
    return _to("household-sheet-erase", reference, token)


def told_in(request: HttpRequest) -> dict[str, str]:
    """What the address says beside the reference."""
    return dict(parse_query(request.META.get("QUERY_STRING", "")).pairs)


def visit_for(request: HttpRequest, sheet: JobSheet) -> CheckRequest:
    """The place and the firm are the sheet's, whatever browser opens it; answers there are none."""
    return check_request_for(request, ParsedQuery((), sheet.region, truncated=False, firm=sheet.firm.slug))


def _to(name: str, reference: str, token: str) -> str:
    return f"{reverse(name, args=[reference])}?{TOKEN}={quote(token)}"
