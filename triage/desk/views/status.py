"""How far a job is: one touch."""

from typing import cast

from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_POST

from triage.desk.access import EVERYBODY_OF_THE_FIRM, may
from triage.desk.own_sheet import own_sheet
from triage.desk.showing import DeskRequest, say_next
from triage.jobsheet.actions import set_status
from triage.jobsheet.errors import Refused
from triage.models import Member
from triage.models.job_sheet import Status


@require_POST
@may(*EVERYBODY_OF_THE_FIRM)
def status(request: DeskRequest, reference: str) -> HttpResponse:
    sheet, wanted = own_sheet(request, reference), request.POST.get("status", "")
    try:
        set_status(sheet=sheet, status=wanted, member=cast(Member, request.member))
        say_next(request, _("Status: %(status)s.") % {"status": Status(wanted).label})
    except Refused as refused:
        say_next(request, str(refused))
    return HttpResponseRedirect(reverse("desk-sheet", args=[sheet.reference]))
