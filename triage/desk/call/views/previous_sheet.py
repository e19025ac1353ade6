"""A caller who was here before: the job sheet of the reference they spell, for the agent's own firm."""

from django.http import HttpResponse
from django.views.decorators.http import require_safe

from triage.desk.access import ALL_ROLES, require_role
from triage.desk.call.open_call import Call, base_context, open_call
from triage.desk.call.presenters.previous_sheet import (
    PreviousSheet,
    not_found_sentence,
    previous_sheet_page,
    throttled_sentence,
)
from triage.desk.call.previous_sheet import count_lookup, find_sheet
from triage.desk.request import MemberRequest
from triage.engine import SCREEN
from triage.jobsheet.access import NotFound
from triage.models import Member
from triage.web.rendering import render_step


@require_safe
@require_role(*ALL_ROLES)
def previous_sheet(request: MemberRequest) -> HttpResponse:
    call = open_call(request)
    found, problem, status = _find(call, request.member)
    context = {
        **base_context(call),
        "found": found,
        "problem": problem,
        "typed": call.state.previous_reference,
        "carried": call.links.current_params(),
        "back_href": call.links.current(),
        "danger_href": call.links.without(SCREEN, ask=SCREEN),
    }
    return render_step(request, "triage/call/previous_sheet.html", "triage/call/_previous_sheet.html", context, status)


def _find(call: Call, member: Member) -> tuple[PreviousSheet | None, str, int]:
    """The sheet, or what to say instead, and the status that says the same."""
    if not call.state.previous_reference:
        return None, "", 200
    allowance = count_lookup(member)
    if allowance.exceeded:
        return None, throttled_sentence(allowance), 429
    try:
        return previous_sheet_page(call, find_sheet(member, call.state.previous_reference)), "", 200
    except NotFound:
        return None, not_found_sentence(), 404
