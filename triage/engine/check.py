"""A check is a pure function: pack, region and trail in, the next step out. The one entry of the engine."""

from collections.abc import Iterable
from dataclasses import dataclass

from triage.engine.advice import Verdict, conclude, tasks_for
from triage.engine.belief import Belief, believe
from triage.engine.model import compile_model
from triage.engine.next_question import count_asked, from_memory, next_in_line
from triage.engine.pack import SCREEN, Pack, RedFlag, Region, Task
from triage.engine.reading_tasks import better_task
from triage.engine.safety import ends_check, raised
from triage.engine.trail import Reading, read_trail


@dataclass(frozen=True, slots=True)
class Ask:
    """Put this question next (`danger` is the page of danger signs). `number` counts from one. `better` is a
    reading's task that may be done now and would tell more per second, or None."""

    reading: Reading
    observation: str
    number: int
    at_most: int
    better: Task | None = None


@dataclass(frozen=True, slots=True)
class MakeSafe:
    """A red flag was answered yes: act on `flags` in order, test and touch nothing.

    `verdict` is for the repairer; `memory` a question that may still be answered from memory, or None.
    """

    reading: Reading
    flags: tuple[RedFlag, ...]
    verdict: Verdict
    memory: str | None


@dataclass(frozen=True, slots=True)
class Advice:
    """The questions are over. `cautions` are the red flags that limit use without ending the check."""

    reading: Reading
    verdict: Verdict
    cautions: tuple[RedFlag, ...]
    tasks: tuple[Task, ...]


@dataclass(frozen=True, slots=True)
class NotThis:
    """The answers say this is not an electric oven: `reason` names the way out."""

    reading: Reading
    reason: str


Step = Ask | MakeSafe | Advice | NotThis


def advise(pack: Pack, region: Region, trail: Iterable[tuple[str, str]]) -> Step:
    """The next step of a check. Never raises on what the trail holds; its faults are in `reading.problems`."""
    reading = read_trail(pack, trail)
    flags = raised(pack, reading.answers)
    if ends_check(flags):
        belief = belief_of(pack, region, reading)
        verdict = conclude(belief, reading.answers, flags)
        return MakeSafe(reading, flags, verdict, from_memory(belief, reading.answers))
    reason = next((pack.exits[pair] for pair in reading.answers.items() if pair in pack.exits), None)
    if reason:
        return NotThis(reading, reason)
    number = count_asked(pack, reading.answers) + 1
    if SCREEN not in reading.answers:
        return Ask(reading, SCREEN, number, pack.limits.questions)
    belief = belief_of(pack, region, reading)
    question = next_in_line(belief, reading.answers)
    if question:
        better = better_task(region, belief, reading.answers, question)
        return Ask(reading, question, number, pack.limits.questions, better)
    return finish(region, belief, reading)


def finish(region: Region, belief: Belief, reading: Reading) -> Advice:
    """The advice on what is known now, whether or not more could be asked."""
    flags = raised(belief.model.pack, reading.answers)
    verdict = conclude(belief, reading.answers, flags)
    return Advice(reading, verdict, flags, tasks_for(region, belief, reading.answers, verdict.band))


def belief_of(pack: Pack, region: Region, reading: Reading) -> Belief:
    """The belief a reading of a trail leads to."""
    return believe(compile_model(pack, region), reading.answers)
