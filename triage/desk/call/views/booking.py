"""A visit booked from a call: straight to a job sheet of the agent's own firm, and what is said after."""

from collections.abc import Sequence

from django.http import HttpResponse, HttpResponseRedirect
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_safe

from triage.check_pages.form_state import key_in, new_state, stale_problem
from triage.check_pages.hand_over_form import STATE, Sent, read_sent
from triage.desk.access import ALL_ROLES, require_role
from triage.desk.call.booking import already_booked, book, is_ready
from triage.desk.call.open_call import Call, base_context, open_call
from triage.desk.call.presenters.booking_form import booking_page
from triage.desk.call.presenters.confirmation import confirmation_page
from triage.desk.request import MemberRequest
from triage.desk.sheet_lookup import get_sheet
from triage.engine import SCREEN
from triage.jobsheet.errors import FieldProblem, IdempotencyConflict, Refused
from triage.models.job_sheet import MAX_NOTE_LENGTH

UNPROCESSABLE = 422


@require_http_methods(["GET", "HEAD", "POST"])
@require_role(*ALL_ROLES)
def booking(request: MemberRequest) -> HttpResponse:
    call = open_call(request)
    if not is_ready(call):
        return HttpResponseRedirect(call.links.current())
    if request.method == "POST":
        return _send(request, call)
    return _form(request, call, Sent({}), new_state(call.firm.slug))


def _send(request: MemberRequest, call: Call) -> HttpResponse:
    sent = read_sent(request)
    state = sent.typed.get(STATE, "")
    key = key_in(state, call.firm.slug)
    if sent.problems or key is None:
        return _form(request, call, sent, new_state(call.firm.slug), sent.problems or [stale_problem()])
    try:
        sheet = book(call, sent, request.member, key)
    except IdempotencyConflict:
        return _form(request, call, sent, new_state(call.firm.slug), [already_booked(call, key)])
    except Refused as refused:
        return _form(request, call, sent, state, refused.problems)
    query = call.links.current_query()
    return HttpResponseRedirect(f"{reverse('desk-call-confirmation', args=[sheet.reference])}?{query}")


def _form(
    request: MemberRequest, call: Call, sent: Sent, state: str, problems: Sequence[FieldProblem] = ()
) -> HttpResponse:
    context = {
        **base_context(call),
        "page": booking_page(call, sent, state, problems),
        "max_note_length": MAX_NOTE_LENGTH,
    }
    return render(request, "triage/call/booking.html", context, status=UNPROCESSABLE if problems else 200)


@require_safe
@require_role(*ALL_ROLES)
def confirmation(request: MemberRequest, reference: str) -> HttpResponse:
    """Another firm's reference and one that does not exist are alike."""
    sheet, call = get_sheet(request, reference), open_call(request)
    context = {
        **base_context(call),
        "page": confirmation_page(sheet, call.check_request.origin),
        "call_id": call.state.id,
        "danger_href": call.links.without(SCREEN, ask=SCREEN),
    }
    return render(request, "triage/call/confirmation.html", context)
