"""The form of a reading and, once it was sent, what comes of it: the same on a task's page and on a page of its own.

Readings of one kind and different quantities come of the same figures; of those with the same quantity the person says
which one was measured, such as the setting that was on.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from triage.check_pages.drawings.drawing import Drawing
from triage.check_pages.form_fields import BoundField, FieldError
from triage.check_pages.presenters.readings.degrees import Degrees, degrees_of
from triage.check_pages.presenters.readings.fields import FORMS
from triage.check_pages.presenters.readings.form_input import READ, SENT, BoundGroup, FormInput, bound_groups, error
from triage.check_pages.presenters.readings.gasket import DoorPlace, door_places
from triage.check_pages.presenters.readings.interpretation import Interpretation, interpret
from triage.check_pages.presenters.readings.kinds import KINDS
from triage.check_pages.presenters.readings.plate import usual_volts
from triage.check_pages.request import CheckRequest
from triage.engine.answers import applies, ruled_out
from triage.engine.pack import Observation, Pack, Task
from triage.engine.readings import InvalidReading, flags_raised_by
from triage.jobsheet.reading_text import reading_text

FOR = "for"
CHEAP_TOLERANCE = 10.0  # K
# Where a list of readings is typed in rows, the field of its first one.
FIRST_FIELD = {"readings": "time-1", "temperature": "shown-1"}


@dataclass(frozen=True)
class ReadingResult:
    """The value with what it may be out by, which answers it fits, its picture, and the way on into the check;
    `has_range` where the value is given with ±.

    `alarm` where the figures raise a red flag: then nothing of this is shown and the check is opened with them.
    """

    headline: str
    interpretations: list[Interpretation]
    drawing: Drawing
    has_range: bool
    continue_href: str
    alarm: bool = False


@dataclass(frozen=True)
class ReadingForm:
    """The form of a reading, with `hidden` fields. Once it was sent there is a result, or it was `empty`, or there are
    errors, each with the label of its field where that is not part of the sentence."""

    kind: str
    intro: str
    action: str
    hidden: list[tuple[str, str]]
    groups: list[BoundGroup]
    places: list[DoorPlace]
    empty: bool = False
    errors: list[tuple[str, FieldError]] = field(default_factory=list)
    result: ReadingResult | None = None


def measured_by(pack: Pack, task: Task) -> list[Observation]:
    """What the figures of a task can answer; nothing where its outcome is not a reading."""
    first = pack.observations.get(task.outcome)
    if first is None or first.measurement is None:
        return []
    found = [first, *(pack.observations[name] for name in task.further_outcomes)]
    return [one for one in found if one.measurement and one.measurement.kind == first.measurement.kind]


def reading_form(check_request: CheckRequest, observations: Sequence[Observation], action: str) -> ReadingForm:
    """The form for figures that answer `observations`, the first of them always; `action` is the page it stands on."""
    kind, degrees = _kind_of(observations[0]), degrees_of(check_request)
    texts, found = FORMS[kind], FormInput(check_request.typed, degrees)
    found.parse(texts, KINDS[kind].limits)
    KINDS[kind].parse_more(found)
    meant = _meant(check_request, observations, found)
    groups = bound_groups(found, texts.groups, _params(check_request, degrees))
    form = ReadingForm(
        kind=kind,
        intro=str(texts.intro),
        action=action,
        hidden=list({**check_request.links.context_params(), **check_request.answers, SENT: "1"}.items()),
        groups=[*_which(check_request, observations, meant), *groups],
        places=door_places(found) if kind == "gasket" else [],
    )
    return _with_outcome(check_request, form, found, meant, observations) if found.is_sent else form


def _params(check_request: CheckRequest, degrees: Degrees) -> dict[str, object]:
    """What labels and hints name."""
    return {
        "volts": usual_volts(check_request),
        "unit": degrees.unit,
        "tolerance": degrees.difference_text(CHEAP_TOLERANCE),
    }


def _with_outcome(
    check_request: CheckRequest,
    form: ReadingForm,
    found: FormInput,
    meant: Sequence[Observation],
    observations: Sequence[Observation],
) -> ReadingForm:
    """The form with what is wrong or missing, or else with the result."""
    labels = {one.name: one.label for group in form.groups for one in group.fields}
    if found.errors:
        return replace(form, errors=[(labels[READ + name], wrong) for name, wrong in found.errors.items()])
    text = KINDS[form.kind].write(check_request, found)
    if not text:
        return replace(form, empty=True)
    try:
        return replace(form, result=_result(check_request, text, meant, observations))
    except InvalidReading as fault:
        label = labels.get(READ + fault.field) or labels.get(READ + FIRST_FIELD.get(fault.field, fault.field), "")
        return replace(form, errors=[("", error(fault.reason, label))])


def _result(
    check_request: CheckRequest, text: str, meant: Sequence[Observation], observations: Sequence[Observation]
) -> ReadingResult:
    """A red flag is raised by whatever the figures can answer, whether or not it was asked for on this oven."""
    measurement = meant[0].measurement
    headline = reading_text(measurement, text) if measurement else ""
    alarming = [one for one in observations if one in meant or _quantity_of(one) != _quantity_of(meant[0])]
    alarming = [one for one in alarming if flags_raised_by(one, text)]
    answers = {one.id: text for one in (*meant, *alarming) if one in alarming or _fits(check_request, one)}
    links = check_request.links
    continue_href = links.step(answers) if alarming else links.continue_url(answers)
    return ReadingResult(
        headline=headline[:1].upper() + headline[1:],
        interpretations=[interpret(check_request, one, text) for one in meant],
        drawing=KINDS[_kind_of(meant[0])].drawing(check_request, text),
        has_range="±" in headline,
        continue_href=continue_href if answers else "",
        alarm=bool(alarming),
    )


def _meant(check_request: CheckRequest, observations: Sequence[Observation], found: FormInput) -> list[Observation]:
    """The one that was measured, and those that other quantities of the same figures answer as well."""
    alike = _alternatives(check_request, observations)
    chosen = next((one for one in alike if one.id == found.text(FOR)), alike[0])
    others = [one for one in observations if _quantity_of(one) != _quantity_of(chosen)]
    return [chosen, *(one for one in others if _fits(check_request, one))]


def _alternatives(check_request: CheckRequest, observations: Sequence[Observation]) -> list[Observation]:
    first = observations[0]
    same = [one for one in observations[1:] if _quantity_of(one) == _quantity_of(first)]
    return [first, *(one for one in same if _fits(check_request, one))]


def _which(
    check_request: CheckRequest, observations: Sequence[Observation], meant: Sequence[Observation]
) -> list[BoundGroup]:
    """The question which of several was measured, where there is more than one."""
    alike = _alternatives(check_request, observations)
    if len(alike) < 2:
        return []
    choices = tuple((one.id, check_request.texts.questions[one.id].short) for one in alike)
    return [BoundGroup([BoundField(READ + FOR, value=meant[0].id, choices=choices)])]


def _fits(check_request: CheckRequest, observation: Observation) -> bool:
    """Whether it exists on this oven after these answers."""
    answers = check_request.answers
    return applies(observation, answers) and not ruled_out(observation.requires_variant, answers)


def _kind_of(observation: Observation) -> str:
    return observation.measurement.kind if observation.measurement else ""


def _quantity_of(observation: Observation) -> str:
    return observation.measurement.quantity if observation.measurement else ""
