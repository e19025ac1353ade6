"""A job sheet: one hand-over from a check to a firm, its photo of the rating plate, and the firm's notes on it.

`summary` is what the server itself computed from `answers` with pack `pack_version`, frozen when it was written: a
newer pack never changes what a repairer was told. An erased sheet keeps the answers about the oven and loses
everything that says whose oven it was; its key stays, so that a late re-send does not bring it back.
"""

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from triage.models.firm import Firm, Member
from triage.models.stored_names import SummaryField

MAX_NOTE_LENGTH = 10_000


class SheetStatus(models.TextChoices):
    NEW = "new", _("New")
    BOOKED = "booked", _("Booked")
    DONE = "done", _("Done")
    DECLINED = "declined", _("Declined")


class JobSheet(models.Model):
    """`reference` may be said aloud and opens nothing by itself; `token_hash` is of the token in the sender's link.

    `request_hash` tells a re-send under the same key from another request; `taken_by` is the agent who took the call.
    """

    reference = models.CharField(max_length=16, unique=True)
    firm = models.ForeignKey(Firm, on_delete=models.PROTECT, related_name="job_sheets")
    idempotency_key = models.CharField(max_length=200)
    request_hash = models.CharField(max_length=64)
    token_hash = models.CharField(max_length=64)
    status = models.CharField(max_length=10, choices=SheetStatus, default=SheetStatus.NEW)

    region = models.CharField(max_length=20)
    answers = models.JSONField(db_column="trail")
    pack_version = models.CharField(max_length=64)
    summary = SummaryField()
    band = models.CharField(max_length=12)
    leading_fault = models.CharField(max_length=60)

    name = models.CharField(max_length=120, blank=True)
    telephone = models.CharField(max_length=40, blank=True)
    email = models.CharField(max_length=254, blank=True)
    street = models.CharField(max_length=300, blank=True)
    postcode = models.CharField(max_length=20, blank=True)
    access = models.TextField(blank=True)
    plate = models.JSONField(default=dict, blank=True)
    windows = models.JSONField(default=list, blank=True)
    consent = models.TextField(blank=True)
    consented = models.DateTimeField()

    taken_by = models.ForeignKey(Member, null=True, blank=True, on_delete=models.SET_NULL, related_name="taken")
    created = models.DateTimeField()
    erase_after = models.DateTimeField()
    erased = models.DateTimeField(null=True, blank=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["firm", "idempotency_key"], name="sheet_once_for_a_key"),
            models.CheckConstraint(condition=Q(status__in=SheetStatus.values), name="sheet_status_is_known"),
            models.CheckConstraint(condition=Q(erase_after__gt=models.F("created")), name="sheet_is_not_kept_for_ever"),
            models.CheckConstraint(
                condition=Q(erased__isnull=True)
                | Q(name="", telephone="", email="", street="", postcode="", access="", consent=""),
                name="sheet_erased_names_nobody",
            ),
            models.CheckConstraint(
                condition=Q(erased__isnull=False) | ~Q(telephone="", email=""), name="sheet_can_be_answered"
            ),
        ]
        indexes = [
            models.Index(fields=["firm", "-created"], name="sheet_inbox"),
            models.Index(fields=["firm", "status", "-created"], name="sheet_inbox_by_status"),
            models.Index(fields=["erase_after"], condition=Q(erased__isnull=True), name="sheet_due_for_erasing"),
        ]

    def __str__(self) -> str:
        return self.reference


class RatingPlatePhoto(models.Model):
    """A JPEG that this server encoded itself. It lies in the database so that it comes and goes with its sheet."""

    sheet = models.OneToOneField(JobSheet, on_delete=models.CASCADE, related_name="photo")
    jpeg = models.BinaryField()
    width = models.PositiveIntegerField()
    height = models.PositiveIntegerField()

    def __str__(self) -> str:
        return f"{self.sheet}, {self.width} x {self.height}"


class Note(models.Model):
    sheet = models.ForeignKey(JobSheet, on_delete=models.CASCADE, related_name="notes")
    author = models.ForeignKey(Member, null=True, on_delete=models.SET_NULL, related_name="notes")
    text = models.TextField(max_length=MAX_NOTE_LENGTH)
    created = models.DateTimeField()

    class Meta:
        ordering = ["created", "pk"]
        constraints = [models.CheckConstraint(condition=~Q(text=""), name="note_says_something")]

    def __str__(self) -> str:
        return f"{self.sheet}: {self.text[:40]}"
