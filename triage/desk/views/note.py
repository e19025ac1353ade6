"""A note on a job sheet. What cannot be taken stays in its box, with what is wrong."""

from typing import cast

from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_POST

from triage.desk.access import EVERYBODY_OF_THE_FIRM, may
from triage.desk.own_sheet import own_sheet, seen_sheet
from triage.desk.showing import DeskRequest
from triage.desk.views.job_sheet import show_sheet
from triage.jobsheet.actions import add_note
from triage.jobsheet.errors import Refused
from triage.models import Member


@require_POST
@may(*EVERYBODY_OF_THE_FIRM)
def note(request: DeskRequest, reference: str) -> HttpResponse:
    sheet, text = own_sheet(request, reference), request.POST.get("text", "")
    try:
        add_note(sheet=sheet, text=text, member=cast(Member, request.member))
    except Refused as refused:
        return show_sheet(request, seen_sheet(request, reference), text, str(refused))
    return HttpResponseRedirect(reverse("desk-sheet", args=[sheet.reference]) + "#notes")
