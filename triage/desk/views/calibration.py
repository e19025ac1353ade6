"""How right the chances were. It proposes; a person accepts with a command, never with a button."""

from typing import cast

from django.http import HttpResponse
from django.views.decorators.http import require_safe

from triage.desk.access import require_role
from triage.desk.layout import DeskRequest, render_page
from triage.desk.presenters.calibration import calibration_page
from triage.models import Member
from triage.models.firm import Role


@require_safe
@require_role(Role.OWNER, Role.REPAIRER)
def calibration(request: DeskRequest) -> HttpResponse:
    return render_page(request, "calibration", {"page": calibration_page(cast(Member, request.member).firm)})
