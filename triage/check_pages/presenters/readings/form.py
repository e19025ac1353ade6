"""The form of a reading and, once it was sent, what comes of it: the same on a task's page and on a page of its own.

Readings of one kind and different quantities come of the same figures; of those with the same quantity the person says
which one was measured, such as the setting that was on.
"""

from collections.abc import Sequence

from django.utils.translation import gettext as _

from triage.check_pages.presenters.readings.gasket import door_places
from triage.check_pages.presenters.readings.kinds import KINDS, Kind, form_intros
from triage.check_pages.presenters.readings.reasons import reason_sentence
from triage.check_pages.presenters.readings.told import meaning
from triage.check_pages.presenters.readings.typed import READ, SENT, Typed
from triage.check_pages.reading_pages import FieldGroup, ReadingField, ReadingForm, ReadingResult
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import Choice
from triage.engine.answers import applies, ruled_out
from triage.engine.pack import Observation, Pack, Task
from triage.engine.readings import Unreadable, raised_by
from triage.jobsheet.reading_text import reading_text

FOR = "for"


def measured_by(pack: Pack, task: Task) -> list[Observation]:
    """What the figures of a task can answer; nothing where its outcome is not a reading."""
    first = pack.observations.get(task.outcome)
    if first is None or first.gauge is None:
        return []
    found = [first, *(pack.observations[name] for name in task.also)]
    return [one for one in found if one.gauge and one.gauge.kind == first.gauge.kind]


def reading_form(check_request: CheckRequest, observations: Sequence[Observation], action: str) -> ReadingForm:
    """The form for figures that answer `observations`, the first of them always; `action` is the page it stands on."""
    name = _kind_of(observations[0])
    kind, typed = KINDS[name], Typed(check_request.typed)
    kind.read(check_request, typed)
    meant = _meant(check_request, observations, typed)
    wanting, result = _outcome(check_request, kind, typed, meant, observations) if typed.sent else ([], None)
    return ReadingForm(
        kind=name,
        heading=_("Put the figures in"),
        intro=form_intros()[name],
        action=action,
        kept=list({**check_request.links.context_params(), **check_request.answers, SENT: "1"}.items()),
        groups=[*_which(check_request, observations, meant), *kind.groups(check_request, typed)],
        places=door_places(typed) if name == "gasket" else [],
        wanting=wanting,
        result=result,
    )


def _outcome(
    check_request: CheckRequest,
    kind: Kind,
    typed: Typed,
    meant: Sequence[Observation],
    observations: Sequence[Observation],
) -> tuple[list[str], ReadingResult | None]:
    """What is wrong or missing, or else the result."""
    labels = {field.name: field.label for group in kind.groups(check_request, typed) for field in group.fields}
    if typed.problems:
        return [f"{labels.get(READ + name, name)}: {problem}" for name, problem in typed.problems.items()], None
    text = kind.write(check_request, typed)
    if not text:
        return [_("Nothing is filled in yet.")], None
    try:
        return [], _result(check_request, kind, text, meant, observations)
    except Unreadable as fault:
        label = labels.get(READ + fault.field) or labels.get(f"{READ}{_first_of(fault.field)}", _("the figures"))
        return [reason_sentence(fault.reason, {"label": label, "typed": "", "low": "", "high": ""})], None


def _first_of(field: str) -> str:
    """Where a list of readings is typed in rows, the field of its first one."""
    return {"readings": "time-1", "temperature": "shown-1"}.get(field, field)


def _result(
    check_request: CheckRequest,
    kind: Kind,
    text: str,
    meant: Sequence[Observation],
    observations: Sequence[Observation],
) -> ReadingResult:
    """A red flag is raised by whatever the figures can answer, whether or not it was asked for on this oven."""
    told, gauge = kind.told(check_request, text), meant[0].gauge
    headline = reading_text(gauge, text) if gauge else ""
    alarming = [one for one in observations if one in meant or _quantity_of(one) != _quantity_of(meant[0])]
    alarming = [one for one in alarming if raised_by(one, text)]
    answers = {one.id: text for one in (*meant, *alarming) if one in alarming or _fits(check_request, one)}
    onward = check_request.links.step(answers) if alarming else check_request.links.continue_url(answers)
    lines = [*(meaning(check_request, one, text) for one in meant), *told.lines]
    return ReadingResult(
        headline=headline[:1].upper() + headline[1:],
        lines=[*lines, _sureness()] if "±" in headline else lines,
        drawing=told.drawing,
        use=Choice(_("Use this in the check"), onward) if answers else None,
        alarm=bool(alarming),
    )


def _sureness() -> str:
    return _("± is a range that holds the true value about 19 times in 20.")


def _meant(check_request: CheckRequest, observations: Sequence[Observation], typed: Typed) -> list[Observation]:
    """The one that was measured, and those that other quantities of the same figures answer as well."""
    alike = _alternatives(check_request, observations)
    chosen = next((one for one in alike if one.id == typed.text(FOR)), alike[0])
    others = [one for one in observations if _quantity_of(one) != _quantity_of(chosen)]
    return [chosen, *(one for one in others if _fits(check_request, one))]


def _alternatives(check_request: CheckRequest, observations: Sequence[Observation]) -> list[Observation]:
    first = observations[0]
    same = [one for one in observations[1:] if _quantity_of(one) == _quantity_of(first)]
    return [first, *(one for one in same if _fits(check_request, one))]


def _which(
    check_request: CheckRequest, observations: Sequence[Observation], meant: Sequence[Observation]
) -> list[FieldGroup]:
    """The question which of several was measured, where there is more than one."""
    alike = _alternatives(check_request, observations)
    if len(alike) < 2:
        return []
    choices = tuple((one.id, check_request.texts.questions[one.id].short) for one in alike)
    return [FieldGroup([ReadingField(READ + FOR, _("What was measured"), meant[0].id, choices=choices)])]


def _fits(check_request: CheckRequest, observation: Observation) -> bool:
    """Whether it exists on this oven after these answers."""
    answers = check_request.answers
    return applies(observation, answers) and not ruled_out(observation.needs, answers)


def _kind_of(observation: Observation) -> str:
    return observation.gauge.kind if observation.gauge else ""


def _quantity_of(observation: Observation) -> str:
    return observation.gauge.quantity if observation.gauge else ""
