"""What a hand-over is refused with: every problem at once, each with the field it is about."""

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FieldProblem:
    """`field` is a name such as `contact.telephone`; `sentence` says what is wrong and what to do."""

    field: str
    message: str


class Refused(Exception):
    """What was sent cannot be taken as it is. Nothing was written."""

    def __init__(self, problems: Iterable[FieldProblem]) -> None:
        self.problems = tuple(problems)
        super().__init__(" ".join(problem.message for problem in self.problems))


class IdempotencyConflict(Refused):
    """The idempotency key was used for another request."""
