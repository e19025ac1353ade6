"""Getting messages out: claim one under a lease, try it, settle it. Any number of workers, on any number of hosts.

A message arrives at least once. It is claimed in a short transaction that skips rows other workers are claiming
(PostgreSQL) or waits its turn (SQLite, whose transactions here begin IMMEDIATE). A worker that is killed leaves a
lease that runs out; the message is then claimed again and sent with the same id. Attempts are counted when they
begin, so that a message that kills its worker dies in the end as well. Hosts' clocks may differ: all that workers have
to agree on is told by the database's, and what was never tried is due whoever wrote it down.
"""

import logging
import os
import random
import socket
import uuid
from collections.abc import Callable
from datetime import datetime, timedelta

from django.db import connection, transaction
from django.db.models import Q
from django.utils import timezone

from triage.jobsheet.http_post import NotDelivered
from triage.jobsheet.sending import send
from triage.models import Delivery
from triage.models.delivery import DeliveryState

log = logging.getLogger(__name__)

# Longer than the slowest attempt: a name look-up, the deadline of a post or a mail, and some rest.
LEASE = timedelta(minutes=5)
MAX_ATTEMPTS = 14
FIRST_WAIT = timedelta(seconds=15)
GROWTH = 4
MAX_WAIT = timedelta(hours=6)
MAX_ERROR_LENGTH = 300

Sender = Callable[[Delivery, datetime], None]


def new_worker() -> str:
    """A name for this worker that no other has."""
    return f"{socket.gethostname()[:30]}:{os.getpid()}:{uuid.uuid4().hex[:12]}"


def shared_now() -> datetime:
    """The time by the database server's clock. SQLite has none; there all workers are on one host and share its own."""
    if connection.vendor == "sqlite":
        return timezone.now()
    with connection.cursor() as cursor:
        cursor.execute("SELECT CLOCK_TIMESTAMP()")
        now: datetime = cursor.fetchone()[0]
        return now


def deliver_due(worker: str, sender: Sender = send, stopped: Callable[[], bool] = lambda: False) -> int:
    """Try everything that is due now, one after the other, until `stopped`; how many attempts that were."""
    count = 0
    while not stopped() and (delivery := claim_next(worker, shared_now())) is not None:
        attempt(delivery, worker, sender)
        count += 1
    return count


@transaction.atomic
def claim_next(worker: str, now: datetime) -> Delivery | None:
    """The delivery that has waited longest, leased to `worker`; None when nothing is due."""
    free = Q(lease_until__isnull=True) | Q(lease_until__lte=now)
    due = Q(attempts=0) | Q(next_attempt__lte=now)
    waiting = Delivery.objects.filter(free, due, state=DeliveryState.WAITING).order_by("next_attempt", "pk")
    claimed = waiting.select_for_update(skip_locked=True).first()
    if claimed is None:
        return None
    claimed.leased_by, claimed.lease_until = worker, now + LEASE
    claimed.attempts += 1
    claimed.save(update_fields=["leased_by", "lease_until", "attempts"])
    return Delivery.objects.select_related("firm", "sheet", "sheet__firm").get(pk=claimed.pk)


def attempt(delivery: Delivery, worker: str, sender: Sender = send) -> None:
    """One attempt and what came of it."""
    if delivery.attempts > MAX_ATTEMPTS:
        # Every earlier attempt began and none ended: whatever it does to a worker, it does not do it again.
        _settle(delivery, worker, state=DeliveryState.FAILED, settled=shared_now())
        return
    try:
        sender(delivery, shared_now())
    except NotDelivered as problem:
        _put_off(delivery, worker, problem)
    except Exception as mishap:
        log.exception("delivery %s broke in attempt %s", delivery.pk, delivery.attempts)
        _put_off(delivery, worker, NotDelivered(f"The message could not be made ({type(mishap).__name__})."))
    else:
        _settle(delivery, worker, state=DeliveryState.SENT, settled=shared_now(), last_error="")


def _put_off(delivery: Delivery, worker: str, problem: NotDelivered) -> None:
    now, error = shared_now(), str(problem)[:MAX_ERROR_LENGTH]
    if problem.permanent or delivery.attempts >= MAX_ATTEMPTS:
        log.warning("delivery %s is dead after %s attempts", delivery.pk, delivery.attempts)
        _settle(delivery, worker, state=DeliveryState.FAILED, settled=now, last_error=error)
    else:
        _settle(delivery, worker, next_attempt=now + wait_after(delivery.attempts), last_error=error)


def wait_after(attempts: int) -> timedelta:
    """How long to wait after so many attempts: growing, bounded, and different for messages that failed together."""
    grown: timedelta = FIRST_WAIT * GROWTH ** min(attempts - 1, 10)
    spread: float = random.uniform(0.75, 1.25)  # noqa: S311  (spreads load, guards nothing)
    return min(grown, MAX_WAIT) * spread


def _settle(delivery: Delivery, worker: str, **outcome: object) -> bool:
    """Write the outcome and give the lease back, if it is still ours; a lease that ran out may be another's by now."""
    mine = Delivery.objects.filter(
        pk=delivery.pk, leased_by=worker, attempts=delivery.attempts, state=DeliveryState.WAITING
    )
    return mine.update(leased_by="", lease_until=None, **outcome) == 1
