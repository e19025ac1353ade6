"""The page behind an invitation's link: join with the account one is signed in with, or make a new one."""

from typing import cast

from django.contrib.auth.models import User
from django.http import Http404, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.debug import sensitive_post_parameters
from django.views.decorators.http import require_http_methods

from triage.desk.access import public
from triage.desk.authentication import enter_firm, sign_in_user
from triage.desk.forms import AccountForm
from triage.desk.layout import DeskRequest, flash, render_page
from triage.desk.login_throttle import record_attempt
from triage.desk.staff import join, join_with_new_account, open_invitation
from triage.models import Invitation, Member
from triage.models.firm import Role
from triage.web.client_address import client_address


@sensitive_post_parameters("password")
@require_http_methods(["GET", "HEAD", "POST"])
@public
def invitation(request: DeskRequest, token: str) -> HttpResponse:
    found = open_invitation(token)
    if found is None:
        raise Http404
    form, status = AccountForm(), 200
    if request.method == "POST":
        form, status = AccountForm(request.POST), 400
        member = _as_oneself(request, found) if request.user.is_authenticated else _as_new(request, found, form)
        if member is not None:
            return HttpResponseRedirect(_inside(request, member))
    context = {"form": form, "firm": found.firm.name, "role": Role(found.role).label}
    return render_page(request, "invitation", context, status=status)


def _as_oneself(request: DeskRequest, found: Invitation) -> Member | None:
    member = join(invitation=found, user=cast(User, request.user))
    if member is None:
        flash(request, _("You belong to this firm already, or the link was used meanwhile."))
    else:
        enter_firm(request, member)
    return member


def _as_new(request: DeskRequest, found: Invitation, form: AccountForm) -> Member | None:
    if not record_attempt(f"invitation {found.pk}", client_address(request)):
        form.add_error(None, _("There were too many tries. Wait 15 minutes, then try again."))
        return None
    if not form.is_valid():
        return None
    told = form.cleaned_data
    member = join_with_new_account(invitation=found, username=told["account"], password=told["password"])
    if member is None:
        form.add_error(None, _("The name or the link was taken meanwhile. Open the link again."))
    else:
        sign_in_user(request, member.user)
    return member


def _inside(request: DeskRequest, member: Member) -> str:
    flash(request, _("You are in. Welcome to %(firm)s.") % {"firm": member.firm.name})
    return reverse("desk-inbox")
