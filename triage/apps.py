"""How Django knows this package."""

from django.apps import AppConfig
from django.core.checks import register

from triage.checks import (
    check_default_region,
    check_hand_overs,
    check_knowledge,
    check_metrics,
    check_webhook_networks,
)


class TriageConfig(AppConfig):
    name = "triage"
    verbose_name = "Oven fault check"
    default_auto_field = "django.db.models.BigAutoField"

    def ready(self) -> None:
        register(check_knowledge)
        register(check_default_region)
        register(check_webhook_networks)
        register(check_metrics)
        register(check_hand_overs)
