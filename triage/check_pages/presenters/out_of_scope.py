"""The ways out for what this check is not about. A smell of gas says nothing of switches but not to touch them."""

from dataclasses import dataclass

from triage.check_pages.presenters.answers import Answered, answers_so_far
from triage.check_pages.presenters.phone_numbers import PhoneNumber, numbers_for
from triage.check_pages.request import CheckRequest

GAS_SMELL = "gas-smell"


@dataclass(frozen=True)
class OutOfScopePage:
    """A kind way out for what this check is not for; `no_switches` is a smell of gas: touch no switch."""

    heading: str
    lines: list[str]
    contact: str
    phone_numbers: list[PhoneNumber]
    no_switches: bool
    answers: list[Answered]


def out_of_scope_page(check_request: CheckRequest, reason: str) -> OutOfScopePage:
    text = check_request.texts.start.exits[reason]
    smells = reason == GAS_SMELL
    return OutOfScopePage(
        heading=text.heading,
        lines=list(text.lines),
        contact=text.who,
        phone_numbers=numbers_for(check_request.region, ("gas", "emergency") if smells else ()),
        no_switches=smells,
        answers=[] if smells else answers_so_far(check_request.texts, check_request.answers, check_request.links),
    )
