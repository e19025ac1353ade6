"""One entry for each time a job sheet was opened or changed: who, what, when. They are added and never edited."""

from django.db import models
from django.db.models import Q

from triage.models.api_key import ApiKey
from triage.models.firm import Member
from triage.models.job_sheet import JobSheet


class AuditAction(models.TextChoices):
    HANDED_OVER = "handed over"
    OPENED = "opened"
    EXPORTED = "exported"
    STATUS = "changed the status of"
    NOTED = "wrote a note on"
    OUTCOME = "recorded the outcome of"
    ERASED = "erased"


class Actor(models.TextChoices):
    SENDER = "sender"
    MEMBER = "member"
    SYSTEM = "system"
    SITE = "site"


class AuditEntry(models.Model):
    """`member` is empty where the actor is not staff, and once that person's place in the firm is gone;
    `key` is the one with which the firm's own system asked."""

    sheet = models.ForeignKey(JobSheet, on_delete=models.CASCADE, related_name="audit_entries")
    actor = models.CharField(max_length=10, choices=Actor)
    member = models.ForeignKey(Member, null=True, on_delete=models.SET_NULL, related_name="audit_entries")
    key = models.ForeignKey(ApiKey, null=True, on_delete=models.SET_NULL, related_name="audit_entries")
    action = models.CharField(max_length=30, choices=AuditAction, db_column="deed")
    at = models.DateTimeField()

    class Meta:
        db_table = "triage_accessline"  # as of old: the release before runs on the same database
        verbose_name_plural = "audit entries"
        ordering = ["at", "pk"]
        constraints = [
            models.CheckConstraint(condition=Q(actor__in=Actor.values), name="access_actor_is_known"),
            models.CheckConstraint(condition=Q(action__in=AuditAction.values), name="access_deed_is_known"),
            models.CheckConstraint(condition=Q(member__isnull=True) | Q(actor="member"), name="access_member_is_staff"),
            models.CheckConstraint(condition=Q(key__isnull=True) | Q(actor="system"), name="access_key_is_a_system"),
        ]

    def __str__(self) -> str:
        return f"{self.actor} {self.action} {self.sheet}"
