"""What is said once a call was handed over. Another firm's reference and one that does not exist are alike."""

from django.http import HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from triage.desk.access import ALL_ROLES, require_role
from triage.desk.call.open_call import open_call
from triage.desk.call.presenters.taken import taken_page
from triage.desk.call.showing import around
from triage.desk.request import MemberRequest
from triage.desk.sheet_lookup import get_sheet
from triage.engine import SCREEN


@require_safe
@require_role(*ALL_ROLES)
def taken(request: MemberRequest, reference: str) -> HttpResponse:
    sheet, call = get_sheet(request, reference), open_call(request)
    context = {
        **around(call),
        "page": taken_page(sheet, call.check_request.origin),
        "call_id": call.line.id,
        "danger_href": call.links.without(SCREEN, ask=SCREEN),
    }
    return render(request, "triage/call/taken.html", context)
