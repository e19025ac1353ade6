"""A hand-over's key, and the fingerprint that tells a re-send from another request under the same key."""

import hashlib
import json
import re
from dataclasses import asdict
from datetime import datetime

from django.utils.translation import gettext as _

from triage.engine import Check
from triage.jobsheet.booking import Booking
from triage.jobsheet.errors import FieldProblem, Refused

KEY = re.compile(r"[\x21-\x7e]{8,200}")


def check_key(key: str) -> None:
    if not KEY.fullmatch(key):
        sentence = _("The key of this request has to be 8 to 200 printable ASCII characters without spaces.")
        raise Refused([FieldProblem("idempotency_key", sentence)])


def request_fingerprint(check: Check, booking: Booking) -> str:
    fields = asdict(booking)
    photo = hashlib.sha256(booking.photo or b"").hexdigest()
    whole = [[list(pair) for pair in check.answers.items()], check.region.id, {**fields, "photo": photo}]
    text = json.dumps(whole, sort_keys=True, default=_time)
    return hashlib.sha256(text.encode()).hexdigest()


def _time(value: object) -> str:
    if isinstance(value, datetime):
        return value.isoformat()
    raise TypeError(f"{type(value).__name__} has no print.")
