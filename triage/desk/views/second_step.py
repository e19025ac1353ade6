"""The second factor of the firm that is being entered."""

from time import time

from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods

from triage.desk.access import signed_in
from triage.desk.doors import pass_second_factor, safe_next, waiting_member
from triage.desk.forms import CodeForm
from triage.desk.second_factor import use_code
from triage.desk.showing import DeskRequest, show
from triage.desk.tries import begin_try, forget_tries
from triage.web.client_address import client_address


@require_http_methods(["GET", "HEAD", "POST"])
@signed_in
def second_step(request: DeskRequest) -> HttpResponse:
    waiting = waiting_member(request)
    if waiting is None:
        return HttpResponseRedirect(reverse("desk-firms"))
    if request.method != "POST":
        return show(request, "second_step", {"form": CodeForm(), "firm": waiting.firm.name})
    form, status = CodeForm(request.POST), 400
    if form.is_valid():
        tried = f"second factor of member {waiting.pk}"
        if not begin_try(tried, client_address(request)):
            status = 429
            form.add_error(None, _("There were too many tries. Wait 15 minutes, then try again."))
        elif use_code(waiting, form.cleaned_data["code"], time()):
            forget_tries(tried)
            pass_second_factor(request, waiting)
            return HttpResponseRedirect(safe_next(request, request.session.pop("desk_next", "")))
        else:
            form.add_error("code", _("This code does not fit, or was used before. Wait for the next one and type it."))
    return show(request, "second_step", {"form": form, "firm": waiting.firm.name}, status=status)
