"""Questions that nobody is ever asked: those that cannot be, and those that were not in many simulated checks.

The second is an observation, not a proof, so it is a remark that says how many checks were walked. Records that are
evidence of nothing are put by the pages, not by the engine, and are left out.
"""

from collections.abc import Iterable

from triage.authoring.linting.finding import Gravity, LintFinding, PackSource
from triage.engine.enums import Method
from triage.engine.model import Model
from triage.engine.pack import OPENING, Observation, Pack
from triage.knowledge.problems import PackProblem

TRIAL_WITHOUT_TASK = "it has to be tried out, and no task has it as its outcome"


def unreachable_questions(model: Model, places: PackSource) -> list[LintFinding]:
    """A mistake for every question that no check can come to, with the reason. A trial without a task is a remark:
    a link may still hold its answer."""
    pack = model.pack
    found = []
    for question in pack.observations.values():
        reason = _obstacle(pack, question) if question.reports and not question.task else ""
        if reason:
            gravity = Gravity.REMARK if reason == TRIAL_WITHOUT_TASK else Gravity.MISTAKE
            what, remedy = f"can never be asked: {reason}.", "Mend what it waits for, or take the question out."
            found.append(LintFinding(gravity, "never asked", _problem(places, pack, question, what, remedy)))
    return found


def never_asked(model: Model, asked: Iterable[str], checks: int, places: PackSource) -> list[LintFinding]:
    """A remark for every question that could be asked and was not in `checks` checks; `asked` holds those that were."""
    pack = model.pack
    left_out = {*asked, *model.implied_by_screening}
    quiet = [q for q in model.questions if q.id not in left_out and q.method != Method.TRIAL and not _obstacle(pack, q)]
    what = f"was not asked in any of {checks} simulated checks."
    remedy = "See with `pack explain` what tells more a second; sharpen its answers, lower its effort, or take it out."
    return [LintFinding(Gravity.REMARK, "never asked", _problem(places, pack, q, what, remedy)) for q in quiet]


def _problem(places: PackSource, pack: Pack, question: Observation, what: str, remedy: str) -> PackProblem:
    file = "variants" if question.reports in pack.variants else "observations"
    return places.problem(file, question.id, what, remedy)


def _obstacle(pack: Pack, question: Observation) -> str:
    """Why no check can come to a question; empty when one can."""
    if question.method == Method.TRIAL and question.id not in _told_by_tasks(pack):
        return TRIAL_WITHOUT_TASK
    line = _waited_for(pack, question, ())
    if isinstance(line, str):
        return line
    for variant in pack.variants.values():
        needed = [q.requires_variant[variant.id] for q in (question, *line) if variant.id in q.requires_variant]
        if needed and not frozenset.intersection(*needed):
            return f"no {variant.id} has both what it needs and what the questions before it need"
    return ""


def _waited_for(pack: Pack, question: Observation, below: tuple[str, ...]) -> list[Observation] | str:
    """Every question this one waits for, however far up, or why they can never all be answered."""
    found: list[Observation] = []
    for name, options in question.requires_answers.items():
        parent = pack.observations[name]
        if name == question.id or name in below:
            return f"it waits for {name}, which waits for it"
        if not options:
            return f"no answer to {name} leads to it"
        if not _is_put(pack, parent):
            return f"it waits for {name}, which is not asked"
        above = _waited_for(pack, parent, (*below, question.id))
        if isinstance(above, str):
            return above
        found += [parent, *above]
    return found


def _is_put(pack: Pack, parent: Observation) -> bool:
    """Whether anybody comes to answer it: the engine asks it, a complaint states it or the danger page lists it."""
    if parent.id == OPENING or (parent.reports and parent.method != Method.TRIAL):
        return True
    stated = any(parent.id in complaint.answers for complaint in pack.complaints)
    listed = any(name == parent.id for flag in pack.red_flags.values() for name, _ in flag.signs)
    return stated or listed or parent.id in _told_by_tasks(pack)


def _told_by_tasks(pack: Pack) -> set[str]:
    """What the tasks' own pages ask."""
    return {outcome for task in pack.tasks.values() for outcome in (task.outcome, *task.further_outcomes)}
