"""One trail taken apart: what each answer weighed, what was believed after it, and why this question came next.

Weights are those of `engine.explanation`: decibans for the causes that lead at the end, adding up to the change of
their log odds. The worth of a question is that of `engine.next_question`.
"""

from collections.abc import Mapping
from dataclasses import asdict, dataclass
from typing import Any

from triage.engine.advice import SMALLEST_CAUSE
from triage.engine.answers import AnswerProblem
from triage.engine.belief import Belief, infer_belief
from triage.engine.check import Check, Emergency, OutOfScope, Question, Step, run_check
from triage.engine.explanation import weights_of_evidence
from triage.engine.model import Model
from triage.engine.next_question import SECONDS_TO_READ, ranked_questions
from triage.engine.pack import OPENING, SCREEN

MAX_CAUSES = 5
MAX_CANDIDATES = 6


@dataclass(frozen=True, slots=True)
class Candidate:
    """A question that may be asked now: bits about family and band, seconds it takes, and their quotient."""

    question: str
    bits: float
    seconds: float
    bits_per_second: float


@dataclass(frozen=True, slots=True)
class Next:
    """What the engine does at one point: asks `question` for `reason`, or ends. `candidates` are the most worth."""

    question: str | None
    reason: str
    candidates: tuple[Candidate, ...]


@dataclass(frozen=True, slots=True)
class Stage:
    """The check after one answer (the first stage: after none). `weights` are decibans for the final causes."""

    question: str
    answer: str
    weights: Mapping[str, float]
    causes: Mapping[str, float]
    families: Mapping[str, float]
    next: Next


@dataclass(frozen=True, slots=True)
class Explanation:
    """A whole trail, stage by stage; `unused` are the answers that were set aside and why."""

    pack: str
    version: str
    region: str
    ending: str
    stages: tuple[Stage, ...]
    unused: tuple[AnswerProblem, ...]

    def as_json(self) -> dict[str, Any]:
        return asdict(self)


def explain(check: Check) -> Explanation:
    """Every stage of a check."""
    answers, final = list(check.answers.items()), check.belief
    leading = tuple(f for f in final.ranking[:MAX_CAUSES] if final.faults[f] >= SMALLEST_CAUSE) or final.ranking[:1]
    weights = weights_of_evidence(final.model, check.answers, leading)
    stages = []
    for number in range(len(answers) + 1):
        question, answer = answers[number - 1] if number else ("", "")
        decibans = {fault: weights[fault][number - 1].decibans for fault in leading} if number else {}
        stages.append(_stage(final.model, dict(answers[:number]), question, answer, decibans))
    ending = _ending(check.step)
    return Explanation(check.pack.id, check.pack.version, check.region.id, ending, tuple(stages), check.problems)


def _stage(model: Model, known: dict[str, str], question: str, answer: str, weights: Mapping[str, float]) -> Stage:
    belief = infer_belief(model, known)
    causes = {fault: belief.faults[fault] for fault in belief.ranking[:MAX_CAUSES]}
    families = dict(list(belief.families.items())[:MAX_CAUSES])
    return Stage(question, answer, weights, causes, families, _next(belief, known))


def _next(belief: Belief, known: dict[str, str]) -> Next:
    pack = belief.model.pack
    if OPENING not in known and SCREEN not in known:
        return Next(OPENING, "every check begins with what is wrong", ())
    check = run_check(pack, belief.model.region, known.items())
    step = check.step
    if not isinstance(step, Question):
        return Next(getattr(step, "follow_up_question", None), _ending(step), ())
    if step.observation == SCREEN:
        return Next(SCREEN, "danger comes before every other question", ())
    seconds = {o.id: o.effort_seconds + SECONDS_TO_READ for o in pack.observations.values()}
    worth = ranked_questions(check.belief, check.answers)
    candidates = tuple(Candidate(w.observation, w.bits, seconds[w.observation], w.bits_per_second) for w in worth)
    urgent = not candidates or candidates[0].question != step.observation
    reason = "it does not wait its turn" if urgent else "it tells the most per second"
    shown = [c for place, c in enumerate(candidates) if place < MAX_CANDIDATES or c.question == step.observation]
    return Next(step.observation, reason, tuple(shown))


def _ending(step: Step) -> str:
    if isinstance(step, Question):
        return f"the check goes on with {step.observation}"
    if isinstance(step, OutOfScope):
        return f"it is not about this appliance: {step.reason}"
    if isinstance(step, Emergency):
        return "make it safe first: " + ", ".join(flag.id for flag in step.flags)
    return f"advice: {step.verdict.band.value}, {step.verdict.family}"
