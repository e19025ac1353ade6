"""What an energy label says, worked out by itself: it is about the model and not its fault, so it needs no check."""

from dataclasses import replace

from django.urls import reverse
from django.utils.translation import gettext as _

from triage.check_pages.costs_page import CostsPage, CostsPart
from triage.check_pages.presenters.costs_form import CYCLE, LITRES, CostsForm, read_form
from triage.check_pages.presenters.problems import problem_notes
from triage.check_pages.presenters.question import DangerPage, danger_page
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import Choice
from triage.engine import NONE_OF_THESE, SCREEN
from triage.engine.energy_index import energy_class, energy_index

PICTURE = "front"


def label_page(check_request: CheckRequest) -> CostsPage | DangerPage:
    """The label alone; the danger signs first where nobody looked through them yet, as before every reading."""
    if SCREEN not in check_request.answers:
        signs = danger_page(check_request)
        return replace(signs, none=replace(signs.none, href=check_request.links.costs({SCREEN: NONE_OF_THESE})))
    form = read_form(check_request)
    lines = label_lines(form)
    return CostsPage(
        heading=_("The energy label"),
        intro=_("Two numbers of the label give its class. The check says at its end what a fault costs."),
        parts=[CostsPart(_("What the label says"), lines)] if lines else [],
        fields=[],
        label_fields=form.label_fields,
        label_open=True,
        kept=[*check_request.links.context_params().items(), *check_request.answers.items(), *_unseen(form)],
        action=reverse("household-costs"),
        back=Choice(_("Go to the check"), check_request.links.continue_url()),
        local_line=check_request.region.local_line,
        part=PICTURE,
        problems=problem_notes(check_request.texts, check_request.problems),
    )


def label_lines(form: CostsForm) -> list[str]:
    """The index of the label, and whether its class fits; nothing where the two numbers are not there."""
    if LITRES not in form.numbers or CYCLE not in form.numbers:
        return []
    index = energy_index(form.numbers[LITRES], form.numbers[CYCLE])
    found = {"index": f"{index}", "name": energy_class(index), "told": form.label_class}
    lines = [_("These numbers give an energy index of %(index)s, which is class %(name)s (EU rules).") % found]
    if form.label_class and form.label_class != found["name"]:
        lines.append(_("The label says class %(told)s, so one of its numbers is not right.") % found)
    return lines


def _unseen(form: CostsForm) -> list[tuple[str, str]]:
    """What was typed into the fields that are not shown here: it is there again once they are."""
    return [(field.name, field.value) for field in form.fields if field.value]
