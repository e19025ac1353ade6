"""A person's own account: the password, and the second factor of the firm they are in."""

from time import time

import segno
from django.contrib import messages
from django.contrib.auth import update_session_auth_hash
from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.debug import sensitive_post_parameters
from django.views.decorators.http import require_http_methods

from triage.desk.access import ALL_ROLES, require_role
from triage.desk.authentication import Throttled, check_password, memberships
from triage.desk.forms import CodeForm, PasswordForm
from triage.desk.layout import render_page
from triage.desk.login_throttle import TOO_MANY_ATTEMPTS, record_attempt
from triage.desk.request import MemberRequest
from triage.desk.second_factor import (
    WRONG_CODE,
    disable_second_factor,
    enable_second_factor,
    new_secret,
    provisioning_uri,
    verify_code,
)
from triage.models import Member
from triage.web.client_address import client_address

PENDING_FACTOR = "desk_secret"


@sensitive_post_parameters("old", "new")
@require_http_methods(["GET", "HEAD", "POST"])
@require_role(*ALL_ROLES)
def account(request: MemberRequest) -> HttpResponse:
    user = request.user
    form, status = PasswordForm(user), 200
    if request.method == "POST":
        form, status = PasswordForm(user, request.POST), 400
        if form.is_valid() and _knows_password(request, form):
            user.set_password(form.cleaned_data["new"])
            user.save(update_fields=["password"])
            update_session_auth_hash(request, user)  # a new key here; every other session of this person ends
            messages.success(request, _("Password changed. You have been signed out everywhere else."))
            return HttpResponseRedirect(reverse("desk-account"))
    several = memberships(user).count() > 1
    context = {"form": form, "has_factor": bool(request.member.totp_secret), "several": several}
    return render_page(request, "account", context, status=status)


def _knows_password(request: MemberRequest, form: PasswordForm) -> bool:
    try:
        if check_password(request, request.user.get_username(), form.cleaned_data["old"]) == request.user:
            return True
        form.add_error("old", _("This is not your current password."))
    except Throttled:
        form.add_error("old", TOO_MANY_ATTEMPTS)
    return False


@require_http_methods(["GET", "HEAD", "POST"])
@require_role(*ALL_ROLES)
def second_factor(request: MemberRequest) -> HttpResponse:
    """Sets the second factor up, or turns it off with a code of its own."""
    member = request.member
    secret = "" if member.totp_secret else request.session.setdefault(PENDING_FACTOR, new_secret())
    form, status = CodeForm(), 200
    if request.method == "POST":
        form, status = CodeForm(request.POST), 400
        if form.is_valid() and _changed(request, secret, form):
            request.session.pop(PENDING_FACTOR, None)
            request.session.cycle_key()
            return HttpResponseRedirect(reverse("desk-account"))
    context = {"form": form, "secret": _in_fours(secret), "code": _qr_code(member, secret) if secret else ""}
    return render_page(request, "second_factor", context, status=status)


def _changed(request: MemberRequest, secret: str, form: CodeForm) -> bool:
    member, code, now = request.member, form.cleaned_data["code"], time()
    if not record_attempt(f"second factor of member {member.pk}", client_address(request)):
        form.add_error("code", TOO_MANY_ATTEMPTS)
        return False
    if secret and enable_second_factor(member, secret, code, now):
        messages.success(request, _("Two-factor authentication is on. From now on, signing in asks for a code."))
        return True
    if not secret and verify_code(member, code, now):
        disable_second_factor(member)
        messages.success(request, _("Two-factor authentication is off."))
        return True
    form.add_error("code", WRONG_CODE)
    return False


def _in_fours(secret: str) -> str:
    return " ".join(secret[at : at + 4] for at in range(0, len(secret), 4))


def _qr_code(member: Member, secret: str) -> str:
    address = provisioning_uri(secret, member.user.get_username(), member.firm.name)
    return segno.make(address, micro=False).svg_inline(scale=4, light="#fff", svgclass="qr", lineclass=None)
