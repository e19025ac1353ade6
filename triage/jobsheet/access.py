"""Who may open a job sheet: a member of its firm, its firm's own system with a key, or the sender with the token.
Everybody else is told nothing.

A sheet that is not there, is another firm's, or was asked for with a wrong token is the same NotFound, so that
nobody learns which references exist. Every opening leaves an audit line.
"""

from django.db.models import QuerySet

from triage.jobsheet.actions import note_access
from triage.jobsheet.reference import read_reference
from triage.jobsheet.sender_token import hash_of, is_token
from triage.models import ApiKey, JobSheet, Member
from triage.models.audit_entry import Actor, AuditAction

NOBODY = hash_of("")


class NotFound(Exception):
    """There is no such job sheet for who asks."""


def sheets_of(member: Member) -> QuerySet[JobSheet]:
    """The job sheets of the member's firm, newest first, without those that were erased."""
    return JobSheet.objects.filter(firm=member.firm_id, erased__isnull=True).order_by("-created", "-pk")


def open_as_member(member: Member, reference: str, deed: AuditAction = AuditAction.OPENED) -> JobSheet:
    known = read_reference(reference)
    sheet = JobSheet.objects.filter(firm=member.firm_id, reference=known).select_related("firm").first()
    if sheet is None:
        raise NotFound
    note_access(sheet, deed, member, Actor.MEMBER)
    return sheet


def open_as_system(key: ApiKey, reference: str) -> JobSheet:
    """A sheet of the key's firm; an erased one too, so that the system can see that it is erased."""
    known = read_reference(reference)
    sheet = JobSheet.objects.filter(firm=key.firm_id, reference=known).select_related("firm").first()
    if sheet is None:
        raise NotFound
    note_access(sheet, AuditAction.OPENED, None, Actor.SYSTEM, key)
    return sheet


def open_as_sender(reference: str, token: str) -> JobSheet:
    """The sheet of who holds its token; an erased one too, so that the sender can see that it is erased."""
    sheet = JobSheet.objects.filter(reference=read_reference(reference)).select_related("firm").first()
    if not is_token(token, sheet.token_hash if sheet else NOBODY) or sheet is None:
        raise NotFound
    note_access(sheet, AuditAction.OPENED, None, Actor.SENDER)
    return sheet
