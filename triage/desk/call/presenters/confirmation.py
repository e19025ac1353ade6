"""After the hand-over: the reference to read out, what happens next, and the caller's own link."""

from dataclasses import dataclass

from django.urls import reverse
from django.utils.translation import gettext as _

from triage.desk.call.speech import split_for_speech
from triage.jobsheet.reference import spelled_out
from triage.jobsheet.sender_link import sender_link
from triage.models import JobSheet


@dataclass(frozen=True)
class ConfirmationPage:
    """`lines` are said after the reference; `link` is the caller's own, empty once the site's key of then is gone."""

    reference: str
    spoken: list[str]
    lines: list[str]
    link: str
    sheet_href: str


def confirmation_page(sheet: JobSheet, origin: str) -> ConfirmationPage:
    return ConfirmationPage(
        reference=sheet.reference,
        spoken=spelled_out(sheet.reference).split(", "),
        lines=[breath for line in _lines(sheet) for breath in split_for_speech(line)],
        link=sender_link(sheet, origin),
        sheet_href=reverse("desk-sheet", args=[sheet.reference]),
    )


def _lines(sheet: JobSheet) -> list[str]:
    how = _("by telephone") if sheet.telephone else _("by e-mail")
    return [
        _("We get in touch %(how)s to agree a time. Nothing is booked before that.") % {"how": how},
        _("Until then, do what I read out. If I said to leave the oven off, leave it off."),
        _("If a danger sign comes up later, do not wait for the visit: act on it at once, and call us."),
    ]
