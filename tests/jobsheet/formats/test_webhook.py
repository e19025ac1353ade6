"""The signature: the published example, the same one worked out by hand, and what a receiver's library verifies."""

import base64
import hashlib
import hmac
from datetime import UTC, datetime, timedelta, timezone

import pytest
from standardwebhooks.webhooks import Webhook, WebhookVerificationError

from triage.jobsheet.errors import Refused
from triage.jobsheet.formats.webhook import key_of, message_body, new_secret, signed_headers

CREATED = datetime(2026, 8, 1, 12, tzinfo=UTC)
BODY = message_body("job_sheet.created", CREATED, {"name": "مريم 👩‍🔧", "n": 1})


def now():
    return datetime.now(UTC)


def test_an_independent_library_accepts_it():
    secret = new_secret()
    message = Webhook(secret).verify(BODY, signed_headers(secret, "msg_1", now(), BODY))
    assert message == {
        "type": "job_sheet.created",
        "timestamp": "2026-08-01T12:00:00+00:00",
        "data": {"name": "مريم 👩‍🔧", "n": 1},
    }


def test_the_published_example_has_the_published_signature():
    """The example that the Standard Webhooks project gives beside its specification."""
    secret, message_id = "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw", "msg_p5jXN8AQM9LWM0D4loKWxJek"
    sent = datetime.fromtimestamp(1614265330, UTC)
    headers = signed_headers(secret, message_id, sent, '{"test": 2432232314}')
    assert headers["webhook-signature"] == "v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE="
    assert (headers["webhook-id"], headers["webhook-timestamp"]) == (message_id, "1614265330")


@pytest.mark.parametrize("hours", [0, 2, -5])
def test_it_is_the_signature_worked_out_by_hand_whatever_the_zone(hours):
    secret, sent = new_secret(), now().astimezone(timezone(timedelta(hours=hours)))
    signed = f"msg_1.{int(sent.timestamp())}.{BODY}".encode()
    digest = hmac.new(base64.b64decode(secret.removeprefix("whsec_")), signed, hashlib.sha256).digest()
    headers = signed_headers(secret, "msg_1", sent, BODY)
    assert headers["webhook-signature"] == f"v1,{base64.b64encode(digest).decode()}"
    assert headers["webhook-timestamp"] == str(int(sent.timestamp()))


@pytest.mark.parametrize("change", ["body", "webhook-id", "webhook-timestamp", "secret", "too old"])
def test_any_change_is_noticed(change):
    secret = new_secret()
    sent = now() - timedelta(minutes=10 if change == "too old" else 0)
    headers = signed_headers(secret, "msg_1", sent, BODY)
    if change == "webhook-id":
        headers[change] = "msg_2"
    if change == "webhook-timestamp":
        headers[change] = str(int(headers[change]) + 1)
    judge = Webhook(new_secret() if change == "secret" else secret)
    with pytest.raises(WebhookVerificationError):
        judge.verify(BODY + " " if change == "body" else BODY, headers)


# The specification asks for 24 to 64 random bytes.
@pytest.mark.parametrize("size", [24, 64])
def test_a_secret_of_the_specified_length_is_taken(size):
    assert len(key_of("whsec_" + base64.b64encode(bytes(size)).decode())) == size


@pytest.mark.parametrize("secret", ["", "whsec_", "whsec_short", "whsec_!!!", "whsec_" + "A" * 200, "whsec_é"])
def test_another_is_refused(secret):
    with pytest.raises(Refused, match="has to be whsec_ and 24 to 64 bytes in base64"):
        key_of(secret)
