"""A job sheet of the member's own firm, for a deed that leaves its own audit line."""

from typing import cast

from triage.desk.showing import DeskRequest
from triage.jobsheet.opening import NotFound
from triage.jobsheet.reference import read_reference
from triage.models import JobSheet, Member


def own_sheet(request: DeskRequest, reference: str) -> JobSheet:
    """Raises NotFound where the firm has none of this reference."""
    firm = cast(Member, request.member).firm_id
    sheet = JobSheet.objects.filter(firm=firm, reference=read_reference(reference)).select_related("firm").first()
    if sheet is None:
        raise NotFound
    return sheet
