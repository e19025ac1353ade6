"""Setting up the second factor, and switching it off with a code of its own."""

from time import time
from typing import cast

import segno
from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods

from triage.desk.access import ALL_ROLES, require_role
from triage.desk.forms import CodeForm
from triage.desk.layout import DeskRequest, flash, render_page
from triage.desk.login_throttle import record_attempt
from triage.desk.second_factor import (
    disable_second_factor,
    enable_second_factor,
    new_secret,
    provisioning_uri,
    verify_code,
)
from triage.models import Member
from triage.web.client_address import client_address

PENDING_FACTOR = "desk_secret"


@require_http_methods(["GET", "HEAD", "POST"])
@require_role(*ALL_ROLES)
def second_factor(request: DeskRequest) -> HttpResponse:
    member = cast(Member, request.member)
    secret = "" if member.totp_secret else request.session.setdefault(PENDING_FACTOR, new_secret())
    form, status = CodeForm(), 200
    if request.method == "POST":
        form, status = CodeForm(request.POST), 400
        if form.is_valid() and _changed(request, member, secret, form):
            request.session.pop(PENDING_FACTOR, None)
            request.session.cycle_key()
            return HttpResponseRedirect(reverse("desk-account"))
    context = {"form": form, "secret": _in_fours(secret), "code": _qr_code(member, secret) if secret else ""}
    return render_page(request, "second_factor", context, status=status)


def _changed(request: DeskRequest, member: Member, secret: str, form: CodeForm) -> bool:
    code, now = form.cleaned_data["code"], time()
    if not record_attempt(f"second factor of member {member.pk}", client_address(request)):
        form.add_error("code", _("There were too many tries. Wait 15 minutes, then try again."))
        return False
    if secret and enable_second_factor(member, secret, code, now):
        flash(request, _("The second factor is on. From now on, signing in asks for a code."))
        return True
    if not secret and verify_code(member, code, now):
        disable_second_factor(member)
        flash(request, _("The second factor is off."))
        return True
    form.add_error("code", _("This code does not fit, or was used before. Wait for the next one and type it."))
    return False


def _in_fours(secret: str) -> str:
    return " ".join(secret[at : at + 4] for at in range(0, len(secret), 4))


def _qr_code(member: Member, secret: str) -> str:
    address = provisioning_uri(secret, member.user.get_username(), member.firm.name)
    return segno.make(address, micro=False).svg_inline(scale=4, light="#fff", svgclass="qr", lineclass=None)
