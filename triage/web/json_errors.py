"""The one shape of an error in JSON: a problem document as RFC 9457 has it, with every field that is wrong.

Whoever finds the trouble raises it; one place writes it down. `errors` is always there, if only empty, so that a
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


class Kind(Enum):
    """Every kind of trouble there is: its type and its status."""

    UNREADABLE = (f"{URN}unreadable", 400)
    NO_KEY = (f"{URN}no-idempotency-key", 400)
    UNKNOWN_CALLER = (f"{URN}unknown-caller", 401)
    WRONG_ORIGIN = (f"{URN}wrong-origin", 403)
    NOT_HERE = (f"{URN}not-here", 404)
    WRONG_METHOD = (f"{URN}wrong-method", 405)
    TOO_LARGE = (f"{URN}too-large", 413)
    WRONG_TYPE = (f"{URN}wrong-type", 415)
    REFUSED = (f"{URN}refused", 422)
    KEY_TAKEN = (f"{URN}idempotency-key-taken", 422)
    TOO_MANY = (QUOTA_EXCEEDED, 429)
    OUR_FAULT = (f"{URN}our-fault", 500)

    @property
    def type(self) -> str:
        return self.value[0]

    @property
    def status(self) -> int:
        return self.value[1]


class Trouble(Exception):
    """Why a request cannot be answered. `more` are further members of the document, which the kind's type defines."""

    def __init__(
        self,
        kind: Kind,
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


def problem_response(trouble: Trouble) -> JsonResponse:
    document = {
        "type": trouble.kind.type,
        "title": title_of(trouble.kind),
        "status": trouble.kind.status,
        "detail": trouble.detail,
        "errors": [{"field": problem.field, "detail": problem.message} for problem in trouble.problems],
        **trouble.more,
    }
    headers = {"Cache-Control": "no-store", **trouble.headers}
    return JsonResponse(document, status=trouble.kind.status, content_type=PROBLEM_JSON, headers=headers)


def is_for_programs(request: HttpRequest) -> bool:
    return request.path_info.startswith(API)


def bad_request_response() -> JsonResponse:
    """What a program is answered whose request never reached a view, such as one for another site's name."""
    return problem_response(Trouble(Kind.UNREADABLE, _("This site does not answer such a request. Look at its name.")))


def title_of(kind: Kind) -> str:
    """The same words for each trouble of a kind."""
    titles = {
        Kind.UNREADABLE: _("The request cannot be read"),
        Kind.NO_KEY: _("The request has no key of its own"),
        Kind.UNKNOWN_CALLER: _("Who asks is not known"),
        Kind.WRONG_ORIGIN: _("This page may not ask"),
        Kind.NOT_HERE: _("There is nothing here"),
        Kind.WRONG_METHOD: _("This cannot be done here"),
        Kind.TOO_LARGE: _("The request is too large"),
        Kind.WRONG_TYPE: _("The request is of the wrong type"),
        Kind.REFUSED: _("The request cannot be taken as it is"),
        Kind.KEY_TAKEN: _("The key was used for another request"),
        Kind.TOO_MANY: _("There were too many requests"),
        Kind.OUR_FAULT: _("Something went wrong on this side"),
    }
    return titles[kind]
