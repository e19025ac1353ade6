"""A firm's own system and a page of the firm, asking; and a body that is right, to change one thing of by name."""

import json

from tests.firm_builders import ANSWERS, make_firm
from triage.web.api_keys import make_key

PAGE = "https://www.hearth.example"
KEY = "a-key-of-its-own-0001"
CONSENT = "Hearth & Hob Repairs may have my answers and call me about this repair."


def body_of(**changes):
    booking = {"name": "Alex Grey", "telephone": "020 7946 0000", "consent": CONSENT}
    return {"region": "gb-eng", "answers": [list(pair) for pair in ANSWERS], "booking": booking, **changes}


def booked(**changes):
    """A body with a booking that is changed by name."""
    return body_of(booking={**body_of()["booking"], **changes})


def firm_with_key(**changes):
    firm = make_firm(origins=[PAGE], **changes)
    return firm, make_key(firm=firm, name="telephone menu")[1]


def address(firm, reference=""):
    return f"/api/v1/firms/{firm.slug}/job-sheets" + (f"/{reference}" if reference else "")


def bearer(text):
    return {"Authorization": f"Bearer {text}"}


def send(client, firm, data=None, key=KEY, **headers):
    """A POST; `told` may be JSON in bytes or what becomes JSON."""
    content = data if isinstance(data, bytes) else json.dumps(body_of() if data is None else data).encode()
    named = {name.replace("_", "-"): value for name, value in headers.items()}
    kept = {"Idempotency-Key": key, **named} if key else named
    return client.post(address(firm), content, content_type=kept.pop("Content-Type", "application/json"), headers=kept)


def problem_in(response):
    """The problem document of a refusal, whose shape is the one shape."""
    assert response.headers["Content-Type"] == "application/problem+json"
    assert response.headers["Cache-Control"] == "no-store"
    document = response.json()
    assert {"type", "title", "status", "detail", "errors"} <= set(document)
    assert document["status"] == response.status_code
    return document


def fields_in(response):
    return [error["field"] for error in problem_in(response)["errors"]]
