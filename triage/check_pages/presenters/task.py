"""One task: offered or not, its gates, and only then its steps.

Whether it is offered comes from the engine for exactly these answers; an address alone never opens it.
"""

from collections.abc import Callable, Mapping

from django.utils.translation import gettext as _

from triage.check_pages.page_models import Gate, TaskPage
from triage.check_pages.presenters.answers import DID, answer_words
from triage.check_pages.presenters.problems import problem_sentences
from triage.check_pages.presenters.readings.form import measured_by, reading_form
from triage.check_pages.presenters.supply import instructions, switching_off
from triage.check_pages.reading_pages import ReadingForm
from triage.check_pages.view_models import SIGNS, Caution, Choice, GateState
from triage.check_pages.visit import Visit
from triage.engine import CANT_TELL, Advice, Ask, Task, gate_answers, is_open

COLD = "cold"
OFF_AT_THE_SUPPLY = "supply-off"
TOUCHED = "lamp-glass-seal"
COLDEST = {"lamp", "glass", "seal", "hinge", "door"}


def task_page(visit: Visit, name: str) -> TaskPage:
    task, text = visit.library.pack.tasks[name], visit.texts.tasks[name]
    offered = is_offered(visit, task)
    opened = offered and is_open(task, visit.reading.answers)
    return TaskPage(
        title=text.title,
        why=text.why,
        gates=[_gate(visit, task, gate) for gate in task.gates] if offered else [],
        open=opened,
        closed_text="" if opened else _why_closed(visit, task, offered),
        cautions=cautions_of(visit, task) if opened else [],
        tools=list(text.tools) if offered else [],
        minutes=round(task.minutes),
        steps=instructions(visit, text.steps) if opened else [],
        stop_if=list(text.stop_if) if opened else [],
        back_on=list(visit.texts.isolation.back_on) if opened and OFF_AT_THE_SUPPLY in task.gates else [],
        after_question=_after_question(visit, task) if opened else "",
        after_choices=_outcomes(visit, task) if opened else [],
        reading=_reading(visit, task) if opened else None,
        result=result_of(visit, task) if offered else "",
        part=task.picture,
        back_href=visit.links.step(),
        problems=problem_sentences(visit.texts, visit.reading.problems),
    )


def is_offered(visit: Visit, task: Task) -> bool:
    """Whether these answers, and no others, make the engine offer the task: on the advice, or beside a question."""
    if isinstance(visit.step, Ask):
        return visit.step.better is not None and visit.step.better.id == task.id
    return isinstance(visit.step, Advice) and task in visit.step.tasks


def result_of(visit: Visit, task: Task) -> str:
    """What to do now that it did or did not put the oven right; nothing before that is known."""
    text = visit.texts.tasks[task.id]
    told = {"fixed": text.fixed, "not-fixed": text.not_fixed}
    return told.get(visit.reading.answers.get(DID + task.id, ""), "")


def _gate(visit: Visit, task: Task, gate: str) -> Gate:
    return gate_of(visit, task, gate, lambda more: visit.links.task(task.id, more))


def gate_of(visit: Visit, task: Task, gate: str, here: Callable[[Mapping[str, str]], str]) -> Gate:
    """One gate of a task; `here` is the address of the page it stands on with more answers."""
    text = visit.texts.gates[gate]
    state = gate_state(visit.reading.answers.get(gate, ""))
    how = switching_off(visit) if gate == OFF_AT_THE_SUPPLY else None
    waits = _waits(visit, task) if gate == COLD else []
    yes, no, unsure = (here({gate: answer}) for answer in ("yes", "no", "unsure"))
    return Gate(text.ask, yes, no, unsure, state, text.if_not, text.looks_off, how, waits)


def _waits(visit: Visit, task: Task) -> list[str]:
    """How long to wait; what hands get near to has to be colder still."""
    cooling = visit.texts.isolation.cooling
    return [line for after, line in cooling.items() if after != TOUCHED or task.picture in COLDEST]


def gate_state(answer: str) -> GateState:
    if answer in ("unsure", CANT_TELL):
        return "unsure"
    return "yes" if answer == "yes" else "no" if answer == "no" else ""


def _why_closed(visit: Visit, task: Task, offered: bool) -> str:
    if offered:
        given = gate_answers(task, visit.reading.answers).values()
        if "no" in given or "unsure" in given:
            return _("Not yet. Do what stands under the question first. The steps show once each answer is yes.")
        return _("Answer these first. The steps show once each answer is yes.")
    if task.id in visit.place.region.removes:
        words = {"place": visit.place.name}
        return _("This is not offered here. In %(place)s it is left to people with the right licence.") % words
    if isinstance(visit.step, Ask):
        return _("Not now. Some questions come first. After them we can tell if this is safe for you to do.")
    return _(
        "Not now. With the answers you gave, this could be unsafe, or it would not help."
        " Go back and follow the advice there."
    )


def cautions_of(visit: Visit, task: Task) -> list[Caution]:
    told = visit.texts.tasks[task.id].cautions
    return [Caution(c.signal, c.hazard, c.consequence, c.avoid, SIGNS[c.sign]) for c in told]


def _reading(visit: Visit, task: Task) -> ReadingForm | None:
    """The form for its figures, where its outcome is a reading."""
    measured = measured_by(visit.library.pack, task)
    return reading_form(visit, measured, visit.links.task_path(task.id)) if measured else None


def _after_question(visit: Visit, task: Task) -> str:
    question = visit.texts.questions.get(task.outcome)
    return question.ask if question else _("Did that fix it?")


def _outcomes(visit: Visit, task: Task) -> list[Choice]:
    """What may have come of it, each leading back to the check with that answer."""
    asked = visit.library.pack.observations[task.outcome]
    options = [*asked.options, CANT_TELL] if task.outcome in visit.texts.questions else asked.options
    return [
        Choice(answer_words(visit.texts, task.outcome, option), visit.links.step({task.outcome: option}))
        for option in options
    ]
