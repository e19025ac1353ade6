"""A message to a firm's own system, signed as the Standard Webhooks specification says (symmetric, `v1`)."""

import base64
import hashlib
import hmac
import json
import secrets
from collections.abc import Mapping
from datetime import datetime

from django.utils.translation import gettext as _

from triage.jobsheet.errors import Problem, Refused

PREFIX = "whsec_"
FEWEST_BYTES, MOST_BYTES = 24, 64
USER_AGENT = "oven-fault-check/1"


def new_secret() -> str:
    return PREFIX + base64.b64encode(secrets.token_bytes(32)).decode()


def key_of(secret: str) -> bytes:
    """The bytes of a secret. Raises Refused where it is not one."""
    try:
        key = base64.b64decode(secret.removeprefix(PREFIX), validate=True)
    except ValueError:
        key = b""
    if not FEWEST_BYTES <= len(key) <= MOST_BYTES:
        sentence = _("The webhook's secret has to be whsec_ and 24 to 64 bytes in base64. Make a new one.")
        raise Refused([Problem("webhook_secret", sentence)])
    return key


def message_body(event: str, created: datetime, told: Mapping[str, object]) -> bytes:
    """The same bytes each time a message is sent again."""
    message = {"type": event, "timestamp": created.isoformat(timespec="seconds"), "data": told}
    return json.dumps(message, ensure_ascii=False, separators=(",", ":")).encode()


def headers_for(secret: str, message: str, sent: datetime, body: bytes) -> dict[str, str]:
    """What stands above the body; `message` is the id that stays the same when it is sent again."""
    stamp = str(int(sent.timestamp()))
    signed = b".".join((message.encode(), stamp.encode(), body))
    signature = base64.b64encode(hmac.new(key_of(secret), signed, hashlib.sha256).digest()).decode()
    return {
        "Content-Type": "application/json",
        "User-Agent": USER_AGENT,
        "webhook-id": message,
        "webhook-timestamp": stamp,
        "webhook-signature": f"v1,{signature}",
    }
