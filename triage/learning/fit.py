"""From outcomes to proposed numbers: all firms together, or one firm shrunk to the others.

Learning starts from the pack as written, never from an overlay: every proposal is made of all outcomes so far, so none
counts twice. A firm's numbers start from what the other firms' outcomes make of the pack, and its own outcomes move
them as they would move the pack's; leaving its own out of the start keeps them, too, from counting twice.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

from triage.engine.frequency import Row
from triage.engine.pack import Pack
from triage.knowledge.overlay import AnswerKey, EffectKey, Numbers, apply_overlay
from triage.learning.call_rates import Regions, fitted_calls
from triage.learning.expected_counts import Counter, Counts
from triage.learning.outcome import Outcome
from triage.learning.shrinkage import PRIOR_WEIGHT, dirichlet_mean

MIN_CHANGE = 0.001

Key = TypeVar("Key", EffectKey, AnswerKey)


@dataclass(frozen=True, slots=True, eq=False)
class Fit:
    """Outcomes counted once, for any part of them to be learnt from. `start` are the numbers learning starts from,
    `written` the pack of its authors."""

    written: Pack
    start: Pack
    inherited: Numbers
    regions: Regions
    outcomes: tuple[Outcome, ...]
    counts: tuple[Counts, ...]

    def numbers(self, chosen: Iterable[int]) -> Numbers:
        """What the outcomes at these places teach. Rows that hardly move are left as they are."""
        places = list(chosen)
        total = Counts()
        for place in places:
            total.add(self.counts[place])
        counter = Counter(self.start, self.regions)
        effects = _changed(counter.effects, total.effects)
        answers = _changed(counter.answers, total.answers)
        calls = fitted_calls(self.start, self.written, self.regions, [self.outcomes[place] for place in places])
        return Numbers(calls, {**self.inherited.effects, **effects}, {**self.inherited.answers, **answers})

    def pack(self, chosen: Iterable[int]) -> Pack:
        """The pack as it would be if these outcomes were accepted."""
        return apply_overlay(self.written, self.numbers(chosen), f"{self.written.version}-proposed")


def prepare(
    written: Pack,
    regions: Regions,
    outcomes: Sequence[Outcome],
    firm: str = "",
    progress: Callable[[int], object] = lambda _: None,
) -> Fit:
    """The lesson of all outcomes or, where a firm is named, of its own, starting from what the others teach."""
    own = tuple(outcome for outcome in outcomes if outcome.firm == firm or not firm)
    inherited, start = Numbers(), written
    others = [outcome for outcome in outcomes if firm and outcome.firm != firm]
    if others:
        inherited = prepare(written, regions, others).numbers(range(len(others)))
        start = apply_overlay(written, inherited, f"{written.version}-others")
    counter = Counter(start, regions)
    counts = []
    for outcome in own:
        counts.append(counter.count(outcome))
        progress(len(counts))
    return Fit(written, start, inherited, regions, own, tuple(counts))


def _changed(old: Mapping[Key, Row], counts: Mapping[Key, Sequence[float]]) -> dict[Key, Row]:
    new = {key: dirichlet_mean(old[key], PRIOR_WEIGHT, row) for key, row in counts.items()}
    return {
        key: row
        for key, row in new.items()
        if max(abs(a - b) for a, b in zip(row, old[key], strict=True)) >= MIN_CHANGE
    }
