"""What the repairer really found and fitted: the truth that priors are calibrated against."""

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from triage.models.firm import Member
from triage.models.job_sheet import JobSheet

MAX_VISIT_MINUTES = 1440


class RepairResult(models.TextChoices):
    """How the oven was left, in the four kinds of the Open Repair Data Standard."""

    FIXED = "fixed", _("Fixed")
    REPAIRABLE = "repairable", _("Can be repaired, not finished")
    END_OF_LIFE = "end-of-life", _("Not worth repairing, or cannot be")
    UNKNOWN = "unknown", _("Not known")


class Barrier(models.TextChoices):
    """Why an oven was given up, in the six kinds of the Open Repair Data Standard."""

    NONE = "", _("None")
    NO_PARTS = "no-parts", _("Spare parts not available")
    TOO_DEAR = "too-dear", _("Spare parts too expensive")
    NO_WAY_IN = "no-way-in", _("No way to open the product")
    NO_INSTRUCTIONS = "no-instructions", _("Repair information not available")
    NO_TOOLS = "no-tools", _("Lack of equipment")
    WORN_OUT = "worn-out", _("Item too worn out")


class Outcome(models.Model):
    """`found` are fault ids of the pack `pack_version`, `fitted` parts in the repairer's words."""

    sheet = models.OneToOneField(JobSheet, on_delete=models.CASCADE, related_name="outcome")
    found = models.JSONField()
    fitted = models.JSONField(default=list, blank=True)
    fixed_first_visit = models.BooleanField()
    result = models.CharField(max_length=12, choices=RepairResult)
    barrier = models.CharField(max_length=16, choices=Barrier, blank=True, default="")
    minutes = models.PositiveIntegerField()
    pack_version = models.CharField(max_length=64)
    recorded_by = models.ForeignKey(Member, null=True, on_delete=models.SET_NULL, related_name="outcomes")
    recorded = models.DateTimeField()

    class Meta:
        constraints = [
            models.CheckConstraint(condition=Q(result__in=RepairResult.values), name="outcome_result_is_known"),
            models.CheckConstraint(condition=Q(barrier__in=Barrier.values), name="outcome_barrier_is_known"),
            models.CheckConstraint(
                condition=Q(barrier="") | Q(result=RepairResult.END_OF_LIFE), name="outcome_barrier_ends_it"
            ),
            models.CheckConstraint(
                condition=Q(fixed_first_visit=False) | Q(result=RepairResult.FIXED), name="outcome_first_visit_fixed_it"
            ),
            models.CheckConstraint(
                condition=Q(minutes__gte=1, minutes__lte=MAX_VISIT_MINUTES), name="outcome_took_a_day_at_most"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.sheet}: {self.result}"
