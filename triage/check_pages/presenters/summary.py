"""What to tell whoever comes, as plain text: read aloud, copied, or kept as a file.

The householder's page shows the short form. The file adds what only a repairer needs. The words are a job sheet's.
"""

from triage.check_pages.visit import Visit
from triage.engine import Advice, MakeSafe, Step
from triage.jobsheet.check import Check
from triage.jobsheet.formats.text import answers_text, long_text, short_text
from triage.jobsheet.summary import summarise, tell


def summary_of(visit: Visit, step: Advice | MakeSafe) -> str:
    """The short form, for the page."""
    return short_text(tell(_check(visit, step)))


def summary_text(visit: Visit) -> str:
    """The whole of it, for the file; what is known so far where the questions are not over."""
    check = _check(visit, visit.step)
    if isinstance(check.step, Advice | MakeSafe):
        return long_text(summarise(check))
    return answers_text(tell(check))


def _check(visit: Visit, step: Step) -> Check:
    return Check(visit.library, visit.place, visit.texts, step, visit.origin + visit.links.step())
