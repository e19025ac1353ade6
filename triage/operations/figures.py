"""What the metrics say: steps from each process' own counts, job sheets and deliveries from the database.

Whichever worker is asked says the same of the database. No figure names a firm, a person or an answer.
"""

from collections.abc import Iterator

from django.db.models import Count, Min
from django.utils import timezone

from triage.knowledge.library import library
from triage.models import Delivery, JobSheet
from triage.models.delivery import Channel, State
from triage.operations.exposition import Family
from triage.operations.step_counts import counts_by_worker


def families() -> Iterator[Family]:
    yield _steps()
    yield _pack()
    yield Family(
        "oven_check_job_sheets_total",
        "counter",
        "Hand-overs that were acknowledged: job sheets ever written.",
        [({}, JobSheet.objects.count())],
    )
    erased = JobSheet.objects.filter(erased__isnull=False).count()
    yield Family(
        "oven_check_job_sheets_erased_total", "counter", "Job sheets that name nobody any more.", [({}, erased)]
    )
    yield _deliveries()
    yield _oldest()


def _steps() -> Family:
    samples = [
        ({"way": way, "kind": kind, "worker": worker}, count)
        for worker, counts in counts_by_worker()
        for (way, kind), count in counts.items()
    ]
    return Family(
        "oven_check_steps_total", "counter", "Pages and API steps answered, by kind. Sum over worker.", samples
    )


def _pack() -> Family:
    pack = library().pack
    labels = {"pack": pack.id, "version": pack.version}
    return Family("oven_check_pack_info", "gauge", "The knowledge in use.", [(labels, 1)])


def _deliveries() -> Family:
    """Every state of every channel, with 0 where there is none: an alarm needs a figure to watch."""
    rows = Delivery.objects.values_list("channel", "state").annotate(count=Count("pk")).order_by()
    counts = {(channel, state): count for channel, state, count in rows}
    samples = [
        ({"channel": channel, "state": state}, counts.get((channel, state), 0))
        for channel in Channel.values
        for state in State.values
    ]
    return Family("oven_check_deliveries", "gauge", "Messages to firms, by channel and by state.", samples)


def _oldest() -> Family:
    oldest = Delivery.objects.filter(state=State.WAITING).aggregate(oldest=Min("created"))["oldest"]
    age = max(0.0, (timezone.now() - oldest).total_seconds()) if oldest else 0.0
    words = "How long the oldest message that has not arrived has waited, in seconds."
    return Family("oven_check_oldest_waiting_delivery_seconds", "gauge", words, [({}, age)])
