"""What outranks any probability: red flags, and which tasks may be offered. Rules over answers, never odds.

The only chance used here is whether a fault is still plausible at all, and it can only take a task away.
"""

from collections.abc import Collection, Iterable, Mapping

from triage.engine.answers import ruled_out
from triage.engine.belief import Belief
from triage.engine.enums import Competence, Method, SwitchUse
from triage.engine.pack import CANT_TELL, Level, Pack, RedFlag, Region, Task
from triage.engine.readings.evidence import flags_raised_by

FINDING_OUT = 0.1


def raised_flags(pack: Pack, answers: Mapping[str, str]) -> tuple[RedFlag, ...]:
    """The red flags these answers raise, the first to act on first."""
    ids = {
        flag
        for o, answer in answers.items()
        if o in pack.observations
        for flag in flags_raised_by(pack.observations[o], answer)
    }
    return tuple(sorted((pack.red_flags[i] for i in ids), key=lambda flag: flag.rank))


def ends_check(flags: Iterable[RedFlag]) -> bool:
    return any(flag.level.ends_check for flag in flags)


def must_evacuate(flags: Iterable[RedFlag]) -> bool:
    """Whether people have to get out: it is an emergency, and no switch may be touched."""
    return any(flag.switches == SwitchUse.NEVER and flag.level is Level.EMERGENCY for flag in flags)


def offered_tasks(region: Region, belief: Belief, answers: Mapping[str, str]) -> tuple[Task, ...]:
    """Tasks an ordinary person may do now, the most useful first: each is safe under every fault still plausible,
    helps with one, and nothing that was said forbids it. None at all once a flag ended the check."""
    allowed = may_be_offered(region, belief, answers, belief.model.pack.tasks.values())
    return tuple(sorted(allowed, key=lambda task: -_use(belief, task)))


def may_be_offered(
    region: Region, belief: Belief, answers: Mapping[str, str], tasks: Collection[Task]
) -> tuple[Task, ...]:
    """Those of `tasks` that hold to every rule of `offered_tasks`, in the order given."""
    pack = belief.model.pack
    flags = raised_flags(pack, answers)
    if not tasks or ends_check(flags):
        return ()
    raised_ids = {flag.id for flag in flags}
    plausible = {fault for fault, chance in belief.faults.items() if chance >= pack.limits.plausible_probability}
    return tuple(
        task
        for task in tasks
        if task.competence == Competence.ORDINARY
        and task.id not in region.removed_tasks
        and not task.unsafe_with & plausible
        and not task.not_after & raised_ids
        and (not task.only_after or task.only_after & raised_ids)
        and not (task.needs_heat and flags)
        and not ruled_out(task.requires_variant, answers)
        and task.helps & plausible
        and _relevance(belief, task) >= pack.limits.relevant_probability
    )


def forbidden_looks(belief: Belief, answers: Mapping[str, str]) -> frozenset[str]:
    """What nobody is to look for now: the outcomes of tasks that a caution or a plausible fault forbids."""
    pack = belief.model.pack
    raised_ids = {flag.id for flag in raised_flags(pack, answers)}
    plausible = {fault for fault, chance in belief.faults.items() if chance >= pack.limits.plausible_probability}
    return frozenset(
        task.outcome
        for task in pack.tasks.values()
        if task.outcome in pack.observations
        and pack.observations[task.outcome].method == Method.LOOK
        and (task.not_after & raised_ids or task.unsafe_with & plausible)
    )


def gate_answers(task: Task, answers: Mapping[str, str]) -> Mapping[str, str]:
    """What was answered to each of a task's gates ("cold", "supply-off"); missing ones as can't tell."""
    return {gate: answers.get(gate, CANT_TELL) for gate in task.gates}


def is_open(task: Task, answers: Mapping[str, str]) -> bool:
    """Whether every gate was answered yes; no and not sure both keep it shut."""
    return all(answer == "yes" for answer in gate_answers(task, answers).values())


def _relevance(belief: Belief, task: Task) -> float:
    return _chance_of_any(belief, task.helps)


def _chance_of_any(belief: Belief, faults: frozenset[str]) -> float:
    """Added in the pack's order, not in a set's: the last digit must not depend on the run."""
    return sum(chance for fault, chance in belief.faults.items() if fault in faults)


def _use(belief: Belief, task: Task) -> float:
    """Chance that the task helps, per minute: the cheapest likely check comes first (p over c). A cure counts in
    full, a task that only finds something out in part."""
    cured = _chance_of_any(belief, task.cures)
    return (cured + FINDING_OUT * (_relevance(belief, task) - cured)) / (task.minutes + 1.0)
