"""A person's own account: password and second factor."""

from typing import cast

from django.contrib.auth import update_session_auth_hash
from django.contrib.auth.models import User
from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.debug import sensitive_post_parameters
from django.views.decorators.http import require_http_methods

from triage.desk.access import ALL_ROLES, require_role
from triage.desk.authentication import Throttled, check_password, memberships
from triage.desk.forms import PasswordForm
from triage.desk.layout import DeskRequest, flash, render_page


@sensitive_post_parameters("old", "new")
@require_http_methods(["GET", "HEAD", "POST"])
@require_role(*ALL_ROLES)
def account(request: DeskRequest) -> HttpResponse:
    user = cast(User, request.user)
    form, status = PasswordForm(user), 200
    if request.method == "POST":
        form, status = PasswordForm(user, request.POST), 400
        if form.is_valid() and _is_own(request, user, form):
            user.set_password(form.cleaned_data["new"])
            user.save(update_fields=["password"])
            update_session_auth_hash(request, user)  # a new key here; every other session of this person ends
            flash(request, _("Your password is changed. Wherever else you were signed in, you are not any more."))
            return HttpResponseRedirect(reverse("desk-account"))
    several = memberships(user).count() > 1
    has_factor = bool(request.member and request.member.totp_secret)
    return render_page(request, "account", {"form": form, "has_factor": has_factor, "several": several}, status=status)


def _is_own(request: DeskRequest, user: User, form: PasswordForm) -> bool:
    try:
        if check_password(request, user.get_username(), form.cleaned_data["old"]) == user:
            return True
        form.add_error("old", _("This is not the password you signed in with."))
    except Throttled:
        form.add_error("old", _("There were too many tries. Wait 15 minutes, then try again."))
    return False
