"""Erasing whose oven it was, after a page that says what goes and what stays."""

from typing import cast

from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods

from triage.desk.access import may
from triage.desk.own_sheet import own_sheet, seen_sheet
from triage.desk.showing import DeskRequest, say_next, show
from triage.jobsheet.actions import erase
from triage.models import Member
from triage.models.access_line import Actor
from triage.models.firm import Role


@require_http_methods(["GET", "HEAD", "POST"])
@may(Role.OWNER)
def erasing(request: DeskRequest, reference: str) -> HttpResponse:
    sheet = own_sheet(request, reference)
    if request.method != "POST":
        return show(request, "erasing", {"sheet": sheet})
    if request.POST.get("sure") != "yes":
        problem = _("Tick the box first. What is erased cannot be brought back.")
        return show(request, "erasing", {"sheet": seen_sheet(request, reference), "problem": problem}, status=400)
    erase(sheet=sheet, actor=Actor.MEMBER, member=cast(Member, request.member))
    say_next(request, _("Job sheet %(reference)s is erased.") % {"reference": sheet.reference})
    return HttpResponseRedirect(reverse("desk-inbox"))
