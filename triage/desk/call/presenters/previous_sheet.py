"""What an agent sees of an earlier job sheet, and the way to begin the call with its answers."""

from dataclasses import dataclass
from datetime import datetime

from django.urls import reverse
from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from triage.desk.call.open_call import Call
from triage.desk.call.previous_sheet import reusable_answers
from triage.desk.presenters.bands import band_label
from triage.jobsheet.wording import answer_label, question_label
from triage.knowledge.library import library
from triage.models import JobSheet
from triage.models.job_sheet import SheetStatus
from triage.web.rate_limit import Allowance

MAX_ANSWERS_SHOWN = 8  # answers shown; the job sheet itself has all of them


@dataclass(frozen=True)
class PreviousSheet:
    """`answers` are those the call would begin with, `begin_href` is empty where none are left."""

    reference: str
    spoken_for: str
    created: datetime
    complaint: str
    status: str
    band: str
    cause: str
    signs: list[str]
    answers: list[tuple[str, str]]
    more: str
    begin_href: str
    sheet_href: str


def previous_sheet_page(call: Call, sheet: JobSheet) -> PreviousSheet:
    check_request, summary = call.check_request, sheet.summary
    place = sheet.region if sheet.region in library().regions else check_request.region.id
    again = reusable_answers(check_request.pack, sheet, check_request.answers)
    rows = [
        (question_label(check_request.texts, name), answer_label(check_request.texts, name, answer))
        for name, answer in again.items()
    ]
    first, left = summary["causes"][0], len(rows) - MAX_ANSWERS_SHOWN
    return PreviousSheet(
        reference=sheet.reference,
        spoken_for=sheet.name,
        created=sheet.created,
        complaint=summary["complaint"],
        status=str(SheetStatus(sheet.status).label),
        band=band_label(sheet.band),
        cause=f"{first['name']} ({first['probability_text']})",
        signs=[flag["heading"] for flag in summary["red_flags"]],
        answers=rows[:MAX_ANSWERS_SHOWN],
        more=ngettext("and %(n)s more", "and %(n)s more", left) % {"n": left} if left > 0 else "",
        begin_href=call.links.starting_with(again, place) if again else "",
        sheet_href=reverse("desk-sheet", args=[sheet.reference]),
    )


def not_found_sentence() -> str:
    return _("Your firm has no job sheet with this reference. Ask the caller to spell it again, or start a new call.")


def throttled_sentence(allowance: Allowance) -> str:
    minutes = -(-allowance.reset_after // 60)
    sentence = ngettext(
        "Too many attempts. Try again in %(minutes)s minute, or start a new call.",
        "Too many attempts. Try again in %(minutes)s minutes, or start a new call.",
        minutes,
    )
    return sentence % {"minutes": minutes}
