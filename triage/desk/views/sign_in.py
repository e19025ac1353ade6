"""Signing in and out: the password, then the firm, then that firm's second factor where one is set up."""

from time import time

from django.contrib.auth import logout
from django.http import Http404, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.debug import sensitive_post_parameters
from django.views.decorators.http import require_http_methods, require_POST

from triage.desk.access import public, signed_in
from triage.desk.authentication import (
    Throttled,
    check_password,
    current_member,
    enter_after_second_factor,
    enter_firm,
    memberships,
    pending_member,
    safe_next,
    sign_in_user,
)
from triage.desk.forms import CodeForm, SignInForm
from triage.desk.layout import render_page
from triage.desk.login_throttle import TOO_MANY_ATTEMPTS, clear_attempts, record_attempt
from triage.desk.request import DeskRequest, UserRequest
from triage.desk.second_factor import WRONG_CODE, verify_code
from triage.web.client_address import client_address

NEXT = "desk_next"


@sensitive_post_parameters("password")
@require_http_methods(["GET", "HEAD", "POST"])
@public
def sign_in(request: DeskRequest) -> HttpResponse:
    """One answer for a wrong password and for an account that does not exist."""
    wanted = request.POST.get("next") or request.GET.get("next", "")
    if request.method != "POST":
        return render_page(request, "sign_in", {"form": SignInForm(), "next": wanted})
    form, status = SignInForm(request.POST), 400
    if form.is_valid():
        try:
            user = check_password(request, form.cleaned_data["account"], form.cleaned_data["password"])
        except Throttled:
            status = 429
            form.add_error(None, TOO_MANY_ATTEMPTS)
        else:
            if user is not None:
                sign_in_user(request, user)
                return HttpResponseRedirect(_next_url(request, wanted))
            form.add_error(None, _("The username or password is wrong. Check both and try again."))
    return render_page(request, "sign_in", {"form": form, "next": wanted}, status=status)


def _next_url(request: DeskRequest, wanted: str) -> str:
    """Where the password leads: into the firm, or to what is still to be said before."""
    goal = safe_next(request, wanted)
    if current_member(request):
        return goal
    request.session[NEXT] = goal
    return reverse("desk-verify" if pending_member(request) else "desk-firms")


@require_http_methods(["GET", "HEAD", "POST"])
@signed_in
def choose_firm(request: UserRequest) -> HttpResponse:
    members = memberships(request.user)
    if request.method != "POST":
        return render_page(request, "choose_firm", {"members": members})
    chosen = next((member for member in members if str(member.pk) == request.POST.get("member")), None)
    if chosen is None:
        raise Http404
    if not enter_firm(request, chosen):
        return HttpResponseRedirect(reverse("desk-verify"))
    return HttpResponseRedirect(safe_next(request, request.session.pop(NEXT, "")))


@require_http_methods(["GET", "HEAD", "POST"])
@signed_in
def verify_two_factor(request: UserRequest) -> HttpResponse:
    """The second factor of the firm that is being entered."""
    member = pending_member(request)
    if member is None:
        return HttpResponseRedirect(reverse("desk-firms"))
    form, status = CodeForm(), 200
    if request.method == "POST":
        form, status = CodeForm(request.POST), 400
        if form.is_valid():
            attempted = f"second factor of member {member.pk}"
            if not record_attempt(attempted, client_address(request)):
                status = 429
                form.add_error(None, TOO_MANY_ATTEMPTS)
            elif verify_code(member, form.cleaned_data["code"], time()):
                clear_attempts(attempted)
                enter_after_second_factor(request, member)
                return HttpResponseRedirect(safe_next(request, request.session.pop(NEXT, "")))
            else:
                form.add_error("code", WRONG_CODE)
    return render_page(request, "verify_two_factor", {"form": form, "firm": member.firm.name}, status=status)


@require_POST
@public
def sign_out(request: DeskRequest) -> HttpResponse:
    """By a form, so that no link on another site can do it."""
    logout(request)
    return HttpResponseRedirect(reverse("desk-sign-in"))
