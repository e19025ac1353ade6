"""What the metrics say: steps from each process' own counts, job sheets and deliveries from the database.

Whichever worker is asked says the same of the database. No figure names a firm, a person or an answer.
"""

from collections.abc import Iterator

from django.db.models import Count, Min
from django.utils import timezone
from prometheus_client import CollectorRegistry, generate_latest
from prometheus_client.metrics_core import CounterMetricFamily, GaugeMetricFamily, Metric
from prometheus_client.registry import Collector

from triage.knowledge.library import library
from triage.models import Delivery, JobSheet
from triage.models.delivery import Channel, DeliveryState
from triage.operations.step_metrics import step_metrics


class SiteCollector(Collector):
    """Everything `/metrics/` shows, worked out anew whenever it is asked."""

    def collect(self) -> Iterator[Metric]:
        yield from step_metrics()
        yield _pack()
        yield CounterMetricFamily(
            "oven_check_job_sheets",
            "Hand-overs that were acknowledged: job sheets ever written.",
            JobSheet.objects.count(),
        )
        erased = JobSheet.objects.filter(erased__isnull=False).count()
        yield CounterMetricFamily("oven_check_job_sheets_erased", "Job sheets that name nobody any more.", erased)
        yield _deliveries()
        yield _oldest()


def exposition() -> bytes:
    """All of it in the text format that Prometheus reads."""
    registry = CollectorRegistry()
    registry.register(SiteCollector())
    return generate_latest(registry)


def _pack() -> Metric:
    pack = library().pack
    family = GaugeMetricFamily("oven_check_pack_info", "The knowledge in use.", labels=("pack", "version"))
    family.add_metric((pack.id, pack.version), 1)
    return family


def _deliveries() -> Metric:
    """Every state of every channel, with 0 where there is none: an alarm needs a figure to watch."""
    rows = Delivery.objects.values_list("channel", "state").annotate(count=Count("pk")).order_by()
    counts = {(channel, state): count for channel, state, count in rows}
    family = GaugeMetricFamily(
        "oven_check_deliveries", "Messages to firms, by channel and by state.", labels=("channel", "state")
    )
    for channel in Channel.values:
        for state in DeliveryState:
            family.add_metric((channel, state.name.lower()), counts.get((channel, state.value), 0))
    return family


def _oldest() -> Metric:
    oldest = Delivery.objects.filter(state=DeliveryState.WAITING).aggregate(oldest=Min("created"))["oldest"]
    age = max(0.0, (timezone.now() - oldest).total_seconds()) if oldest else 0.0
    return GaugeMetricFamily(
        "oven_check_oldest_waiting_delivery_seconds",
        "How long the oldest message that has not arrived has waited, in seconds.",
        age,
    )
