"""A job sheet of the member's own firm. Whoever is shown something of it leaves an audit line: a look leaves it here,
an action that was done leaves its own. Where one is refused and the page comes back, that is a look too."""

from triage.desk.request import MemberRequest
from triage.jobsheet.access import NotFound, open_as_member
from triage.jobsheet.reference import read_reference
from triage.models import JobSheet


def get_sheet(request: MemberRequest, reference: str) -> JobSheet:
    """Raises NotFound where the firm has none of this reference."""
    if request.method in ("GET", "HEAD"):
        return get_sheet_logged(request, reference)
    firm = request.member.firm_id
    sheet = JobSheet.objects.filter(firm=firm, reference=read_reference(reference)).select_related("firm").first()
    if sheet is None:
        raise NotFound
    return sheet


def get_sheet_logged(request: MemberRequest, reference: str) -> JobSheet:
    """The sheet with its line for this look. Raises NotFound."""
    return open_as_member(request.member, reference)
