"""A note on a job sheet. What cannot be taken stays in its box, with what is wrong."""

from typing import cast

from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_POST

from triage.desk.access import ALL_ROLES, require_role
from triage.desk.layout import DeskRequest
from triage.desk.sheet_lookup import get_sheet, get_sheet_logged
from triage.desk.views.job_sheet import render_sheet
from triage.jobsheet.actions import add_note
from triage.jobsheet.errors import Refused
from triage.models import Member


@require_POST
@require_role(*ALL_ROLES)
def add_note_to_sheet(request: DeskRequest, reference: str) -> HttpResponse:
    sheet, text = get_sheet(request, reference), request.POST.get("text", "")
    try:
        add_note(sheet=sheet, text=text, member=cast(Member, request.member))
    except Refused as refused:
        return render_sheet(request, get_sheet_logged(request, reference), text, str(refused))
    return HttpResponseRedirect(reverse("desk-sheet", args=[sheet.reference]) + "#notes")
