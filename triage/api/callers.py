"""Who asks for something of a firm: its own system with a key, or a page of one of its origins.

A key of another firm opens nothing, in the same words as a firm that does not exist. A key that is shown has to be
good, whatever page it comes from. An origin proves little, since only browsers tell it truly; what it opens is no more
than the firm's own form, which anybody may fill in, and it is counted by address.
"""

from collections.abc import Callable
from dataclasses import dataclass
from functools import wraps
from typing import Any

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.utils.translation import gettext as _

from triage.models import ApiKey, Firm
from triage.web.api_keys import authenticate_key
from triage.web.client_address import client_address
from triage.web.framing import good_origins
from triage.web.json_errors import ApiError, ErrorKind
from triage.web.rate_limit import Allowance, Policy, count_request, network_of

PER_KEY = Policy("key", quota=240, seconds=60)
PER_ADDRESS = Policy("address", quota=60, seconds=600)
SCHEME = "bearer"

View = Callable[..., HttpResponseBase]


@dataclass(frozen=True)
class Caller:
    """`key` is None where a page of the firm asks."""

    firm: Firm
    key: ApiKey | None


def for_firm(*, pages: bool) -> Callable[[View], View]:
    """Gives the view its Caller in place of the firm's name; `pages` whether the firm's pages may ask without a key."""

    def wrap(view: View) -> View:
        @wraps(view)
        def answered(request: HttpRequest, firm: str, **kwargs: Any) -> HttpResponseBase:
            key = authenticate_key(_bearer_token(request))
            allowance = _count(request, key)
            try:
                if allowance.exceeded:
                    raise _too_many(allowance)
                response = view(request, _caller(request, firm, key, pages), **kwargs)
            except ApiError as error:
                error.headers.update(allowance.headers())
                raise
            for name, value in allowance.headers().items():
                response.headers[name] = value
            return response

        return answered

    return wrap


def is_page_of(firm: Firm | None, origin: str) -> bool:
    return firm is not None and origin in good_origins(firm.origins)


def _bearer_token(request: HttpRequest) -> str:
    """The key that is shown; nothing where the header is of another kind."""
    scheme, _space, token = request.headers.get("Authorization", "").partition(" ")
    return token.strip() if scheme.lower() == SCHEME else ""


def _count(request: HttpRequest, key: ApiKey | None) -> Allowance:
    if key:
        return count_request(PER_KEY, str(key.pk))
    return count_request(PER_ADDRESS, network_of(client_address(request)))


def _caller(request: HttpRequest, slug: str, key: ApiKey | None, pages: bool) -> Caller:
    if key:
        if key.firm.slug != slug:
            raise not_found_error()
        return Caller(key.firm, key)
    origin = request.headers.get("Origin", "")
    if not pages or not origin or "Authorization" in request.headers:
        raise _unauthorized()
    firm = Firm.objects.filter(slug=slug).first()
    if firm is None or not is_page_of(firm, origin):
        sentence = _("Pages of this origin may not ask here. The firm lists its origins in its settings.")
        raise ApiError(ErrorKind.ORIGIN_NOT_ALLOWED, sentence)
    return Caller(firm, None)


def not_found_error() -> ApiError:
    return ApiError(ErrorKind.NOT_FOUND, _("There is nothing at this address that you may see. Look at it again."))


def _unauthorized() -> ApiError:
    sentence = _("Send one of the firm's keys that still works, as in: Authorization: Bearer ofc_...")
    return ApiError(ErrorKind.UNAUTHORIZED, sentence, headers={"WWW-Authenticate": 'Bearer realm="job sheets"'})


def _too_many(allowance: Allowance) -> ApiError:
    params = {"seconds": allowance.reset_after}
    sentence = _("There were too many requests in a short time. Try again in %(seconds)s seconds.") % params
    return ApiError(ErrorKind.TOO_MANY_REQUESTS, sentence, more={"violated-policies": [allowance.policy.name]})
