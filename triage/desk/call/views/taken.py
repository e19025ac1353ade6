"""What is said once a call was handed over. Another firm's reference and one that does not exist are alike."""

from typing import cast

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from triage.desk.call.open_call import open_call
from triage.desk.call.presenters.taken import taken_page
from triage.desk.call.showing import around
from triage.desk.layout import DeskRequest
from triage.desk.sheet_lookup import get_sheet
from triage.engine import SCREEN


@require_safe
def taken(request: HttpRequest, reference: str) -> HttpResponse:
    sheet, call = get_sheet(cast(DeskRequest, request), reference), open_call(request)
    context = {
        **around(call),
        "page": taken_page(sheet, call.check_request.origin),
        "call_id": call.line.id,
        "danger_href": call.links.without(SCREEN, ask=SCREEN),
    }
    return render(request, "triage/call/taken.html", context)
