"""A call handed over for a visit: straight to a job sheet of the agent's own firm."""

from collections.abc import Sequence

from django.http import HttpResponse, HttpResponseRedirect
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from triage.check_pages.form_state import key_in, new_state, stale_problem
from triage.check_pages.hand_over_form import STATE, Sent, read_sent
from triage.desk.access import ALL_ROLES, require_role
from triage.desk.call.hand_over import is_ready, take, taken_before
from triage.desk.call.open_call import Call, open_call
from triage.desk.call.presenters.hand_over import hand_over_page
from triage.desk.call.showing import around
from triage.desk.request import MemberRequest
from triage.jobsheet.errors import FieldProblem, IdempotencyConflict, Refused
from triage.models.job_sheet import MAX_NOTE_LENGTH

REFUSED = 422


@require_http_methods(["GET", "HEAD", "POST"])
@require_role(*ALL_ROLES)
def hand_over(request: MemberRequest) -> HttpResponse:
    call = open_call(request)
    if not is_ready(call):
        return HttpResponseRedirect(call.links.here())
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
        sheet = take(call, sent, request.member, key)
    except IdempotencyConflict:
        return _form(request, call, sent, new_state(call.firm.slug), [taken_before(call, key)])
    except Refused as refused:
        return _form(request, call, sent, state, refused.problems)
    query = call.links.here().partition("?")[2]
    return HttpResponseRedirect(f"{reverse('desk-call-taken', args=[sheet.reference])}?{query}")


def _form(
    request: MemberRequest, call: Call, sent: Sent, state: str, problems: Sequence[FieldProblem] = ()
) -> HttpResponse:
    context = {
        **around(call),
        "page": hand_over_page(call, sent, state, problems),
        "longest_note": MAX_NOTE_LENGTH,
    }
    return render(request, "triage/call/hand_over.html", context, status=REFUSED if problems else 200)
