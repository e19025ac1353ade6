"""A job sheet of the member's own firm. Whoever is shown something of it leaves an audit line: a look leaves it here,
a deed that was done leaves its own. Where a deed is refused and the page comes back, that is a look too."""

from typing import cast

from triage.desk.layout import DeskRequest
from triage.jobsheet.opening import NotFound, open_as_member
from triage.jobsheet.reference import read_reference
from triage.models import JobSheet, Member


def get_sheet(request: DeskRequest, reference: str) -> JobSheet:
    """Raises NotFound where the firm has none of this reference."""
    if request.method in ("GET", "HEAD"):
        return get_sheet_logged(request, reference)
    firm = cast(Member, request.member).firm_id
    sheet = JobSheet.objects.filter(firm=firm, reference=read_reference(reference)).select_related("firm").first()
    if sheet is None:
        raise NotFound
    return sheet


def get_sheet_logged(request: DeskRequest, reference: str) -> JobSheet:
    """The sheet with its line for this look. Raises NotFound."""
    return open_as_member(cast(Member, request.member), reference)
