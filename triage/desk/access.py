"""Who may open what at the desk. Every view states it with one of these decorators and with nothing else.

    @public                     anybody: sign-in, and links that are a secret themselves
    @signed_in                  whoever has passed the password, in whichever firm
    @require_role(Role.OWNER)   members of the firm the session is in, with one of these roles
    @require_site_staff         who runs the site and its knowledge

A page of the desk is never stored. What another firm has is not found, in the same words as what nobody has.
"""

from collections.abc import Callable
from functools import wraps
from typing import Concatenate, ParamSpec, TypeVar, cast
from urllib.parse import urlencode

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect
from django.http.response import HttpResponseBase
from django.urls import reverse
from django.utils.cache import add_never_cache_headers, patch_cache_control

from triage.desk.authentication import current_member, pending_member
from triage.desk.layout import render_page
from triage.desk.request import DeskRequest, MemberRequest, UserRequest
from triage.jobsheet.access import NotFound
from triage.models.firm import Role

P = ParamSpec("P")
R = TypeVar("R", bound=HttpRequest)
DeskView = Callable[Concatenate[R, P], HttpResponseBase]
Guard = Callable[[DeskRequest], HttpResponse | None]

ALL_ROLES = (Role.OWNER, Role.REPAIRER, Role.AGENT)


def public(view: DeskView[DeskRequest, P]) -> DeskView[HttpRequest, P]:
    return _guarded(view, lambda _request: None)


def signed_in(view: DeskView[UserRequest, P]) -> DeskView[HttpRequest, P]:
    return _guarded(view, _redirect_to_sign_in)


def require_role(*roles: Role) -> Callable[[DeskView[MemberRequest, P]], DeskView[HttpRequest, P]]:
    """Members with one of these roles; `request.member` is the one who asks."""

    def guard(request: DeskRequest) -> HttpResponse | None:
        if request.member is None:
            verify_or_choose = reverse("desk-verify" if pending_member(request) else "desk-firms")
            return _redirect_to_sign_in(request) or HttpResponseRedirect(verify_or_choose)
        return None if request.member.role in roles else _access_denied(request)

    return lambda view: _guarded(view, guard)


def require_site_staff(view: DeskView[UserRequest, P]) -> DeskView[HttpRequest, P]:
    def guard(request: DeskRequest) -> HttpResponse | None:
        return _redirect_to_sign_in(request) or (None if request.user.is_staff else _access_denied(request))

    return _guarded(view, guard)


def _guarded(view: DeskView[R, P], guard: Guard) -> DeskView[HttpRequest, P]:
    @wraps(view)
    def guarded(request: HttpRequest, /, *args: P.args, **kwargs: P.kwargs) -> HttpResponseBase:
        desk_request = cast(DeskRequest, request)
        desk_request.member = current_member(request)
        response: HttpResponseBase | None = guard(desk_request)
        if response is None:
            try:
                response = view(cast(R, request), *args, **kwargs)
            except (NotFound, Http404):
                response = render_page(desk_request, "page_not_found", {}, status=404)
        add_never_cache_headers(response)
        patch_cache_control(response, private=True, no_store=True)
        # Without any referrer a browser sends its forms as from nowhere, and the check of the form token refuses them.
        response.headers["Referrer-Policy"] = "same-origin"
        return response

    return guarded


def _redirect_to_sign_in(request: HttpRequest) -> HttpResponse | None:
    """A page comes back after signing in; a form does not, because it was not sent by who signs in now."""
    if request.user.is_authenticated:
        return None
    back = f"?{urlencode({'next': request.get_full_path()})}" if request.method in ("GET", "HEAD") else ""
    return HttpResponseRedirect(f"{reverse('desk-sign-in')}{back}")


def _access_denied(request: DeskRequest) -> HttpResponse:
    return render_page(request, "access_denied", {}, status=403)
