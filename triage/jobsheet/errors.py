"""What a hand-over is refused with: every problem at once, each with the field it is about."""

from collections.abc import Iterable
from dataclasses import dataclass

from triage.jobsheet.booking_rule import BookingRefusal


@dataclass(frozen=True, slots=True)
class FieldProblem:
    """`field` is a name such as `contact.telephone`; `message` says what is wrong and what to do."""

    field: str
    message: str


class Refused(Exception):
    """What was sent cannot be taken as it is. Nothing was written."""

    def __init__(self, problems: Iterable[FieldProblem]) -> None:
        self.problems = tuple(problems)
        super().__init__(" ".join(problem.message for problem in self.problems))


class NotBookable(Exception):
    """No visit may be booked with these answers. Nothing was written."""

    def __init__(self, reason: BookingRefusal) -> None:
        self.reason = reason
        super().__init__(reason.value)


class IdempotencyConflict(Refused):
    """The idempotency key was used for another request."""
