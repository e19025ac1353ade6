"""What is kept: firms, their staff and its ways in, job sheets, outcomes, deliveries, who looked, reports,
API keys and counts of requests.

Nothing here is read or written for a question page. `triage.jobsheet` is the only writer of job sheets.
"""

from triage.models.api_key import ApiKey
from triage.models.audit_entry import AuditEntry
from triage.models.delivery import Delivery
from triage.models.firm import Firm, Member
from triage.models.job_sheet import JobSheet, Note, RatingPlatePhoto
from triage.models.outcome import Outcome
from triage.models.report import Report
from triage.models.request_count import RequestCount
from triage.models.sign_in import Invitation, SignInTry

__all__ = [
    "ApiKey",
    "AuditEntry",
    "Delivery",
    "Firm",
    "Invitation",
    "JobSheet",
    "Member",
    "Note",
    "Outcome",
    "RatingPlatePhoto",
    "Report",
    "RequestCount",
    "SignInTry",
]
