"""What an energy label says, worked out by itself: it is about the model and not its fault, so it needs no check."""

from dataclasses import dataclass, replace

from triage.check_pages.presenters.costs_form import CYCLE, LITRES, CostsForm, read_form
from triage.check_pages.presenters.problems import ProblemNote, problem_notes
from triage.check_pages.presenters.question import DangerPage, danger_page
from triage.check_pages.request import CheckRequest
from triage.engine import NONE_OF_THESE, SCREEN
from triage.engine.energy_index import energy_class, energy_index

PICTURE = "front"


@dataclass(frozen=True)
class EnergyLabel:
    """The index and the class that the two numbers give, and the class on the label where that is another."""

    index: str
    name: str
    contradicted: str


@dataclass(frozen=True)
class LabelPage:
    """The label alone, and a form for its numbers: `hidden` is what the form carries along unseen."""

    label: EnergyLabel | None
    form: CostsForm
    hidden: list[tuple[str, str]]
    check_href: str
    local_line: str
    part: str
    problems: list[ProblemNote]


def label_page(check_request: CheckRequest) -> LabelPage | DangerPage:
    """The danger signs first where nobody looked through them yet, as before every reading."""
    if SCREEN not in check_request.answers:
        signs = danger_page(check_request)
        return replace(signs, none=replace(signs.none, href=check_request.links.costs({SCREEN: NONE_OF_THESE})))
    form = read_form(check_request)
    return LabelPage(
        label=energy_label(form),
        form=form,
        hidden=[*check_request.links.context_params().items(), *check_request.answers.items(), *_not_shown(form)],
        check_href=check_request.links.continue_url(),
        local_line=check_request.region.local_line,
        part=PICTURE,
        problems=problem_notes(check_request.texts, check_request.problems),
    )


def energy_label(form: CostsForm) -> EnergyLabel | None:
    """What the label says; None where the two numbers are not there."""
    if LITRES not in form.numbers or CYCLE not in form.numbers:
        return None
    index = energy_index(form.numbers[LITRES], form.numbers[CYCLE])
    name = energy_class(index)
    return EnergyLabel(f"{index}", name, form.label_class if form.label_class != name else "")


def _not_shown(form: CostsForm) -> list[tuple[str, str]]:
    """What was typed into the fields that are not shown here: it is there again once they are."""
    return [(field.name, field.value) for field in form.fields if field.value]
