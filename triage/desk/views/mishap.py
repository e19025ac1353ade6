"""A form whose token does not fit: the page was open too long, or the form came from somewhere else."""

from django.http import HttpResponse

from triage.desk.access import open_door
from triage.desk.showing import DeskRequest, show


@open_door
def form_expired(request: DeskRequest, reason: str = "") -> HttpResponse:  # noqa: ARG001  (Django passes it by name)
    """403; `reason` is for developers and tells a stranger too much."""
    return show(request, "form_expired", {}, status=403)
