"""How right the chances were. It proposes; a person accepts with a command, never with a button."""

from typing import cast

from django.http import HttpResponse
from django.views.decorators.http import require_safe

from triage.desk.access import may
from triage.desk.presenters.calibration import calibration_page
from triage.desk.showing import DeskRequest, show
from triage.models import Member
from triage.models.firm import Role


@require_safe
@may(Role.OWNER, Role.REPAIRER)
def calibration(request: DeskRequest) -> HttpResponse:
    return show(request, "calibration", {"page": calibration_page(cast(Member, request.member).firm)})
