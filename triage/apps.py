"""How Django knows this package."""

from django.apps import AppConfig


class TriageConfig(AppConfig):
    name = "triage"
    verbose_name = "Oven fault check"
    default_auto_field = "django.db.models.BigAutoField"
