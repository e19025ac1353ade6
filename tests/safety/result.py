"""What a search met: how many steps or pages, of which kinds, and the first violations with the trail to each."""

from collections import Counter
from dataclasses import dataclass, field

from tests.safety.parallel import in_parallel

MOST_SHOWN = 20


@dataclass
class SearchResult:
    """`broken` holds (sentence, region, address or trail); `seconds` of all processes together."""

    states: int = 0
    edges: int = 0
    seconds: float = 0.0
    kinds: Counter = field(default_factory=Counter)
    broken: list = field(default_factory=list)

    @property
    def violations(self):
        """The first violations, a line each; empty when there are none."""
        return "\n".join(f"{sentence}  {region}: {pairs}" for sentence, region, pairs in self.broken)

    def note(self, sentences, region, pairs):
        self.broken += [(sentence, region, tuple(pairs)) for sentence in sentences][: MOST_SHOWN - len(self.broken)]

    def add(self, other):
        self.states += other.states
        self.edges += other.edges
        self.seconds += other.seconds
        self.kinds += other.kinds
        self.broken += other.broken[: MOST_SHOWN - len(self.broken)]
        return self


def all_together(work, jobs, **conditions):
    """`work(*job)` for every job, added up."""
    total = SearchResult()
    for found in in_parallel(work, jobs, **conditions):
        total.add(found)
    return total
