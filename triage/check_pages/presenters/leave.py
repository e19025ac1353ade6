"""The ways out for what this check is not about. A smell of gas says nothing of switches but not to touch them."""

from triage.check_pages.page_models import ExitPage
from triage.check_pages.presenters.answers import answers_so_far
from triage.check_pages.presenters.numbers import calls_for
from triage.check_pages.visit import Visit

GAS_SMELL = "gas-smell"


def exit_page(visit: Visit, reason: str) -> ExitPage:
    text = visit.texts.start.exits[reason]
    smells = reason == GAS_SMELL
    return ExitPage(
        heading=text.heading,
        lines=list(text.lines),
        who=text.who,
        call=calls_for(visit.place, ("gas", "emergency") if smells else ()),
        no_switches=smells,
        answers=[] if smells else answers_so_far(visit.texts, visit.reading, visit.links),
    )
