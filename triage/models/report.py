"""Figures that take longer to work out than a page may: `manage.py compute_reports` writes them beforehand."""

from django.db import models
from django.db.models import Q

from triage.models.firm import Firm


class ReportTopic(models.TextChoices):
    KNOWLEDGE = "knowledge"
    CALIBRATION = "calibration"


class Report(models.Model):
    """The newest of each topic; of a firm's own outcomes, or of the pack where `firm` is empty."""

    topic = models.CharField(max_length=12, choices=ReportTopic)
    firm = models.ForeignKey(Firm, null=True, blank=True, on_delete=models.CASCADE, related_name="reports")
    pack_version = models.CharField(max_length=64)
    contents = models.JSONField()
    computed = models.DateTimeField(db_column="made")

    class Meta:
        db_table = "triage_reckoning"  # as of old: the release before runs on the same database
        constraints = [
            models.UniqueConstraint(fields=["topic", "firm"], name="reckoning_newest_of_firm"),
            models.UniqueConstraint(fields=["topic"], condition=Q(firm__isnull=True), name="reckoning_newest_of_pack"),
        ]

    def __str__(self) -> str:
        return f"{self.topic}, {self.computed:%Y-%m-%d}"
