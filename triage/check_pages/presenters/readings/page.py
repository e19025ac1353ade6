"""A reading on a page of its own: danger signs and cautions first, then its gates, then the form.

Without a check nobody knows whether this oven may be heated. So the page never says how to take a reading that needs
heat: it works out figures and sends the person to the check, which offers the test where it is safe.
"""

from dataclasses import dataclass, replace

from triage.check_pages.presenters.problems import ProblemNote, problem_notes
from triage.check_pages.presenters.question import DangerPage, danger_page
from triage.check_pages.presenters.readings.fields import FORMS
from triage.check_pages.presenters.readings.form import ReadingForm, measured_by, reading_form
from triage.check_pages.presenters.task import Caution, Gate, cautions_of, gate_of
from triage.check_pages.request import CheckRequest
from triage.engine import NONE_OF_THESE, SCREEN, Task, is_open
from triage.engine.pack import Observation


@dataclass(frozen=True)
class ReadingPage:
    """A reading by itself, without a check: cautions, gates, then the form. It may be `removed` by the rules of the
    region or need `heat`, which this page never allows; `how` says how to look safely. The form is there only when
    every gate says yes."""

    heading: str
    intro: str
    removed: bool
    region_name: str
    heat: bool
    cautions: list[Caution]
    gates: list[Gate]
    how: str
    form: ReadingForm | None
    check_href: str
    part: str
    local_line: str
    problems: list[ProblemNote]


def reading_page(check_request: CheckRequest, kind: str) -> ReadingPage | DangerPage:
    """The page; the danger signs first where nobody looked through them yet."""
    if SCREEN not in check_request.answers:
        signs = danger_page(check_request)
        return replace(signs, none=replace(signs.none, href=check_request.links.reading(kind, {SCREEN: NONE_OF_THESE})))
    tasks = tasks_of(check_request, kind)
    first = tasks[0]
    removed = first.id in check_request.check.region.removed_tasks
    opened = is_open(first, check_request.answers) and not removed
    return ReadingPage(
        heading=str(FORMS[kind].name),
        intro=check_request.texts.tasks[first.id].why,
        removed=removed,
        region_name=check_request.region.name,
        heat=first.needs_heat,
        cautions=cautions_of(check_request, first),
        gates=[] if removed else _gates(check_request, kind, first),
        how="" if first.needs_heat or not opened else check_request.texts.questions[first.outcome].look,
        form=reading_form(check_request, _measured(check_request, tasks), check_request.links.reading_path(kind))
        if opened
        else None,
        check_href=check_request.links.continue_url(),
        part=first.picture,
        local_line=check_request.region.local_line,
        problems=problem_notes(check_request.texts, check_request.problems),
    )


def tasks_of(check_request: CheckRequest, kind: str) -> list[Task]:
    """The tasks whose figures are of this kind, in the pack's order."""
    pack = check_request.pack
    found = [(task, measured_by(pack, task)) for task in pack.tasks.values()]
    return [
        task
        for task, measured in found
        if measured and measured[0].measurement and measured[0].measurement.kind == kind
    ]


def _measured(check_request: CheckRequest, tasks: list[Task]) -> list[Observation]:
    measured = [one for task in tasks for one in measured_by(check_request.pack, task)]
    return list({one.id: one for one in measured}.values())


def _gates(check_request: CheckRequest, kind: str, task: Task) -> list[Gate]:
    return [
        gate_of(check_request, task, gate, lambda more: check_request.links.reading(kind, more)) for gate in task.gates
    ]
