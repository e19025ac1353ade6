"""JSON as RFC 8259 has it and nothing beside: read from a request that may be endless, broken or made to hurt.

What is too large is refused before any of it is read. A name that stands twice in one object is refused, because two
programs may each take another one of them.
"""

import json
from typing import Any

from django.http import HttpRequest
from django.utils.translation import gettext as _

from triage.web.json_errors import ApiError, ErrorKind


def read_json(request: HttpRequest, max_bytes: int) -> object:
    """What the body says. Raises ApiError."""
    if request.content_type != "application/json":
        raise ApiError(
            ErrorKind.UNSUPPORTED_MEDIA_TYPE, _("Send JSON, with the header Content-Type: application/json.")
        )
    try:
        return json.loads(
            _body(request, max_bytes).decode("utf-8"),
            object_pairs_hook=_once_each,
            parse_constant=_no_constant,
            # No field of ours is a number. How large one is never matters, so it is not worked out.
            parse_int=_some_number,
            parse_float=_some_number,
        )
    except UnicodeDecodeError:
        raise _bad_request(_("The body is not text in UTF-8.")) from None
    except json.JSONDecodeError as mistake:
        params = {"line": mistake.lineno, "column": mistake.colno}
        raise _bad_request(_("The body is not JSON. Look at line %(line)s, column %(column)s.") % params) from None
    except RecursionError:
        raise _bad_request(_("The body has objects or lists too deep inside each other.")) from None


def _body(request: HttpRequest, max_bytes: int) -> bytes:
    length = request.META.get("CONTENT_LENGTH") or "0"
    detail = _("The body may have %(most)s bytes at the most.") % {"most": max_bytes}
    too_large = ApiError(ErrorKind.CONTENT_TOO_LARGE, detail)
    if length.isdecimal() and int(length[:20]) > max_bytes:
        raise too_large
    try:
        body = request.read(max_bytes + 1)
    except OSError:
        raise _bad_request(_("The body did not arrive whole. Send it again.")) from None
    if len(body) > max_bytes:
        raise too_large
    if not body:  # a server hands over nothing of a body in chunks, whose length nobody knows
        raise _bad_request(_("There is no body. Send it whole, with its length in Content-Length and not in chunks."))
    return bytes(body)


def _bad_request(sentence: str) -> ApiError:
    return ApiError(ErrorKind.BAD_REQUEST, sentence)


def _once_each(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    members = dict(pairs)
    if len(members) != len(pairs):
        raise _bad_request(_("A name stands twice in one object of the body. Leave one of the two out."))
    return members


def _no_constant(_name: str) -> object:
    raise _bad_request(_("NaN and Infinity are not JSON."))


def _some_number(_digits: str) -> int:
    return 0
