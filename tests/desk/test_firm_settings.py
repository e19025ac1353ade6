"""The writer of settings: a first webhook brings its secret, and a new secret is new."""

import pytest

from tests.firm_builders import make_firm
from triage.desk.firm_settings import change_settings, rotate_secret
from triage.jobsheet.formats.webhook import key_of

pytestmark = pytest.mark.django_db


def test_a_first_webhook_brings_a_secret_and_a_second_keeps_it():
    firm = make_firm(webhook_url="", webhook_secret="")
    secret = change_settings(firm=firm, values={"webhook_url": "https://hearth.example/in"})
    firm.refresh_from_db()
    assert (firm.webhook_secret, len(key_of(secret))) == (secret, 32)
    assert change_settings(firm=firm, values={"webhook_url": "https://hearth.example/other", "name": "Hearth"}) == ""
    firm.refresh_from_db()
    assert (firm.webhook_secret, firm.name) == (secret, "Hearth")


def test_a_new_secret_is_another_one():
    firm = make_firm()
    before = firm.webhook_secret
    assert rotate_secret(firm=firm) != before
    firm.refresh_from_db()
    assert firm.webhook_secret != before
