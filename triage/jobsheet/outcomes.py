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
from triage.models.outcome import MAX_VISIT_MINUTES, Barrier, Result

MAX_FOUND = 6
MAX_FITTED = 20
MAX_PART_LENGTH = 120


@dataclass(frozen=True, slots=True)
class Findings:
    """`found` are fault ids of the pack, the main one first; `fitted` parts in the repairer's words."""

    found: tuple[str, ...]
    fixed_first_visit: bool
    minutes: int
    result: str = Result.FIXED
    barrier: str = ""
    fitted: tuple[str, ...] = ()


def record_outcome(*, sheet: JobSheet, findings: Findings, member: Member) -> Outcome:
    """The outcome of a job sheet, new or mended. Raises Refused with every problem."""
    problems = list(_problems(findings))
    if problems:
        raise Refused(problems)
    fitted = dict.fromkeys(filter(None, map(clean_line, findings.fitted)))
    with transaction.atomic():
        outcome, _made = Outcome.objects.update_or_create(
            sheet=sheet,
            defaults={
                "found": list(dict.fromkeys(findings.found)),
                "fitted": list(fitted),
                "fixed_first_visit": findings.fixed_first_visit,
                "result": findings.result,
                "barrier": findings.barrier,
                "minutes": findings.minutes,
                "pack_version": library().pack.version,
                "recorded_by": member,
                "recorded": timezone.now(),
            },
        )
        sheet.status = SheetStatus.DONE
        sheet.save(update_fields=["status"])
        note_access(sheet, AuditAction.OUTCOME, member, Actor.MEMBER)
    return outcome


def _problems(findings: Findings) -> Iterator[FieldProblem]:
    unknown = [fault for fault in findings.found if fault not in library().pack.faults]
    if unknown:
        yield FieldProblem(
            "found", _("There is no fault %(fault)s. Choose from the list.") % {"fault": unknown[0][:60]}
        )
    if not 1 <= len(findings.found) <= MAX_FOUND:
        yield FieldProblem("found", _("Choose what was found: at least one, at most %(most)s.") % {"most": MAX_FOUND})
    if len(findings.fitted) > MAX_FITTED or any(len(part) > MAX_PART_LENGTH for part in findings.fitted):
        params = {"most": MAX_FITTED, "length": MAX_PART_LENGTH}
        yield FieldProblem("fitted", _("Name at most %(most)s parts, each in at most %(length)s characters.") % params)
    if not 1 <= findings.minutes <= MAX_VISIT_MINUTES:
        yield FieldProblem("minutes", _("Give the minutes of work, from 1 to %(most)s.") % {"most": MAX_VISIT_MINUTES})
    if findings.result not in Result.values or findings.barrier not in Barrier.values:
        yield FieldProblem("result", _("Choose how the oven was left from the list."))
    elif findings.fixed_first_visit and findings.result != Result.FIXED:
        yield FieldProblem("result", _("An oven that was fixed on the first visit was fixed. Correct one of the two."))
    elif findings.barrier and findings.result != Result.END_OF_LIFE:
        yield FieldProblem("barrier", _("Give a reason only where the oven was given up."))
