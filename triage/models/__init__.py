"""What is kept: firms, their staff and its ways in, job sheets, outcomes, deliveries, who looked, reckonings,
API keys and counts of requests.

Nothing here is read or written for a question page. `triage.jobsheet` is the only writer of job sheets.
"""

from triage.models.access_line import AccessLine
from triage.models.api_key import ApiKey
from triage.models.delivery import Delivery
from triage.models.firm import Firm, Member
from triage.models.job_sheet import JobSheet, Note, RatingPlatePhoto
from triage.models.outcome import Outcome
from triage.models.reckoning import Reckoning
from triage.models.request_count import RequestCount
from triage.models.sign_in import Invitation, SignInTry

__all__ = [
    "AccessLine",
    "ApiKey",
    "Delivery",
    "Firm",
    "Invitation",
    "JobSheet",
    "Member",
    "Note",
    "Outcome",
    "RatingPlatePhoto",
    "Reckoning",
    "RequestCount",
    "SignInTry",
]
