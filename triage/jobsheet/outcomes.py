"""What the repairer found and fitted, written down in under half a minute and mendable later."""

from collections.abc import Iterator
from dataclasses import dataclass

from django.db import transaction
from django.utils import timezone
from django.utils.translation import gettext as _

from triage.jobsheet.actions import note_access
from triage.jobsheet.errors import FieldProblem, Refused
from triage.jobsheet.plain_text import clean_line
from triage.knowledge.library import library
from triage.models import JobSheet, Member, Outcome
from triage.models.audit_entry import Actor, AuditAction
from triage.models.job_sheet import SheetStatus
from triage.models.outcome import MAX_VISIT_MINUTES, Barrier, RepairResult

MAX_FOUND = 6
MAX_FITTED = 20
MAX_PART_LENGTH = 120


@dataclass(frozen=True, slots=True)
class OutcomeData:
    """`found` are fault ids of the pack, the main one first; `fitted` parts in the repairer's words."""

    found: tuple[str, ...]
    fixed_first_visit: bool
    minutes: int
    result: str = RepairResult.FIXED
    barrier: str = ""
    fitted: tuple[str, ...] = ()


def record_outcome(*, sheet: JobSheet, data: OutcomeData, member: Member) -> Outcome:
    """The outcome of a job sheet, new or mended. Raises Refused with every problem."""
    problems = list(_problems(data))
    if problems:
        raise Refused(problems)
    fitted = dict.fromkeys(filter(None, map(clean_line, data.fitted)))
    with transaction.atomic():
        outcome, _made = Outcome.objects.update_or_create(
            sheet=sheet,
            defaults={
                "found": list(dict.fromkeys(data.found)),
                "fitted": list(fitted),
                "fixed_first_visit": data.fixed_first_visit,
                "result": data.result,
                "barrier": data.barrier,
                "minutes": data.minutes,
                "pack_version": library().pack.version,
                "recorded_by": member,
                "recorded": timezone.now(),
            },
        )
        sheet.status = SheetStatus.DONE
        sheet.save(update_fields=["status"])
        note_access(sheet, AuditAction.OUTCOME, member, Actor.MEMBER)
    return outcome


def _problems(data: OutcomeData) -> Iterator[FieldProblem]:
    unknown = [fault for fault in data.found if fault not in library().pack.faults]
    if unknown:
        yield FieldProblem(
            "found", _("There is no fault %(fault)s. Choose from the list.") % {"fault": unknown[0][:60]}
        )
    if not 1 <= len(data.found) <= MAX_FOUND:
        yield FieldProblem("found", _("Choose what was found: at least one, at most %(most)s.") % {"most": MAX_FOUND})
    if len(data.fitted) > MAX_FITTED or any(len(part) > MAX_PART_LENGTH for part in data.fitted):
        params = {"most": MAX_FITTED, "length": MAX_PART_LENGTH}
        yield FieldProblem("fitted", _("Name at most %(most)s parts, each in at most %(length)s characters.") % params)
    if not 1 <= data.minutes <= MAX_VISIT_MINUTES:
        yield FieldProblem("minutes", _("Give the minutes of work, from 1 to %(most)s.") % {"most": MAX_VISIT_MINUTES})
    if data.result not in RepairResult.values or data.barrier not in Barrier.values:
        yield FieldProblem("result", _("Choose how the oven was left from the list."))
    elif data.fixed_first_visit and data.result != RepairResult.FIXED:
        yield FieldProblem("result", _("An oven that was fixed on the first visit was fixed. Correct one of the two."))
    elif data.barrier and data.result != RepairResult.END_OF_LIFE:
        yield FieldProblem("barrier", _("Give a reason only where the oven was given up."))
