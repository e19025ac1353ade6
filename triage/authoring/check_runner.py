"""Walks a check to its end as a person would live it: the engine asks, somebody answers.

After a danger sign the questions from memory are put too. What was asked after a set of answers is kept for as long
as the walk lives, because the first questions of many checks are the same; nothing else of a check is kept. On the
way past a danger sign only the next question is worked out, not the verdict that nobody reads yet.
"""

from collections.abc import Callable
from functools import cached_property

from triage.engine.belief import infer_belief
from triage.engine.check import Check, Question, run_check
from triage.engine.model import Model, compile_model
from triage.engine.next_question import follow_up_question
from triage.engine.pack import Pack, Region
from triage.engine.safety import ends_check

MAX_CACHED = 50_000  # sets of answers; what comes later is rarer and seldom comes again

Answers = list[tuple[str, str]]


class CheckRunner:
    """Checks on one pack in one region."""

    def __init__(self, pack: Pack, region: Region) -> None:
        self.pack = pack
        self.region = region
        self.asked: dict[frozenset[tuple[str, str]], str | None] = {}

    @cached_property
    def model(self) -> Model:
        return compile_model(self.pack, self.region)

    @cached_property
    def prior_families(self) -> dict[str, float]:
        """The chance of each family before anything is said."""
        return dict(infer_belief(self.model, {}).families)

    def run(self, trail: Answers, answer: Callable[[str], str]) -> Check:
        """The check that begins with `trail`, to which every further answer is added."""
        while True:
            question, check = self._next(trail)
            if question is None:
                return check or run_check(self.pack, self.region, trail)
            trail.append((question, answer(question)))

    def _next(self, trail: Answers) -> tuple[str | None, Check | None]:
        """The question after these answers, and the check where it had to be worked out."""
        key = frozenset(trail)
        if key in self.asked:
            return self.asked[key], None
        check = run_check(self.pack, self.region, trail)
        if ends_check(check.flags):
            question = follow_up_question(check.belief, check.answers)
        else:
            question = check.step.observation if isinstance(check.step, Question) else None
        if len(self.asked) < MAX_CACHED:
            self.asked[key] = question
        return question, check
