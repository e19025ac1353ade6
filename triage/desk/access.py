"""Who may open what at the desk. Every view states it with one of these decorators and with nothing else.

    @open_door          anybody: sign-in, and links that are a secret themselves
    @signed_in          whoever has passed the password, in whichever firm
    @may(Role.OWNER)    members of the firm the session is in, with one of these roles
    @site_staff         who runs the site and its knowledge

A page of the desk is never stored. What another firm has is not there, in the same words as what nobody has.
"""

from collections.abc import Callable, Iterable
from functools import wraps
from typing import Any, cast
from urllib.parse import urlencode

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect
from django.http.response import HttpResponseBase
from django.urls import URLPattern, reverse
from django.utils.cache import add_never_cache_headers, patch_cache_control

from triage.desk.authentication import current_member, pending_member
from triage.desk.layout import DeskRequest, render_page
from triage.jobsheet.opening import NotFound
from triage.models.firm import Role

View = Callable[..., HttpResponseBase]
ALL_ROLES = (Role.OWNER, Role.REPAIRER, Role.AGENT)


def public(view: View) -> View:
    return _guarded(view, lambda _request: None)


def signed_in(view: View) -> View:
    return _guarded(view, lambda request: None if request.user.is_authenticated else _to_sign_in(request))


def require_role(*roles: Role) -> Callable[[View], View]:
    """Members with one of these roles; `request.member` is the one who asks."""

    def guard(request: DeskRequest) -> HttpResponse | None:
        if not request.user.is_authenticated:
            return _to_sign_in(request)
        if request.member is None:
            return HttpResponseRedirect(reverse("desk-verify" if pending_member(request) else "desk-firms"))
        return None if request.member.role in roles else _access_denied(request)

    return lambda view: _guarded(view, guard)


def require_site_staff(view: View) -> View:
    def guard(request: DeskRequest) -> HttpResponse | None:
        if not request.user.is_authenticated:
            return _to_sign_in(request)
        return None if request.user.is_staff else _access_denied(request)

    return _guarded(view, guard)


def protect(patterns: Iterable[URLPattern], *roles: Role) -> list[URLPattern]:
    """The same addresses for these roles only. They have to lie under /desk/, where there are sessions."""
    return [URLPattern(p.pattern, require_role(*roles)(p.callback), p.default_args, p.name) for p in patterns]


def _guarded(view: View, guard: Callable[[DeskRequest], HttpResponse | None]) -> View:
    @wraps(view)
    def guarded(request: HttpRequest, *args: Any, **kwargs: Any) -> HttpResponseBase:
        asked = cast(DeskRequest, request)
        asked.member = current_member(request)
        response = guard(asked) or _answer(view, asked, *args, **kwargs)
        add_never_cache_headers(response)
        patch_cache_control(response, private=True, no_store=True)
        # Without any referrer a browser sends its forms as from nowhere, and the check of the form token refuses them.
        response.headers["Referrer-Policy"] = "same-origin"
        return response

    return guarded


def _answer(view: View, request: DeskRequest, *args: Any, **kwargs: Any) -> HttpResponseBase:
    try:
        return view(request, *args, **kwargs)
    except (NotFound, Http404):
        return render_page(request, "not_here", {}, status=404)


def _to_sign_in(request: HttpRequest) -> HttpResponse:
    """A page comes back after signing in; a form does not, because it was not sent by who signs in now."""
    back = f"?{urlencode({'next': request.get_full_path()})}" if request.method in ("GET", "HEAD") else ""
    return HttpResponseRedirect(f"{reverse('desk-sign-in')}{back}")


def _access_denied(request: DeskRequest) -> HttpResponse:
    return render_page(request, "not_yours", {}, status=403)
