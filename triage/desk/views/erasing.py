"""Erasing whose oven it was, after a page that says what goes and what stays."""

from typing import cast

from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods

from triage.desk.access import require_role
from triage.desk.layout import DeskRequest, flash, render_page
from triage.desk.sheet_lookup import get_sheet, get_sheet_logged
from triage.jobsheet.actions import erase
from triage.models import Member
from triage.models.access_line import Actor
from triage.models.firm import Role


@require_http_methods(["GET", "HEAD", "POST"])
@require_role(Role.OWNER)
def erase_sheet(request: DeskRequest, reference: str) -> HttpResponse:
    sheet = get_sheet(request, reference)
    if request.method != "POST":
        return render_page(request, "erasing", {"sheet": sheet})
    if request.POST.get("sure") != "yes":
        problem = _("Tick the box first. What is erased cannot be brought back.")
        return render_page(
            request, "erasing", {"sheet": get_sheet_logged(request, reference), "problem": problem}, status=400
        )
    erase(sheet=sheet, actor=Actor.MEMBER, member=cast(Member, request.member))
    flash(request, _("Job sheet %(reference)s is erased.") % {"reference": sheet.reference})
    return HttpResponseRedirect(reverse("desk-inbox"))
