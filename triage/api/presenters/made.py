"""What whoever handed a check over is told about its job sheet: nothing that only a repairer should read."""

from typing import TypedDict
from urllib.parse import quote

from django.urls import reverse

from triage.jobsheet.reference import spelled_out
from triage.jobsheet.sender_token import rebuild_token
from triage.models import JobSheet


class Made(TypedDict):
    """`sender_link` opens the sheet for who sent it and lets them erase it; it is empty once the site's key of that
    time is forgotten."""

    reference: str
    spoken: str
    band: str
    status: str
    erase_after: str
    href: str
    sender_link: str


def told_made(sheet: JobSheet, origin: str) -> Made:
    token = rebuild_token(sheet.reference, sheet.token_hash)
    page = origin + reverse("household-sheet", args=[sheet.reference])
    return Made(
        reference=sheet.reference,
        spoken=spelled_out(sheet.reference),
        band=sheet.band,
        status=sheet.status,
        erase_after=sheet.erase_after.isoformat(timespec="seconds"),
        href=origin + reverse("api-job-sheet", args=[sheet.firm.slug, sheet.reference]),
        sender_link=f"{page}?token={quote(token)}" if token else "",
    )
