"""Job sheets with what was found on them."""

from tests.firm_builders import make_job_sheet, make_member
from triage.jobsheet.outcomes import OutcomeData, record_outcome


def make_outcomes(firm, count, found="fan-element-open", **changes):
    member = make_member(firm)
    data = {"found": (found,), "fixed_first_visit": True, "minutes": 30} | changes
    return [record_outcome(sheet=make_job_sheet(firm), data=OutcomeData(**data), member=member) for _ in range(count)]
