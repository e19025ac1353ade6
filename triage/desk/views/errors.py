"""A form whose token does not fit: the page was open too long, or the form came from somewhere else."""

from django.http import HttpResponse

from triage.desk.access import public
from triage.desk.layout import render_page
from triage.desk.request import DeskRequest


@public
def form_expired(request: DeskRequest, reason: str = "") -> HttpResponse:  # noqa: ARG001  (Django passes it by name)
    """403; `reason` is for developers and tells a stranger too much."""
    return render_page(request, "form_expired", {}, status=403)
