"""How far a long piece of work has come, said to a person who waits: nothing in the first two seconds, then now and
then."""

from collections.abc import Callable
from time import monotonic

QUIET_SECONDS = 2.0
BETWEEN_SECONDS = 2.0


class Progress:
    """Call it with how much is done; it says so through `say` no oftener than a person wants to read."""

    def __init__(self, what: str, total: int, say: Callable[[str], object], clock: Callable[[], float] = monotonic):
        self.what = what
        self.total = total
        self.say = say
        self.clock = clock
        self.due = clock() + QUIET_SECONDS

    def __call__(self, done: int) -> None:
        now = self.clock()
        if now >= self.due:
            self.due = now + BETWEEN_SECONDS
            self.say(f"{done} of {self.total} {self.what}")
