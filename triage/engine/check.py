"""A check is a pure function: pack, region and trail in, the next step out. The one entry of the engine."""

from collections.abc import Iterable
from dataclasses import dataclass

from triage.engine.advice import Verdict, conclude, tasks_for
from triage.engine.answers import ParsedAnswers, parse_answers
from triage.engine.belief import Belief, believe
from triage.engine.model import compile_model
from triage.engine.next_question import count_asked, follow_up_question, next_in_line
from triage.engine.pack import SCREEN, Pack, RedFlag, Region, Task
from triage.engine.reading_tasks import better_task
from triage.engine.safety import ends_check, raised_flags


@dataclass(frozen=True, slots=True)
class Question:
    """Put this question next (`danger` is the page of danger signs). `number` counts from one. `better` is a
    reading's task that may be done now and would tell more per second, or None."""

    reading: ParsedAnswers
    observation: str
    number: int
    max_questions: int
    better_test: Task | None = None


@dataclass(frozen=True, slots=True)
class Emergency:
    """A red flag was answered yes: act on `flags` in order, test and touch nothing.

    `verdict` is for the repairer; `memory` a question that may still be answered from memory, or None.
    """

    reading: ParsedAnswers
    flags: tuple[RedFlag, ...]
    verdict: Verdict
    follow_up_question: str | None


@dataclass(frozen=True, slots=True)
class Result:
    """The questions are over. `cautions` are the red flags that limit use without ending the check."""

    reading: ParsedAnswers
    verdict: Verdict
    cautions: tuple[RedFlag, ...]
    tasks: tuple[Task, ...]


@dataclass(frozen=True, slots=True)
class OutOfScope:
    """The answers say this is not an electric oven: `reason` names the way out."""

    reading: ParsedAnswers
    reason: str


Step = Question | Emergency | Result | OutOfScope


def advise(pack: Pack, region: Region, trail: Iterable[tuple[str, str]]) -> Step:
    """The next step of a check. Never raises on what the trail holds; its faults are in `reading.problems`."""
    reading = parse_answers(pack, trail)
    flags = raised_flags(pack, reading.answers)
    if ends_check(flags):
        belief = belief_of(pack, region, reading)
        verdict = conclude(belief, reading.answers, flags)
        return Emergency(reading, flags, verdict, follow_up_question(belief, reading.answers))
    reason = next((pack.exits[pair] for pair in reading.answers.items() if pair in pack.exits), None)
    if reason:
        return OutOfScope(reading, reason)
    number = count_asked(pack, reading.answers) + 1
    if SCREEN not in reading.answers:
        return Question(reading, SCREEN, number, pack.limits.questions)
    belief = belief_of(pack, region, reading)
    question = next_in_line(belief, reading.answers)
    if question:
        better = better_task(region, belief, reading.answers, question)
        return Question(reading, question, number, pack.limits.questions, better)
    return finish(region, belief, reading)


def finish(region: Region, belief: Belief, reading: ParsedAnswers) -> Result:
    """The advice on what is known now, whether or not more could be asked."""
    flags = raised_flags(belief.model.pack, reading.answers)
    verdict = conclude(belief, reading.answers, flags)
    return Result(reading, verdict, flags, tasks_for(region, belief, reading.answers, verdict.band))


def belief_of(pack: Pack, region: Region, reading: ParsedAnswers) -> Belief:
    """The belief a reading of a trail leads to."""
    return believe(compile_model(pack, region), reading.answers)
