"""Which firm to work for, of those the person belongs to."""

from typing import cast

from django.contrib.auth.models import User
from django.http import Http404, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from triage.desk.access import signed_in
from triage.desk.doors import memberships, safe_next, step_into
from triage.desk.showing import DeskRequest, show


@require_http_methods(["GET", "HEAD", "POST"])
@signed_in
def firms(request: DeskRequest) -> HttpResponse:
    own = memberships(cast(User, request.user))
    if request.method != "POST":
        return show(request, "firms", {"members": own})
    chosen = next((member for member in own if str(member.pk) == request.POST.get("member")), None)
    if chosen is None:
        raise Http404
    if not step_into(request, chosen):
        return HttpResponseRedirect(reverse("desk-second-step"))
    return HttpResponseRedirect(safe_next(request, request.session.pop("desk_next", "")))
