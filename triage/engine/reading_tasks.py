"""When a reading is worth the trouble: the tasks whose outcome is measured, by expected information per second.

A reading is never put as a plain question, because the cautions of its task come first. While questions are left it
is named beside the next one once it tells more per second; on the advice it takes its place among the other readings.
"""

from collections.abc import Iterable, Mapping

from triage.engine.answers import applies, ruled_out
from triage.engine.belief import Belief
from triage.engine.expected_information import Outlook
from triage.engine.next_question import Worth, worth_of
from triage.engine.pack import Observation, Pack, Region, Task
from triage.engine.safety import may_be_offered


def outcome_of(pack: Pack, task: Task) -> Observation | None:
    """What a task measures, or None where its outcome is not a reading."""
    outcome = pack.observations.get(task.outcome)
    return outcome if outcome is not None and outcome.gauge is not None else None


def better_task(region: Region, belief: Belief, answers: Mapping[str, str], question: str) -> Task | None:
    """The reading's task that may be done now and is expected to tell more per second than `question`, or None."""
    pack = belief.model.pack
    open_tasks = [task for task in pack.tasks.values() if _is_open(pack, task, answers)]
    allowed = may_be_offered(region, belief, answers, open_tasks)
    if not allowed:
        return None
    outlook = Outlook(belief)
    asked = worth_of(outlook, pack.observations[question])
    best = max(_worths(outlook, allowed), key=lambda found: found[0].per_second)
    return best[1] if best[0].per_second > asked.per_second and best[0].bits >= pack.limits.worth else None


def in_order_of_worth(belief: Belief, tasks: tuple[Task, ...]) -> tuple[Task, ...]:
    """The same tasks; those whose outcome is a reading change places among themselves, the most telling first."""
    pack = belief.model.pack
    readings = [task for task in tasks if outcome_of(pack, task)]
    if len(readings) < 2:
        return tasks
    worths = _worths(Outlook(belief), readings)
    ranked = iter([task for _, task in sorted(worths, key=lambda found: -found[0].per_second)])
    return tuple(next(ranked) if task in readings else task for task in tasks)


def _is_open(pack: Pack, task: Task, answers: Mapping[str, str]) -> bool:
    """Whether its outcome is a reading that no plain question asks for, exists after these answers and is not known."""
    outcome = outcome_of(pack, task)
    if outcome is None or outcome.how != "trial" or outcome.id in answers:
        return False
    return applies(outcome, answers) and not ruled_out(outcome.needs, answers)


def _worths(outlook: Outlook, tasks: Iterable[Task]) -> list[tuple[Worth, Task]]:
    pack = outlook.model.pack
    return [(worth_of(outlook, pack.observations[task.outcome]), task) for task in tasks]
