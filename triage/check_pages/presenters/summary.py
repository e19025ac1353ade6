"""What to tell whoever comes, as plain text: read aloud, copied, or kept as a file.

The householder's page shows the short form. The file adds what only a repairer needs. The words are a job sheet's.
"""

from triage.check_pages.request import CheckRequest
from triage.engine import Emergency, Result
from triage.jobsheet.formats.text import answers_text, long_text
from triage.jobsheet.shapes import CheckSummary
from triage.jobsheet.summary import summarise, summarise_with_kit


def summary_of(check_request: CheckRequest) -> CheckSummary:
    """What the short form on the page is made of."""
    return summarise(check_request.check, _check_url(check_request))


def summary_text(check_request: CheckRequest) -> str:
    """The whole of it, for the file; what is known so far where the questions are not over."""
    check, url = check_request.check, _check_url(check_request)
    if isinstance(check.step, Result | Emergency):
        return long_text(summarise_with_kit(check, url))
    return answers_text(summarise(check, url))


def _check_url(check_request: CheckRequest) -> str:
    return check_request.origin + check_request.links.step()
