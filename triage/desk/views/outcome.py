"""What was found and fitted: five touches where the likeliest cause and the kit were right."""

from typing import cast

from django.http import HttpResponse, HttpResponseRedirect, QueryDict
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods

from triage.desk.access import may
from triage.desk.own_sheet import own_sheet, seen_sheet
from triage.desk.presenters.findings import findings_form, read_findings, told_before
from triage.desk.showing import DeskRequest, say_next, show
from triage.jobsheet.errors import Refused
from triage.jobsheet.outcomes import record_outcome
from triage.models import Member, Outcome
from triage.models.firm import Role


@require_http_methods(["GET", "HEAD", "POST"])
@may(Role.OWNER, Role.REPAIRER)
def outcome(request: DeskRequest, reference: str) -> HttpResponse:
    sheet = own_sheet(request, reference)
    if request.method == "POST":
        try:
            findings = read_findings(sheet, request.POST)
            record_outcome(sheet=sheet, findings=findings, member=cast(Member, request.member))
        except Refused as refused:
            sheet = seen_sheet(request, reference)
            form = findings_form(sheet, request.POST, refused.problems)
            return show(request, "outcome", {"form": form, "sheet": sheet}, status=400)
        say_next(request, _("Written down. Thank you: this is what the chances are mended by."))
        return HttpResponseRedirect(reverse("desk-sheet", args=[sheet.reference]))
    before = Outcome.objects.filter(sheet=sheet).first()
    told = told_before(before) if before else QueryDict()
    return show(request, "outcome", {"form": findings_form(sheet, told), "sheet": sheet})
