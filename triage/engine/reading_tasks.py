"""When a reading is worth the trouble: the tasks whose outcome is measured, by expected information per second.

A reading is never put as a plain question, because the cautions of its task come first. While questions are left it
is named beside the next one once it tells more per second; on the advice it takes its place among the other readings.
"""

from collections.abc import Iterable, Mapping

from triage.engine.answers import applies, ruled_out
from triage.engine.belief import Belief
from triage.engine.enums import Method
from triage.engine.expected_information import ValueOfInformation
from triage.engine.next_question import QuestionValue, question_value
from triage.engine.pack import Observation, Pack, Region, Task
from triage.engine.safety import may_be_offered
from triage.engine.tables import greatest_first

NOTHING_DIGITS = 12


def measured_outcome(pack: Pack, task: Task) -> Observation | None:
    """What a task measures, or None where its outcome is not a reading."""
    outcome = pack.observations.get(task.outcome)
    return outcome if outcome is not None and outcome.measurement is not None else None


def better_test(region: Region, belief: Belief, answers: Mapping[str, str], question: str) -> Task | None:
    """The reading's task that may be done now and is expected to tell more per second than `question`, or None."""
    pack = belief.model.pack
    open_tasks = [task for task in pack.tasks.values() if _is_open(pack, task, answers)]
    allowed = may_be_offered(region, belief, answers, open_tasks)
    if not allowed:
        return None
    information = ValueOfInformation(belief)
    asked = question_value(information, pack.observations[question])
    values = _values(information, allowed)
    best = _most_telling_first(values)[0]
    is_better = values[best].bits_per_second > asked.bits_per_second and values[best].bits >= pack.limits.min_bits
    return pack.tasks[best] if is_better else None


def ranked_by_value(belief: Belief, tasks: tuple[Task, ...]) -> tuple[Task, ...]:
    """The same tasks; those whose outcome is a reading change places among themselves, the most telling first."""
    pack = belief.model.pack
    readings = [task for task in tasks if measured_outcome(pack, task)]
    if len(readings) < 2:
        return tasks
    ranked = iter(_most_telling_first(_values(ValueOfInformation(belief), readings)))
    return tuple(pack.tasks[next(ranked)] if task in readings else task for task in tasks)


def _is_open(pack: Pack, task: Task, answers: Mapping[str, str]) -> bool:
    """Whether its outcome is a reading that no plain question asks for, exists after these answers and is not known."""
    outcome = measured_outcome(pack, task)
    if outcome is None or outcome.method != Method.TRIAL or outcome.id in answers:
        return False
    return applies(outcome, answers) and not ruled_out(outcome.requires_variant, answers)


def _values(information: ValueOfInformation, tasks: Iterable[Task]) -> dict[str, QuestionValue]:
    """What each task's outcome is worth, by the task's id."""
    pack = information.model.pack
    return {task.id: question_value(information, pack.observations[task.outcome]) for task in tasks}


def _most_telling_first(values: Mapping[str, QuestionValue]) -> list[str]:
    """What comes to nothing is a tie, however the logarithms miss it."""
    return greatest_first({task: round(value.bits_per_second, NOTHING_DIGITS) for task, value in values.items()})
