"""Checks by made-up people, to their own end and on: the people come from the author's bench."""

from dataclasses import dataclass, replace
from functools import cache

from triage.authoring.check_runner import CheckRunner
from triage.engine.check import Emergency
from triage.engine.next_question import count_asked

MOST_QUESTIONS = 12


@dataclass(frozen=True)
class Outcome:
    """How one check went: questions put before it ended by itself, and what led once every question was used up."""

    family: str
    ended: object
    questions: int
    last: object

    @property
    def found(self):
        """Whether the right family led at the end."""
        return self.last.step.verdict.family == self.family

    @property
    def was_dangerous(self):
        return isinstance(self.ended, Emergency)


def check_of(household, pack, region):
    """One check to its own end and then on, for as long as the limit of questions lets anybody ask."""
    trail = household.opening_answers()
    ended = walk_on(pack, region).run(trail, household.answer)
    questions = count_asked(pack, ended.answers)
    last = walk_on(without_early_stop(pack), region).run(trail, household.answer)
    return Outcome(household.family, ended.step, questions, last)


@cache
def walk_on(pack, region):
    return CheckRunner(pack, region)


@cache
def without_early_stop(pack):
    """The same pack, stopped by nothing but the number of questions."""
    return replace(pack, limits=replace(pack.limits, max_questions=MOST_QUESTIONS, stop_probability=1.0, min_bits=0.0))
