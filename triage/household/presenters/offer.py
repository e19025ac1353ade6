"""In what words a check is offered to the firm in its address, where it may be handed over."""

from dataclasses import dataclass

from triage.check_pages.request import CheckRequest
from triage.engine import Emergency, Result
from triage.jobsheet.booking_rule import booking_refusal


@dataclass(frozen=True)
class Offer:
    """`address` opens this check again; `band` is its advice level."""

    firm: str
    href: str
    address: str
    band: str


def offer_of(check_request: CheckRequest) -> Offer | None:
    if check_request.firm is None or booking_refusal(check_request.check):
        return None
    step = check_request.step
    band = step.verdict.band.value if isinstance(step, Result | Emergency) else ""
    return Offer(
        check_request.firm.name,
        check_request.links.hand_over(),
        check_request.origin + check_request.links.step(),
        band,
    )
