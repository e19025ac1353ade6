"""Sign-out, by a form so that no link on another site can do it."""

from django.contrib.auth import logout
from django.http import HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_POST

from triage.desk.access import public
from triage.desk.layout import DeskRequest


@require_POST
@public
def sign_out(request: DeskRequest) -> HttpResponse:
    logout(request)
    return HttpResponseRedirect(reverse("desk-sign-in"))
