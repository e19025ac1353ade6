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
    outlook = ValueOfInformation(belief)
    asked = question_value(outlook, pack.observations[question])
    best = max(_values(outlook, allowed), key=lambda found: found[0].bits_per_second)
    return best[1] if best[0].bits_per_second > asked.bits_per_second and best[0].bits >= pack.limits.min_bits else None


def ranked_by_value(belief: Belief, tasks: tuple[Task, ...]) -> tuple[Task, ...]:
    """The same tasks; those whose outcome is a reading change places among themselves, the most telling first."""
    pack = belief.model.pack
    readings = [task for task in tasks if measured_outcome(pack, task)]
    if len(readings) < 2:
        return tasks
    worths = _values(ValueOfInformation(belief), readings)
    ranked = iter([task for _, task in sorted(worths, key=lambda found: -found[0].bits_per_second)])
    return tuple(next(ranked) if task in readings else task for task in tasks)


def _is_open(pack: Pack, task: Task, answers: Mapping[str, str]) -> bool:
    """Whether its outcome is a reading that no plain question asks for, exists after these answers and is not known."""
    outcome = measured_outcome(pack, task)
    if outcome is None or outcome.method != Method.TRIAL or outcome.id in answers:
        return False
    return applies(outcome, answers) and not ruled_out(outcome.requires_variant, answers)


def _values(outlook: ValueOfInformation, tasks: Iterable[Task]) -> list[tuple[QuestionValue, Task]]:
    pack = outlook.model.pack
    return [(question_value(outlook, pack.observations[task.outcome]), task) for task in tasks]
