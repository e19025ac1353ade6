"""The link with which the sender of a job sheet sees it and can erase it. Who has it may; so it is given out once and
never logged."""

from django.urls import reverse

from triage.jobsheet.sender_token import rebuild_token
from triage.models import JobSheet
from triage.query import format_query

TOKEN = "token"  # noqa: S105  (the name of a parameter)


def sheet_path(sheet: JobSheet, token: str, page: str = "household-sheet") -> str:
    return f"{reverse(page, args=[sheet.reference])}?{format_query([(TOKEN, token)])}"


def sender_link(sheet: JobSheet, origin: str) -> str:
    """The whole link; empty once the site's key of that time is forgotten."""
    token = rebuild_token(sheet.reference, sheet.token_hash)
    return origin + sheet_path(sheet, token) if token else ""
