"""The page behind an invitation's link: join with the account one is signed in with, or make a new one."""

from django.contrib import messages
from django.contrib.auth.models import User
from django.http import Http404, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.debug import sensitive_post_parameters
from django.views.decorators.http import require_http_methods

from triage.desk.access import public
from triage.desk.authentication import enter_firm, sign_in_user
from triage.desk.forms import AccountForm
from triage.desk.layout import render_page
from triage.desk.login_throttle import TOO_MANY_ATTEMPTS, record_attempt
from triage.desk.request import DeskRequest
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
        user = request.user
        member = _join_as(request, found, user) if isinstance(user, User) else _join_as_new(request, found, form)
        if member is not None:
            messages.success(request, _("Welcome to %(firm)s.") % {"firm": member.firm.name})
            return HttpResponseRedirect(reverse("desk-inbox"))
    context = {"form": form, "firm": found.firm.name, "role": Role(found.role).label}
    return render_page(request, "invitation", context, status=status)


def _join_as(request: DeskRequest, found: Invitation, user: User) -> Member | None:
    member = join(invitation=found, user=user)
    if member is None:
        messages.error(request, _("You already belong to this firm, or the link has been used."))
    else:
        enter_firm(request, member)
    return member


def _join_as_new(request: DeskRequest, found: Invitation, form: AccountForm) -> Member | None:
    if not record_attempt(f"invitation {found.pk}", client_address(request)):
        form.add_error(None, TOO_MANY_ATTEMPTS)
        return None
    if not form.is_valid():
        return None
    username, password = form.cleaned_data["account"], form.cleaned_data["password"]
    member = join_with_new_account(invitation=found, username=username, password=password)
    if member is None:
        form.add_error(None, _("The username or the link has been taken meanwhile. Open the link again."))
    else:
        sign_in_user(request, member.user)
    return member
