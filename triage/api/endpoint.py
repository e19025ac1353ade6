"""What every address of the API has in common: its methods, and that whatever goes wrong is answered in the one shape.

None of them needs a form token. Django's guard against forged forms protects a cookie that a browser adds by itself,
and no address here reads a cookie: who asks shows a key, or is a page of one of the firm's own origins.
"""

import logging
from collections.abc import Callable
from functools import wraps
from typing import Any

from django.http import HttpRequest, HttpResponse
from django.http.response import HttpResponseBase
from django.utils.translation import gettext as _
from django.views.decorators.csrf import csrf_exempt

from triage.web.json_errors import ApiError, ErrorKind, problem_response

log = logging.getLogger(__name__)

View = Callable[..., HttpResponseBase]


def endpoint(*methods: str) -> Callable[[View], View]:
    """A view for these methods; OPTIONS is answered here."""

    def wrap(view: View) -> View:
        @csrf_exempt
        @wraps(view)
        def answered(request: HttpRequest, *args: Any, **kwargs: Any) -> HttpResponseBase:
            try:
                return _answer(request, view, methods, args, kwargs)
            except ApiError as error:
                return problem_response(error)
            except Exception:
                log.exception("an address of the API failed: %s", view.__name__)
                detail = _("The error is on our side and was logged. Try again later.")
                return problem_response(ApiError(ErrorKind.INTERNAL_ERROR, detail))

        return answered

    return wrap


def public_get(view: View) -> View:
    """A view that anybody may read, from pages of any origin too: it holds no secret, and no cookie counts."""

    @wraps(view)
    def answered(request: HttpRequest, *args: Any, **kwargs: Any) -> HttpResponseBase:
        response = endpoint("GET", "HEAD")(view)(request, *args, **kwargs)
        response.headers["Access-Control-Allow-Origin"] = "*"
        response.headers["Cross-Origin-Resource-Policy"] = "cross-origin"
        return response

    return csrf_exempt(answered)


def _answer(
    request: HttpRequest, view: View, methods: tuple[str, ...], args: tuple[Any, ...], kwargs: dict[str, Any]
) -> HttpResponseBase:
    allow = ", ".join((*methods, "OPTIONS"))
    if request.method == "OPTIONS":
        return HttpResponse(status=204, headers={"Allow": allow})
    if request.method not in methods:
        detail = _("Use one of these methods here: %(methods)s.") % {"methods": allow}
        raise ApiError(ErrorKind.METHOD_NOT_ALLOWED, detail, headers={"Allow": allow})
    return view(request, *args, **kwargs)
