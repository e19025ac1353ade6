"""Claiming, trying, putting off, giving up: nothing is lost, and nobody settles what is not theirs."""

from datetime import timedelta
from itertools import pairwise

import pytest
from django.db import connection
from django.utils import timezone

from tests.firm_builders import make_delivery, make_firm
from triage.jobsheet import delivery as delivering
from triage.jobsheet.delivery import (
    LEASE,
    MAX_ATTEMPTS,
    MAX_WAIT,
    attempt,
    claim_next,
    deliver_due,
    new_worker,
    wait_after,
)
from triage.jobsheet.http_post import NotDelivered

pytestmark = pytest.mark.django_db


def takes(_delivery, _now):
    """A receiver that is content."""


def fails(*, permanent=False):
    def sender(_delivery, _now):
        raise NotDelivered("The receiver answered 500.", permanent=permanent)

    return sender


def fresh(delivery):
    delivery.refresh_from_db()
    return delivery


def test_what_is_due_is_sent_in_order_and_what_is_not_waits():
    now, firm, sent = timezone.now(), make_firm(), []
    make_delivery(firm, message_id="second", next_attempt=now - timedelta(minutes=1))
    make_delivery(firm, message_id="first", next_attempt=now - timedelta(minutes=2))
    make_delivery(firm, message_id="not yet", attempts=1, next_attempt=now + timedelta(minutes=5))
    for state in ("sent", "dead", "dropped"):
        make_delivery(firm, state=state)
    assert deliver_due("me", lambda delivery, _now: sent.append(delivery.message_id)) == 2
    assert sent == ["first", "second"]


def test_what_was_never_tried_is_due_although_the_clock_of_who_wrote_it_was_ahead():
    delivery = make_delivery(next_attempt=timezone.now() + timedelta(hours=1))
    deliver_due("me", takes)
    assert fresh(delivery).state == "sent"


def test_workers_go_by_the_databases_clock_and_not_by_their_hosts(monkeypatch):
    """PostgreSQL's server has a clock; SQLite's only one is the host's, which is then everybody's."""
    right, seen = timezone.now(), []
    delivery = make_delivery()
    monkeypatch.setattr(timezone, "now", lambda: right + timedelta(hours=1))
    expected = right if connection.vendor == "postgresql" else right + timedelta(hours=1)

    def sender(_delivery, now):
        seen.append(now)
        raise NotDelivered("The receiver answered 500.")

    deliver_due("me", sender)
    assert abs(seen[0] - expected) < timedelta(minutes=1)
    assert abs(fresh(delivery).next_attempt - expected) < timedelta(minutes=2)


def test_a_delivery_that_arrived_is_settled():
    delivery = make_delivery()
    deliver_due("me", takes)
    assert (fresh(delivery).state, delivery.attempts, delivery.leased_by, delivery.last_error) == ("sent", 1, "", "")
    assert delivery.settled


def test_a_claimed_delivery_is_nobody_elses_until_the_lease_runs_out():
    make_delivery()
    now = timezone.now()
    assert claim_next("first", now)
    assert claim_next("second", now + LEASE - timedelta(seconds=1)) is None
    assert claim_next("second", now + LEASE).attempts == 2


def test_who_comes_back_after_the_lease_settles_nothing():
    delivery = make_delivery()
    late = claim_next("first", timezone.now())
    claim_next("second", timezone.now() + LEASE)
    attempt(late, "first", takes)
    assert (fresh(delivery).state, delivery.leased_by) == ("waiting", "second")


def test_a_worker_that_dies_leaves_its_lease():
    class Killed(BaseException):
        """As SIGKILL: no handler of ours runs after it."""

    def dies(_delivery, _now):
        raise Killed

    delivery = make_delivery()
    with pytest.raises(Killed):
        deliver_due("first", dies)
    assert (fresh(delivery).state, delivery.leased_by, delivery.attempts) == ("waiting", "first", 1)


def test_a_failure_is_put_off_with_its_reason():
    delivery = make_delivery()
    before = timezone.now()
    deliver_due("me", fails())
    assert (fresh(delivery).state, delivery.last_error) == ("waiting", "The receiver answered 500.")
    assert delivery.next_attempt > before + timedelta(seconds=10)
    assert delivery.leased_by == ""


def test_after_enough_attempts_it_is_dead_and_stays_so():
    delivery = make_delivery(attempts=MAX_ATTEMPTS - 1)
    deliver_due("me", fails())
    assert (fresh(delivery).state, delivery.attempts) == ("dead", MAX_ATTEMPTS)
    assert delivery.settled
    assert deliver_due("me", takes) == 0


def test_what_can_never_work_is_dead_at_once():
    delivery = make_delivery()
    deliver_due("me", fails(permanent=True))
    assert (fresh(delivery).state, delivery.attempts) == ("dead", 1)


def test_a_message_that_kills_its_workers_is_not_tried_for_ever():
    delivery = make_delivery(attempts=MAX_ATTEMPTS)
    deliver_due("me", lambda *_told: pytest.fail("it was tried once more"))
    assert fresh(delivery).state == "dead"


def test_a_mistake_of_ours_is_logged_and_stops_nobody(caplog):
    broken, good = make_delivery(message_id="broken"), make_delivery(message_id="good")

    def sender(delivery, _now):
        if delivery.message_id == "broken":
            raise KeyError("Alex Grey")

    assert deliver_due("me", sender) == 2
    assert (fresh(broken).state, fresh(good).state) == ("waiting", "sent")
    assert broken.last_error == "The message could not be made (KeyError)."
    assert f"delivery {broken.pk} broke in attempt 1" in caplog.text


def test_one_that_was_dropped_meanwhile_stays_dropped():
    delivery = make_delivery()

    def dropped_meanwhile(claimed, _now):
        type(claimed).objects.filter(pk=claimed.pk).update(state="dropped", leased_by="", lease_until=None)

    deliver_due("me", dropped_meanwhile)
    assert fresh(delivery).state == "dropped"


def test_waiting_grows_to_a_bound_and_differs(monkeypatch):
    assert len({wait_after(3) for _ in range(20)}) > 1
    monkeypatch.setattr(delivering.random, "uniform", lambda _low, _high: 1.0)
    waits = [wait_after(attempts) for attempts in range(1, MAX_ATTEMPTS)]
    assert all(early <= late for early, late in pairwise(waits))
    assert (waits[0], waits[-1]) == (timedelta(seconds=15), MAX_WAIT)
    # A receiver that is down from Friday evening to Sunday noon still gets it.
    assert sum(waits, timedelta()) > timedelta(hours=40)


def test_no_two_workers_share_a_name_and_each_fits():
    names = {new_worker() for _ in range(50)}
    assert len(names) == 50
    assert max(map(len, names)) <= 80
