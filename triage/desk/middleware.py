"""Sessions, sign-in, messages and form tokens for the firm's desk alone.

A question page needs none of the four, and a cookie or a database query there would cost every householder privacy
and time. So they run for addresses under `/desk/` and for no other.
"""

from collections.abc import Callable, Mapping, Sequence
from typing import Any, cast

from django.contrib.auth.middleware import AuthenticationMiddleware
from django.contrib.messages.middleware import MessageMiddleware
from django.contrib.sessions.middleware import SessionMiddleware
from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.middleware.csrf import CsrfViewMiddleware

DESK_PATH = "/desk/"

Handler = Callable[[HttpRequest], HttpResponseBase]
View = Callable[..., HttpResponseBase]


class SessionsForDesk:
    def __init__(self, get_response: Handler) -> None:
        self.without_sessions = get_response
        self.csrf = CsrfViewMiddleware(get_response)
        self.with_sessions = cast(Handler, SessionMiddleware(AuthenticationMiddleware(MessageMiddleware(self.csrf))))

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        return self.with_sessions(request) if is_desk(request) else self.without_sessions(request)

    def process_view(
        self, request: HttpRequest, view: View, args: Sequence[Any], kwargs: Mapping[str, Any]
    ) -> HttpResponseBase | None:
        """Where Django checks the form token; it knows this class only, so the check is handed on."""
        return self.csrf.process_view(request, view, tuple(args), dict(kwargs)) if is_desk(request) else None


def is_desk(request: HttpRequest) -> bool:
    return request.path_info.startswith(DESK_PATH)
