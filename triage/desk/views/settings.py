"""The firm's settings. A webhook's secret is shown once, on the page after it was made."""

from typing import cast

from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods, require_POST

from triage.desk.access import may
from triage.desk.firm_settings import change_settings, rotate_secret
from triage.desk.settings_form import SettingsForm, settings_of
from triage.desk.showing import DeskRequest, say_next, show
from triage.models import Member
from triage.models.firm import Role

ONCE = "desk_webhook_secret"


@require_http_methods(["GET", "HEAD", "POST"])
@may(Role.OWNER)
def settings(request: DeskRequest) -> HttpResponse:
    firm = cast(Member, request.member).firm
    form, status = SettingsForm(initial=settings_of(firm)), 200
    if request.method == "POST":
        form, status = SettingsForm(request.POST), 400
        if form.is_valid():
            secret = change_settings(firm=firm, told=form.cleaned_data)
            if secret:
                request.session[ONCE] = secret
            say_next(request, _("The settings are kept."))
            return HttpResponseRedirect(reverse("desk-settings"))
        firm.refresh_from_db()
    context = {"form": form, "firm": firm, "secret": request.session.pop(ONCE, "") if status == 200 else ""}
    return show(request, "settings", context, status=status)


@require_POST
@may(Role.OWNER)
def new_webhook_secret(request: DeskRequest) -> HttpResponse:
    firm = cast(Member, request.member).firm
    request.session[ONCE] = rotate_secret(firm=firm)
    return HttpResponseRedirect(reverse("desk-settings") + "#webhook")
