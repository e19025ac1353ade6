"""The firm's settings. A webhook's secret is shown once, on the page after it was made."""

from django.contrib import messages
from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods, require_POST

from triage.desk.access import require_role
from triage.desk.firm_settings import SettingsForm, change_settings, initial_settings, rotate_secret
from triage.desk.layout import render_page
from triage.desk.request import MemberRequest
from triage.models.firm import Role

SHOW_ONCE = "desk_webhook_secret"


@require_http_methods(["GET", "HEAD", "POST"])
@require_role(Role.OWNER)
def settings(request: MemberRequest) -> HttpResponse:
    firm = request.member.firm
    form, status = SettingsForm(initial=initial_settings(firm)), 200
    if request.method == "POST":
        form, status = SettingsForm(request.POST), 400
        if form.is_valid():
            secret = change_settings(firm=firm, values=form.cleaned_data)
            if secret:
                request.session[SHOW_ONCE] = secret
            messages.success(request, _("Settings saved."))
            return HttpResponseRedirect(reverse("desk-settings"))
        firm.refresh_from_db()
    context = {"form": form, "firm": firm, "secret": request.session.pop(SHOW_ONCE, "") if status == 200 else ""}
    return render_page(request, "settings", context, status=status)


@require_POST
@require_role(Role.OWNER)
def new_webhook_secret(request: MemberRequest) -> HttpResponse:
    firm = request.member.firm
    request.session[SHOW_ONCE] = rotate_secret(firm=firm)
    return HttpResponseRedirect(reverse("desk-settings") + "#webhook")
