"""Which firm to work for, of those the person belongs to."""

from typing import cast

from django.contrib.auth.models import User
from django.http import Http404, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from triage.desk.access import signed_in
from triage.desk.authentication import enter_firm, memberships, safe_next
from triage.desk.layout import DeskRequest, render_page


@require_http_methods(["GET", "HEAD", "POST"])
@signed_in
def choose_firm(request: DeskRequest) -> HttpResponse:
    own = memberships(cast(User, request.user))
    if request.method != "POST":
        return render_page(request, "firms", {"members": own})
    chosen = next((member for member in own if str(member.pk) == request.POST.get("member")), None)
    if chosen is None:
        raise Http404
    if not enter_firm(request, chosen):
        return HttpResponseRedirect(reverse("desk-verify"))
    return HttpResponseRedirect(safe_next(request, request.session.pop("desk_next", "")))
