"""How far a job is: one touch."""

from typing import cast

from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_POST

from triage.desk.access import ALL_ROLES, require_role
from triage.desk.layout import DeskRequest, flash
from triage.desk.sheet_lookup import get_sheet
from triage.jobsheet.actions import set_status
from triage.jobsheet.errors import Refused
from triage.models import Member
from triage.models.job_sheet import Status


@require_POST
@require_role(*ALL_ROLES)
def change_status(request: DeskRequest, reference: str) -> HttpResponse:
    sheet, wanted = get_sheet(request, reference), request.POST.get("status", "")
    try:
        set_status(sheet=sheet, status=wanted, member=cast(Member, request.member))
        flash(request, _("Status: %(status)s.") % {"status": Status(wanted).label})
    except Refused as refused:
        flash(request, str(refused))
    return HttpResponseRedirect(reverse("desk-sheet", args=[sheet.reference]))
