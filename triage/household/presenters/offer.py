"""Whether a check may be handed to the firm in its address, and in what words that is offered.

Never where people have to leave, never where it is put right or works as it should, and never where the electricity
network has to come: that would be a wasted visit.
"""

from dataclasses import dataclass

from triage.check_pages.presenters.advice import NETWORK, is_solved
from triage.check_pages.presenters.flags import sort_out
from triage.check_pages.visit import Visit
from triage.engine import Advice, Band, MakeSafe


@dataclass(frozen=True)
class Offer:
    """`address` opens this check again; `band` is its advice level."""

    firm: str
    href: str
    address: str
    band: str


def offer_of(visit: Visit) -> Offer | None:
    if visit.firm is None or not may_hand_over(visit):
        return None
    step = visit.step
    band = step.verdict.band.value if isinstance(step, Advice | MakeSafe) else ""
    return Offer(visit.firm.name, visit.links.hand_over(), visit.origin + visit.links.step(), band)


def may_hand_over(visit: Visit) -> bool:
    match visit.step:
        case MakeSafe() as danger:
            return not sort_out(danger.flags).bare
        case Advice() as advice:
            leading = visit.library.pack.faults[advice.verdict.causes[0].fault]
            no_visit = advice.verdict.band is Band.NORMAL or leading.who == NETWORK
            return not is_solved(visit, advice) and not no_visit
        case _:
            return False
