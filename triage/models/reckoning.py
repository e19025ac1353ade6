"""Figures that take longer to work out than a page may: made beforehand by `manage.py reckon`, shown with their day."""

from django.db import models
from django.db.models import Q

from triage.models.firm import Firm


class Topic(models.TextChoices):
    KNOWLEDGE = "knowledge"
    CALIBRATION = "calibration"


class Reckoning(models.Model):
    """The newest of each topic; of a firm's own outcomes, or of the pack where `firm` is empty."""

    topic = models.CharField(max_length=12, choices=Topic)
    firm = models.ForeignKey(Firm, null=True, blank=True, on_delete=models.CASCADE, related_name="reckonings")
    pack_version = models.CharField(max_length=64)
    contents = models.JSONField()
    made = models.DateTimeField()

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["topic", "firm"], name="reckoning_newest_of_firm"),
            models.UniqueConstraint(fields=["topic"], condition=Q(firm__isnull=True), name="reckoning_newest_of_pack"),
        ]

    def __str__(self) -> str:
        return f"{self.topic}, {self.made:%Y-%m-%d}"
