"""A reading on a page of its own: danger signs and cautions first, then its gates, then the form.

Without a check nobody knows whether this oven may be heated. So the page never says how to take a reading that needs
heat: it works out figures and sends the person to the check, which offers the test where it is safe.
"""

from dataclasses import replace

from django.utils.translation import gettext as _

from triage.check_pages.page_models import DangerPage, Gate, ReadingPage
from triage.check_pages.presenters.problems import problem_sentences
from triage.check_pages.presenters.question import danger_page
from triage.check_pages.presenters.readings.form import measured_by, reading_form
from triage.check_pages.presenters.readings.kinds import kind_names
from triage.check_pages.presenters.task import cautions_of, gate_of
from triage.check_pages.view_models import Choice
from triage.check_pages.visit import Visit
from triage.engine import NONE_OF_THESE, SCREEN, Task, is_open
from triage.engine.pack import Observation


def reading_page(visit: Visit, kind: str) -> ReadingPage | DangerPage:
    """The page; the danger signs first where nobody looked through them yet."""
    if SCREEN not in visit.reading.answers:
        signs = danger_page(visit)
        return replace(signs, none=replace(signs.none, href=visit.links.reading(kind, {SCREEN: NONE_OF_THESE})))
    tasks = tasks_of(visit, kind)
    first = tasks[0]
    removed = first.id in visit.place.region.removes
    opened = is_open(first, visit.reading.answers) and not removed
    return ReadingPage(
        heading=kind_names()[kind],
        intro=visit.texts.tasks[first.id].why,
        note=_note(first, removed, visit),
        cautions=cautions_of(visit, first),
        gates=[] if removed else _gates(visit, kind, first),
        how="" if first.heat or not opened else visit.texts.questions[first.outcome].look,
        closed_text="" if opened or removed else _("Answer these first. The form shows once each answer is yes."),
        form=reading_form(visit, _measured(visit, tasks), visit.links.reading_path(kind)) if opened else None,
        check=Choice(_("Go to the check"), visit.links.onward()),
        part=first.picture,
        local_line=visit.place.local_line,
        problems=problem_sentences(visit.texts, visit.reading.problems),
    )


def tasks_of(visit: Visit, kind: str) -> list[Task]:
    """The tasks whose figures are of this kind, in the pack's order."""
    pack = visit.library.pack
    found = [(task, measured_by(pack, task)) for task in pack.tasks.values()]
    return [task for task, measured in found if measured and measured[0].gauge and measured[0].gauge.kind == kind]


def _measured(visit: Visit, tasks: list[Task]) -> list[Observation]:
    measured = [one for task in tasks for one in measured_by(visit.library.pack, task)]
    return list({one.id: one for one in measured}.values())


def _gates(visit: Visit, kind: str, task: Task) -> list[Gate]:
    return [gate_of(visit, task, gate, lambda more: visit.links.reading(kind, more)) for gate in task.gates]


def _note(task: Task, removed: bool, visit: Visit) -> str:
    if removed:
        words = {"place": visit.place.name}
        return _("This is not offered here. In %(place)s it is left to people with the right licence.") % words
    if task.heat:
        return _(
            "This page only works out figures you have. It does not say that your oven may be heated. The check does:"
            " it offers this test where that is safe."
        )
    return ""
