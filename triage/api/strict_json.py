"""JSON as RFC 8259 has it and nothing beside: read from a request that may be endless, broken or made to hurt.

What is too large is refused before any of it is read. A name that stands twice in one object is refused, because two
programs may each take another one of them.
"""

import json
from typing import Any

from django.http import HttpRequest
from django.utils.translation import gettext as _

from triage.web.json_errors import Kind, Trouble


def read_json(request: HttpRequest, most_bytes: int) -> object:
    """What the body says. Raises Trouble."""
    if request.content_type != "application/json":
        raise Trouble(Kind.WRONG_TYPE, _("Send JSON, with the header Content-Type: application/json."))
    try:
        return json.loads(
            _body(request, most_bytes).decode("utf-8"),
            object_pairs_hook=_once_each,
            parse_constant=_no_constant,
            # No field of ours is a number. How large one is never matters, so it is not worked out.
            parse_int=_some_number,
            parse_float=_some_number,
        )
    except UnicodeDecodeError:
        raise _unreadable(_("The body is not text in UTF-8.")) from None
    except json.JSONDecodeError as mistake:
        words = {"line": mistake.lineno, "column": mistake.colno}
        raise _unreadable(_("The body is not JSON. Look at line %(line)s, column %(column)s.") % words) from None
    except RecursionError:
        raise _unreadable(_("The body has objects or lists too deep inside each other.")) from None


def _body(request: HttpRequest, most_bytes: int) -> bytes:
    told = request.META.get("CONTENT_LENGTH") or "0"
    too_large = Trouble(Kind.TOO_LARGE, _("The body may have %(most)s bytes at the most.") % {"most": most_bytes})
    if told.isdecimal() and int(told[:20]) > most_bytes:
        raise too_large
    try:
        body = request.read(most_bytes + 1)
    except OSError:
        raise _unreadable(_("The body did not arrive whole. Send it again.")) from None
    if len(body) > most_bytes:
        raise too_large
    if not body:  # a server hands over nothing of a body in chunks, whose length nobody knows
        raise _unreadable(_("There is no body. Send it whole, with its length in Content-Length and not in chunks."))
    return bytes(body)


def _unreadable(sentence: str) -> Trouble:
    return Trouble(Kind.UNREADABLE, sentence)


def _once_each(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    told = dict(pairs)
    if len(told) != len(pairs):
        raise _unreadable(_("A name stands twice in one object of the body. Leave one of the two out."))
    return told


def _no_constant(_name: str) -> object:
    raise _unreadable(_("NaN and Infinity are not JSON."))


def _some_number(_digits: str) -> int:
    return 0
