"""In what words a check is offered to the firm in its address, where it may be handed over."""

from dataclasses import dataclass

from triage.check_pages.handing_over import may_hand_over
from triage.check_pages.visit import Visit
from triage.engine import Advice, MakeSafe


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
