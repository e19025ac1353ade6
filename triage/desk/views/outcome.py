"""Recording an outcome: five touches where the likeliest cause and the kit were right."""

from django.contrib import messages
from django.http import HttpResponse, HttpResponseRedirect, QueryDict
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods

from triage.desk.access import require_role
from triage.desk.layout import render_page
from triage.desk.presenters.outcome_form import initial_data, outcome_form, parse_outcome_form
from triage.desk.request import MemberRequest
from triage.desk.sheet_lookup import get_sheet, get_sheet_logged
from triage.jobsheet.errors import Refused
from triage.jobsheet.outcomes import record_outcome
from triage.models import Outcome
from triage.models.firm import Role


@require_http_methods(["GET", "HEAD", "POST"])
@require_role(Role.OWNER, Role.REPAIRER)
def outcome(request: MemberRequest, reference: str) -> HttpResponse:
    sheet = get_sheet(request, reference)
    if request.method == "POST":
        try:
            findings = parse_outcome_form(sheet, request.POST)
            record_outcome(sheet=sheet, data=findings, member=request.member)
        except Refused as refused:
            sheet = get_sheet_logged(request, reference)
            form = outcome_form(sheet, request.POST, refused.problems)
            return render_page(request, "outcome", {"form": form, "sheet": sheet}, status=400)
        messages.success(request, _("Saved. Thank you: outcomes make the probabilities better."))
        return HttpResponseRedirect(reverse("desk-sheet", args=[sheet.reference]))
    before = Outcome.objects.filter(sheet=sheet).first()
    data = initial_data(before) if before else QueryDict()
    return render_page(request, "outcome", {"form": outcome_form(sheet, data), "sheet": sheet})
