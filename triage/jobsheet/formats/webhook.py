"""A message to a firm's own system, signed as the Standard Webhooks specification says (symmetric, `v1`)."""

import base64
import json
import secrets
from collections.abc import Mapping
from datetime import UTC, datetime

from django.utils.translation import gettext as _
from standardwebhooks import Webhook

from triage.jobsheet.errors import FieldProblem, Refused

PREFIX = "whsec_"
MIN_BYTES, MAX_BYTES = 24, 64  # the specification's
USER_AGENT = "oven-fault-check/1"


def new_secret() -> str:
    return PREFIX + base64.b64encode(secrets.token_bytes(32)).decode()


def key_of(secret: str) -> bytes:
    """The bytes of a secret. Raises Refused where it is not one."""
    try:
        key = base64.b64decode(secret.removeprefix(PREFIX), validate=True)
    except ValueError:
        key = b""
    if not MIN_BYTES <= len(key) <= MAX_BYTES:
        sentence = _("The webhook's secret has to be whsec_ and 24 to 64 bytes in base64. Make a new one.")
        raise Refused([FieldProblem("webhook_secret", sentence)])
    return key


def message_body(event: str, created: datetime, data: Mapping[str, object]) -> str:
    """The same text each time a message is sent again."""
    message = {"type": event, "timestamp": created.isoformat(timespec="seconds"), "data": data}
    return json.dumps(message, ensure_ascii=False, separators=(",", ":"))


def signed_headers(secret: str, message_id: str, sent: datetime, body: str) -> dict[str, str]:
    """What stands above the body; `message_id` stays the same when it is sent again."""
    sent = sent.astimezone(UTC)  # the library takes the clock's figures for UTC, whatever their zone
    return {
        "Content-Type": "application/json",
        "User-Agent": USER_AGENT,
        "webhook-id": message_id,
        "webhook-timestamp": str(int(sent.timestamp())),
        "webhook-signature": Webhook(key_of(secret)).sign(message_id, sent, body),
    }
