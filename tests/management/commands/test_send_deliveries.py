"""`manage.py send_deliveries`: what is due goes out, and the loop ends when it is asked to."""

import os
import signal
from io import StringIO

import pytest
from django.core.management import call_command

from tests.firm_builders import make_delivery, make_firm
from tests.jobsheet.receivers import receiver
from triage.management.commands import send_deliveries


def said(**options):
    out = StringIO()
    call_command("send_deliveries", stdout=out, **options)
    return out.getvalue()


@pytest.mark.django_db
def test_once_sends_what_is_due_and_says_how_much(settings):
    settings.TRIAGE_WEBHOOK_NETWORKS = "any"
    with receiver() as box:
        make_delivery(make_firm(webhook_url=box.url))
        assert said(once=True) == "1 attempt made.\n"
        assert said(once=True) == "0 attempts made.\n"
        assert len(box.requests) == 1


def test_a_polite_kill_ends_the_loop_between_two_messages(monkeypatch):
    before = [signal.getsignal(name) for name in (signal.SIGTERM, signal.SIGINT)]
    rounds = []

    def deliver_one(worker, stopped):
        rounds.append(stopped())
        os.kill(os.getpid(), signal.SIGTERM)
        rounds.append(stopped())
        return 1

    monkeypatch.setattr(send_deliveries, "deliver_due", deliver_one)
    monkeypatch.setattr(send_deliveries, "close_old_connections", lambda: None)
    try:
        assert said() == "1 attempt made.\n"
    finally:
        signal.signal(signal.SIGTERM, before[0])
        signal.signal(signal.SIGINT, before[1])
    assert rounds == [False, True]
