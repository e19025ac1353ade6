"""Setting up the second factor, and switching it off with a code of its own."""

from time import time
from typing import cast

import segno
from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods

from triage.desk.access import EVERYBODY_OF_THE_FIRM, may
from triage.desk.forms import CodeForm
from triage.desk.second_factor import authenticator_address, new_secret, switch_off, switch_on, use_code
from triage.desk.showing import DeskRequest, say_next, show
from triage.desk.tries import begin_try
from triage.models import Member
from triage.web.client_address import client_address

BEGUN = "desk_secret"


@require_http_methods(["GET", "HEAD", "POST"])
@may(*EVERYBODY_OF_THE_FIRM)
def second_factor(request: DeskRequest) -> HttpResponse:
    member = cast(Member, request.member)
    secret = "" if member.totp_secret else request.session.setdefault(BEGUN, new_secret())
    form, status = CodeForm(), 200
    if request.method == "POST":
        form, status = CodeForm(request.POST), 400
        if form.is_valid() and _done(request, member, secret, form):
            request.session.pop(BEGUN, None)
            request.session.cycle_key()
            return HttpResponseRedirect(reverse("desk-account"))
    context = {"form": form, "secret": _in_fours(secret), "code": _drawn(member, secret) if secret else ""}
    return show(request, "second_factor", context, status=status)


def _done(request: DeskRequest, member: Member, secret: str, form: CodeForm) -> bool:
    code, now = form.cleaned_data["code"], time()
    if not begin_try(f"second factor of member {member.pk}", client_address(request)):
        form.add_error("code", _("There were too many tries. Wait 15 minutes, then try again."))
        return False
    if secret and switch_on(member, secret, code, now):
        say_next(request, _("The second factor is on. From now on, signing in asks for a code."))
        return True
    if not secret and use_code(member, code, now):
        switch_off(member)
        say_next(request, _("The second factor is off."))
        return True
    form.add_error("code", _("This code does not fit, or was used before. Wait for the next one and type it."))
    return False


def _in_fours(secret: str) -> str:
    return " ".join(secret[at : at + 4] for at in range(0, len(secret), 4))


def _drawn(member: Member, secret: str) -> str:
    address = authenticator_address(secret, member.user.get_username(), member.firm.name)
    return segno.make(address, micro=False).svg_inline(scale=4, light="#fff", svgclass="qr", lineclass=None)
