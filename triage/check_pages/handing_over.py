"""Whether a check may be handed to a firm, whoever hands it over.

Never where people have to leave, never where it is put right or works as it should, and never where the electricity
network has to come: that would be a wasted visit.
"""

from triage.check_pages.presenters.flags import prioritise_flags
from triage.check_pages.presenters.result import is_solved
from triage.check_pages.request import CheckRequest
from triage.engine import Band, Emergency, Result
from triage.engine.enums import PerformedBy


def may_hand_over(check_request: CheckRequest) -> bool:
    match check_request.step:
        case Emergency() as danger:
            return not prioritise_flags(danger.flags).evacuate
        case Result() as advice:
            leading = check_request.pack.faults[advice.verdict.causes[0].fault]
            no_visit = advice.verdict.band is Band.NORMAL or leading.performed_by == PerformedBy.NETWORK_OPERATOR
            return not is_solved(check_request, advice) and not no_visit
        case _:
            return False
