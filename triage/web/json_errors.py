"""The one shape of an error in JSON: a problem document as RFC 9457 has it, with every field that is wrong.

Whoever finds the error raises it; one place writes it down. `errors` is always there, if only empty, so that a
program can read it without looking first. A detail is a whole sentence for whoever builds on this, and holds nothing
of what was sent: it may land in somebody's log.
"""

from collections.abc import Iterable, Mapping
from enum import Enum

from django.http import HttpRequest, JsonResponse
from django.utils.translation import gettext as _

from triage.jobsheet.errors import FieldProblem

PROBLEM_JSON = "application/problem+json"
URN = "urn:oven-fault-check:problem:"
API = "/api/"
# The name the draft on RateLimit fields gives to this kind.
QUOTA_EXCEEDED = "https://iana.org/assignments/http-problem-types#quota-exceeded"


class ErrorKind(Enum):
    """Every kind of error there is: its type and its status."""

    BAD_REQUEST = (f"{URN}bad-request", 400)
    MISSING_IDEMPOTENCY_KEY = (f"{URN}missing-idempotency-key", 400)
    UNAUTHORIZED = (f"{URN}unauthorized", 401)
    ORIGIN_NOT_ALLOWED = (f"{URN}origin-not-allowed", 403)
    NOT_FOUND = (f"{URN}not-found", 404)
    METHOD_NOT_ALLOWED = (f"{URN}method-not-allowed", 405)
    CONTENT_TOO_LARGE = (f"{URN}content-too-large", 413)
    UNSUPPORTED_MEDIA_TYPE = (f"{URN}unsupported-media-type", 415)
    INVALID_REQUEST = (f"{URN}invalid-request", 422)
    NOT_BOOKABLE = (f"{URN}not-bookable", 422)
    IDEMPOTENCY_CONFLICT = (f"{URN}idempotency-conflict", 422)
    TOO_MANY_REQUESTS = (QUOTA_EXCEEDED, 429)
    INTERNAL_ERROR = (f"{URN}internal-error", 500)

    @property
    def type(self) -> str:
        return self.value[0]

    @property
    def status(self) -> int:
        return self.value[1]


class ApiError(Exception):
    """Why a request cannot be answered. `more` are further members of the document, which the kind's type defines."""

    def __init__(
        self,
        kind: ErrorKind,
        detail: str,
        problems: Iterable[FieldProblem] = (),
        headers: Mapping[str, str] | None = None,
        more: Mapping[str, object] | None = None,
    ) -> None:
        super().__init__(detail)
        self.kind = kind
        self.detail = detail
        self.problems = tuple(problems)
        self.headers = dict(headers or {})
        self.more = dict(more or {})


def problem_response(error: ApiError) -> JsonResponse:
    document = {
        "type": error.kind.type,
        "title": title_of(error.kind),
        "status": error.kind.status,
        "detail": error.detail,
        "errors": [{"field": problem.field, "detail": problem.message} for problem in error.problems],
        **error.more,
    }
    headers = {"Cache-Control": "no-store", **error.headers}
    return JsonResponse(document, status=error.kind.status, content_type=PROBLEM_JSON, headers=headers)


def is_api_request(request: HttpRequest) -> bool:
    return request.path_info.startswith(API)


def bad_request_response() -> JsonResponse:
    """What a program is answered whose request never reached a view, such as one for another site's name."""
    return problem_response(
        ApiError(ErrorKind.BAD_REQUEST, _("This site does not answer such a request. Look at its name."))
    )


def title_of(kind: ErrorKind) -> str:
    """The same title for each error of a kind."""
    titles = {
        ErrorKind.BAD_REQUEST: _("Bad request"),
        ErrorKind.MISSING_IDEMPOTENCY_KEY: _("Idempotency-Key missing"),
        ErrorKind.UNAUTHORIZED: _("Authentication required"),
        ErrorKind.ORIGIN_NOT_ALLOWED: _("Origin not allowed"),
        ErrorKind.NOT_FOUND: _("Not found"),
        ErrorKind.METHOD_NOT_ALLOWED: _("Method not allowed"),
        ErrorKind.CONTENT_TOO_LARGE: _("Content too large"),
        ErrorKind.UNSUPPORTED_MEDIA_TYPE: _("Unsupported media type"),
        ErrorKind.INVALID_REQUEST: _("Invalid request"),
        ErrorKind.NOT_BOOKABLE: _("No visit can be booked"),
        ErrorKind.IDEMPOTENCY_CONFLICT: _("Idempotency-Key used before"),
        ErrorKind.TOO_MANY_REQUESTS: _("Too many requests"),
        ErrorKind.INTERNAL_ERROR: _("Internal error"),
    }
    return titles[kind]
