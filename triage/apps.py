"""How Django knows this package."""

import os

from django.apps import AppConfig
from django.core.checks import register

from triage import checks
from triage.conf import METRICS_DIR


class TriageConfig(AppConfig):
    name = "triage"
    verbose_name = "Oven fault check"
    default_auto_field = "django.db.models.BigAutoField"

    def ready(self) -> None:
        if METRICS_DIR.value() != METRICS_DIR.default:
            # prometheus-client looks for this once, when it is first imported, which no module does before now.
            os.environ["PROMETHEUS_MULTIPROC_DIR"] = METRICS_DIR.value()
        register(checks.check_knowledge)
        register(checks.check_default_region)
        register(checks.check_webhook_networks)
        register(checks.check_metrics)
        register(checks.check_booking_rate_limit)
        register(checks.check_renamed_settings)
