"""The ways out for what this check is not about. A smell of gas says nothing of switches but not to touch them."""

from triage.check_pages.page_models import ExitPage
from triage.check_pages.presenters.answers import answers_so_far
from triage.check_pages.presenters.numbers import calls_for
from triage.check_pages.request import CheckRequest

GAS_SMELL = "gas-smell"


def exit_page(check_request: CheckRequest, reason: str) -> ExitPage:
    text = check_request.texts.start.exits[reason]
    smells = reason == GAS_SMELL
    return ExitPage(
        heading=text.heading,
        lines=list(text.lines),
        who=text.who,
        call=calls_for(check_request.region, ("gas", "emergency") if smells else ()),
        no_switches=smells,
        answers=[] if smells else answers_so_far(check_request.texts, check_request.answers, check_request.links),
    )
