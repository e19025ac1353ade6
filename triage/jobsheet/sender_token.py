"""The token in the link with which the sender can see and delete a job sheet.

It is derived from the site's key, so that a re-send gets the same link again; only its hash is kept, so that the
database opens nothing. A key that was replaced still serves while it is listed in SECRET_KEY_FALLBACKS.
"""

import hashlib

from django.conf import settings
from django.utils.crypto import constant_time_compare, salted_hmac

SALT = "triage.jobsheet.sender_token"


def new_token(reference: str) -> str:
    return _token(reference, settings.SECRET_KEY)


def rebuild_token(reference: str, token_hash: str) -> str | None:
    """The token given out before; None once the site's key of that time is forgotten."""
    keys = (settings.SECRET_KEY, *settings.SECRET_KEY_FALLBACKS)
    return next((t for t in (_token(reference, key) for key in keys) if is_token(t, token_hash)), None)


def hash_of(token: str) -> str:
    return hashlib.sha256(token.encode("utf-8", "replace")).hexdigest()


def is_token(token: str, token_hash: str) -> bool:
    return constant_time_compare(hash_of(token), token_hash)


def _token(reference: str, key: str | bytes) -> str:
    return salted_hmac(SALT, reference, secret=key, algorithm="sha256").hexdigest()[:40]
