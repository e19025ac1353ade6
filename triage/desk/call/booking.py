"""The end of a call for a visit: whether it may be handed over, and the job sheet it becomes.

What is written down is recomputed from the trail by the one writer of job sheets, as for every other way in; the agent
stands on it as who took it. The consent counts only once every sentence of it was ticked as read.
"""

from django.db import transaction
from django.utils.translation import gettext as _

from triage.check_pages.hand_over_form import AGREED, Sent
from triage.desk.call.open_call import Call
from triage.desk.call.presenters.page import call_page
from triage.desk.call.speech import line_id
from triage.jobsheet import actions
from triage.jobsheet.consent import spoken_consent
from triage.jobsheet.errors import FieldProblem, Refused
from triage.jobsheet.plain_text import clean_text
from triage.models import Firm, JobSheet, Member

READ_PREFIX = "read-"  # with the mark of a sentence: it was read out
NOTES = "notes"


def is_ready(call: Call) -> bool:
    """Whether a visit is the next thing, and everything the caller must hear before was read out."""
    return bool(call_page(call).booking_href)


def was_read(sent: Sent, line: str) -> bool:
    return bool(sent.typed.get(READ_PREFIX + line_id(line)))


def agreed_text(firm: Firm, sent: Sent) -> str:
    """The consent as it was read out; nothing where a sentence was not, or where the caller did not agree."""
    lines = spoken_consent(firm)
    return " ".join(lines) if sent.typed.get(AGREED) and all(was_read(sent, line) for line in lines) else ""


@transaction.atomic
def book(call: Call, sent: Sent, member: Member, key: str) -> JobSheet:
    """The job sheet of this call, with the agent's notes on it. Raises Refused, with nothing written."""
    sheet = actions.create_job_sheet(
        firm=call.firm,
        check=call.check_request.check,
        booking=sent.booking(agreed_text(call.firm, sent)),
        idempotency_key=key,
        origin=call.check_request.origin,
        taken_by=member,
    )
    _note(sheet, sent.typed.get(NOTES, ""), member)
    return sheet


def _note(sheet: JobSheet, text: str, member: Member) -> None:
    """A hand-over that is sent again brings the same note, which is not written twice."""
    cleaned = clean_text(text)
    if cleaned and not sheet.notes.filter(text=cleaned, author=member).exists():
        try:
            actions.add_note(sheet=sheet, text=cleaned, member=member)
        except Refused as refused:
            raise Refused([FieldProblem(NOTES, problem.message) for problem in refused.problems]) from None


def already_booked(call: Call, key: str) -> FieldProblem:
    """What to say where this call was handed over already, and something on the form was changed since."""
    sheet = JobSheet.objects.get(firm=call.firm, idempotency_key=key)
    sentence = _(
        "This call already has a job sheet with other details: %(reference)s. Correct it there."
        " Press the button again only if you want a second job sheet."
    )
    return FieldProblem("", sentence % {"reference": sheet.reference})


def for_agent(problem: FieldProblem) -> FieldProblem:
    """What is refused in words for the caller, said to the agent."""
    if problem.field != "consent":
        return problem
    sentence = _(
        "Read every sentence of it out, tick each, and ask whether they agree. Without it nothing may be kept."
    )
    return FieldProblem("consent", sentence)
