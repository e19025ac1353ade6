"""The signature, verified by the Standard Webhooks project's own library."""

import base64
from datetime import UTC, datetime, timedelta

import pytest
from standardwebhooks.webhooks import Webhook, WebhookVerificationError

from triage.jobsheet.errors import Refused
from triage.jobsheet.formats.webhook import headers_for, key_of, message_body, new_secret

CREATED = datetime(2026, 8, 1, 12, tzinfo=UTC)
BODY = message_body("job_sheet.created", CREATED, {"name": "مريم 👩‍🔧", "n": 1})


def now():
    return datetime.now(UTC)


def test_an_independent_library_accepts_it():
    secret = new_secret()
    told = Webhook(secret).verify(BODY, headers_for(secret, "msg_1", now(), BODY))
    assert told == {
        "type": "job_sheet.created",
        "timestamp": "2026-08-01T12:00:00+00:00",
        "data": {"name": "مريم 👩‍🔧", "n": 1},
    }


def test_it_is_the_same_signature_as_the_librarys():
    secret, sent = new_secret(), now()
    ours = headers_for(secret, "msg_1", sent, BODY)["webhook-signature"]
    assert ours == Webhook(secret).sign("msg_1", sent, BODY.decode())


@pytest.mark.parametrize("change", ["body", "webhook-id", "webhook-timestamp", "secret", "too old"])
def test_any_change_is_noticed(change):
    secret = new_secret()
    sent = now() - timedelta(minutes=10 if change == "too old" else 0)
    headers = headers_for(secret, "msg_1", sent, BODY)
    if change == "webhook-id":
        headers[change] = "msg_2"
    if change == "webhook-timestamp":
        headers[change] = str(int(headers[change]) + 1)
    judge = Webhook(new_secret() if change == "secret" else secret)
    with pytest.raises(WebhookVerificationError):
        judge.verify(BODY + b" " if change == "body" else BODY, headers)


# The specification asks for 24 to 64 random bytes.
@pytest.mark.parametrize("size", [24, 64])
def test_a_secret_of_the_specified_length_is_taken(size):
    assert len(key_of("whsec_" + base64.b64encode(bytes(size)).decode())) == size


@pytest.mark.parametrize("secret", ["", "whsec_", "whsec_short", "whsec_!!!", "whsec_" + "A" * 200, "whsec_é"])
def test_another_is_refused(secret):
    with pytest.raises(Refused, match="has to be whsec_ and 24 to 64 bytes in base64"):
        key_of(secret)
