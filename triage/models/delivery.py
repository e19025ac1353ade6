"""One message on its way out: a row written with the job sheet, claimed under a lease, kept until it has arrived.

`message_id` is what a receiver can tell a repeat by. A lease that has run out belongs to nobody: whoever held it was
killed, and the message may be claimed again.
"""

from django.db import models
from django.db.models import Q

from triage.models.firm import Firm
from triage.models.job_sheet import JobSheet


class Channel(models.TextChoices):
    WEBHOOK = "webhook"
    EMAIL = "email"


class Event(models.TextChoices):
    CREATED = "job_sheet.created"
    ERASED = "job_sheet.erased"
    TEST = "test"


class DeliveryState(models.TextChoices):
    """`FAILED` was tried as often as is sensible, and waits for a person; `CANCELLED` need no longer arrive. The values
    are as of old: the release before writes and reads the same rows."""

    WAITING = "waiting"
    SENT = "sent"
    FAILED = "dead"
    CANCELLED = "dropped"


class Delivery(models.Model):
    firm = models.ForeignKey(Firm, on_delete=models.CASCADE, related_name="deliveries")
    sheet = models.ForeignKey(JobSheet, null=True, on_delete=models.CASCADE, related_name="deliveries")
    channel = models.CharField(max_length=10, choices=Channel)
    event = models.CharField(max_length=20, choices=Event)
    message_id = models.CharField(max_length=40, unique=True, db_column="message")
    state = models.CharField(max_length=10, choices=DeliveryState, default=DeliveryState.WAITING)
    attempts = models.PositiveIntegerField(default=0)
    next_attempt = models.DateTimeField(db_column="next_try")
    lease_until = models.DateTimeField(null=True, blank=True)
    leased_by = models.CharField(max_length=80, blank=True, default="")
    last_error = models.CharField(max_length=300, blank=True, default="")
    created = models.DateTimeField()
    settled = models.DateTimeField(null=True, blank=True)

    class Meta:
        verbose_name_plural = "deliveries"
        constraints = [
            models.UniqueConstraint(fields=["sheet", "channel", "event"], name="delivery_once_on_a_channel"),
            models.CheckConstraint(condition=Q(state__in=DeliveryState.values), name="delivery_state_is_known"),
            models.CheckConstraint(condition=Q(channel__in=Channel.values), name="delivery_channel_is_known"),
            models.CheckConstraint(condition=Q(event__in=Event.values), name="delivery_event_is_known"),
            models.CheckConstraint(
                condition=Q(sheet__isnull=False) | Q(event=Event.TEST), name="delivery_is_about_a_sheet"
            ),
            models.CheckConstraint(
                condition=Q(leased_by="", lease_until__isnull=True) | ~Q(leased_by="") & Q(lease_until__isnull=False),
                name="delivery_lease_is_whole",
            ),
            models.CheckConstraint(
                condition=Q(state=DeliveryState.WAITING) | Q(leased_by=""), name="delivery_lease_is_of_one_waiting"
            ),
        ]
        indexes = [
            models.Index(fields=["next_attempt"], condition=Q(state=DeliveryState.WAITING), name="delivery_due"),
            models.Index(fields=["firm", "-created"], name="delivery_log"),
        ]

    def __str__(self) -> str:
        return f"{self.event} by {self.channel}: {self.state}"
