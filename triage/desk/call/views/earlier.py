"""A caller who was here before: the job sheet of the reference they spell, for the agent's own firm."""

from urllib.parse import parse_qsl

from django.http import HttpResponse
from django.views.decorators.http import require_safe

from triage.desk.access import ALL_ROLES, require_role
from triage.desk.call.earlier import count_look, earlier_sheet
from triage.desk.call.open_call import Call, open_call
from triage.desk.call.presenters.earlier import EarlierSheet, earlier_page, not_found_sentence, wait_sentence
from triage.desk.call.showing import around
from triage.desk.request import MemberRequest
from triage.engine import SCREEN
from triage.jobsheet.access import NotFound
from triage.models import Member
from triage.web.rendering import render_step


@require_safe
@require_role(*ALL_ROLES)
def earlier(request: MemberRequest) -> HttpResponse:
    call = open_call(request)
    found, problem, status = _look(call, request.member)
    context = {
        **around(call),
        "found": found,
        "problem": problem,
        "typed": call.line.earlier,
        "carried": parse_qsl(call.links.here().partition("?")[2]),
        "back_href": call.links.here(),
        "danger_href": call.links.without(SCREEN, ask=SCREEN),
    }
    return render_step(request, "triage/call/earlier.html", "triage/call/_earlier.html", context, status)


def _look(call: Call, member: Member) -> tuple[EarlierSheet | None, str, int]:
    """The sheet, or what to say instead, and the status that says the same."""
    if not call.line.earlier:
        return None, "", 200
    allowance = count_look(member)
    if allowance.exceeded:
        return None, wait_sentence(allowance), 429
    try:
        return earlier_page(call, earlier_sheet(member, call.line.earlier)), "", 200
    except NotFound:
        return None, not_found_sentence(), 404
