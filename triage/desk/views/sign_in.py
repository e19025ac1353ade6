"""Sign-in: one answer for a wrong password and for an account that does not exist."""

from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.debug import sensitive_post_parameters
from django.views.decorators.http import require_http_methods

from triage.desk.access import public
from triage.desk.authentication import (
    Throttled,
    check_password,
    current_member,
    pending_member,
    safe_next,
    sign_in_user,
)
from triage.desk.forms import SignInForm
from triage.desk.layout import DeskRequest, render_page


@sensitive_post_parameters("password")
@require_http_methods(["GET", "HEAD", "POST"])
@public
def sign_in(request: DeskRequest) -> HttpResponse:
    wanted = request.POST.get("next") or request.GET.get("next", "")
    if request.method != "POST":
        return render_page(request, "sign_in", {"form": SignInForm(), "next": wanted})
    form, status = SignInForm(request.POST), 400
    if form.is_valid():
        try:
            user = check_password(request, form.cleaned_data["account"], form.cleaned_data["password"])
        except Throttled:
            status = 429
            form.add_error(None, _("There were too many tries. Wait 15 minutes, then try again."))
        else:
            if user is not None:
                sign_in_user(request, user)
                return HttpResponseRedirect(_next_url(request, wanted))
            form.add_error(None, _("Account name and password do not fit together. Check both and try again."))
    return render_page(request, "sign_in", {"form": form, "next": wanted}, status=status)


def _next_url(request: DeskRequest, wanted: str) -> str:
    """Where the password leads: into the firm, or to what is still to be said before."""
    goal = safe_next(request, wanted)
    if current_member(request):
        return goal
    request.session["desk_next"] = goal
    return reverse("desk-verify" if pending_member(request) else "desk-firms")
