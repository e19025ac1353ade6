"""The second factor of the firm that is being entered."""

from time import time

from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods

from triage.desk.access import signed_in
from triage.desk.authentication import enter_after_second_factor, pending_member, safe_next
from triage.desk.forms import CodeForm
from triage.desk.layout import DeskRequest, render_page
from triage.desk.login_throttle import clear_attempts, record_attempt
from triage.desk.second_factor import verify_code
from triage.web.client_address import client_address


@require_http_methods(["GET", "HEAD", "POST"])
@signed_in
def verify_two_factor(request: DeskRequest) -> HttpResponse:
    waiting = pending_member(request)
    if waiting is None:
        return HttpResponseRedirect(reverse("desk-firms"))
    if request.method != "POST":
        return render_page(request, "second_step", {"form": CodeForm(), "firm": waiting.firm.name})
    form, status = CodeForm(request.POST), 400
    if form.is_valid():
        tried = f"second factor of member {waiting.pk}"
        if not record_attempt(tried, client_address(request)):
            status = 429
            form.add_error(None, _("There were too many tries. Wait 15 minutes, then try again."))
        elif verify_code(waiting, form.cleaned_data["code"], time()):
            clear_attempts(tried)
            enter_after_second_factor(request, waiting)
            return HttpResponseRedirect(safe_next(request, request.session.pop("desk_next", "")))
        else:
            form.add_error("code", _("This code does not fit, or was used before. Wait for the next one and type it."))
    return render_page(request, "second_step", {"form": form, "firm": waiting.firm.name}, status=status)
