"""A check is a pure function: pack, region and answers in, everything they come to out. The one entry of the engine."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property

from triage.engine.advice import Verdict, conclude, tasks_for
from triage.engine.answers import AnswerProblem, parse_answers
from triage.engine.belief import Belief, infer_belief
from triage.engine.model import compile_model
from triage.engine.next_question import count_asked, follow_up_question, next_question
from triage.engine.pack import SCREEN, Pack, RedFlag, Region, Task
from triage.engine.reading_tasks import better_test
from triage.engine.safety import ends_check, raised_flags


@dataclass(frozen=True, slots=True)
class Question:
    """Put this question next (`danger` is the page of danger signs). `number` counts from one. `better_test` is a
    measurement's task that may be done now and would tell more per second, or None."""

    observation: str
    number: int
    max_questions: int
    better_test: Task | None = None


@dataclass(frozen=True, slots=True)
class Emergency:
    """A red flag was answered yes: act on `flags` in order, test and touch nothing.

    `verdict` is for the repairer; `follow_up_question` may still be answered from memory, or is None.
    """

    flags: tuple[RedFlag, ...]
    verdict: Verdict
    follow_up_question: str | None


@dataclass(frozen=True, slots=True)
class Result:
    """The questions are over. `cautions` are the red flags that limit use without ending the check."""

    verdict: Verdict
    cautions: tuple[RedFlag, ...]
    tasks: tuple[Task, ...]


@dataclass(frozen=True, slots=True)
class OutOfScope:
    """The answers say this is not an electric oven: `reason` names the way out."""

    reason: str


Step = Question | Emergency | Result | OutOfScope


@dataclass(frozen=True)
class Check:
    """What answers come to. `answers` are those that could be used, in the order given, and `problems` says what was
    wrong with the others. Flags, belief and step are worked out once, and only for who asks for them."""

    pack: Pack
    region: Region
    answers: Mapping[str, str]
    problems: tuple[AnswerProblem, ...]

    @cached_property
    def flags(self) -> tuple[RedFlag, ...]:
        """The red flags that were raised, the first to act on first."""
        return raised_flags(self.pack, self.answers)

    @cached_property
    def belief(self) -> Belief:
        return infer_belief(compile_model(self.pack, self.region), self.answers)

    @cached_property
    def step(self) -> Step:
        """What comes next. Red flags are looked at before anything else, and ways out before any probability."""
        if ends_check(self.flags):
            return self._emergency()
        reasons = self.pack.out_of_scope
        reason = next((reasons[pair] for pair in self.answers.items() if pair in reasons), None)
        if reason:
            return OutOfScope(reason)
        number, most = count_asked(self.pack, self.answers) + 1, self.pack.limits.max_questions
        if SCREEN not in self.answers:
            return Question(SCREEN, number, most)
        question = next_question(self.belief, self.answers)
        if question:
            return Question(question, number, most, better_test(self.region, self.belief, self.answers, question))
        return self._result()

    def conclusion(self) -> Result | Emergency:
        """What is known now, whether or not more could be asked."""
        return self.step if isinstance(self.step, Result | Emergency) else self._result()

    def _emergency(self) -> Emergency:
        verdict = conclude(self.belief, self.answers, self.flags)
        return Emergency(self.flags, verdict, follow_up_question(self.belief, self.answers))

    def _result(self) -> Result:
        verdict = conclude(self.belief, self.answers, self.flags)
        return Result(verdict, self.flags, tasks_for(self.region, self.belief, self.answers, verdict.band))


def run_check(pack: Pack, region: Region, pairs: Iterable[tuple[str, str]]) -> Check:
    """The check these answers make. Never raises on what they hold; what was wrong with them is in `problems`."""
    parsed = parse_answers(pack, pairs)
    return Check(pack, region, parsed.answers, parsed.problems)
