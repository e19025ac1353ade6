"""Scores on outcomes that were not learnt from: every outcome is forecast by what the other four fifths teach.

The fifth an outcome belongs to comes from a hash of its reference, so it is the same on every machine and does not
change when outcomes are added. A pack in use that was itself learnt from some of these outcomes has seen them, so the
gain over it is then understated.
"""

import hashlib
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import log

from triage.authoring.figures import MIN_PROBABILITY
from triage.engine.belief import infer_belief
from triage.engine.model import compile_model
from triage.engine.pack import Pack
from triage.knowledge.overlay import observed_by_technician
from triage.learning.call_rates import Regions
from triage.learning.fit import Fit
from triage.learning.outcome import Outcome, job_found, usable_answers
from triage.learning.scores import Forecast, Scores, mean_difference, scores

FOLDS = 5


@dataclass(frozen=True, slots=True)
class CrossValidation:
    """Scores before and after on the same held-out outcomes. `gain` is how much the log score falls, with its 95 %
    interval; `first_visits` how many were fixed at once."""

    before: Scores
    after: Scores
    gain: tuple[float, float, float]
    outcomes: int
    unexpected: int

    @property
    def better(self) -> bool:
        """Whether the whole interval of the gain is above zero."""
        return self.gain[1] > 0.0


def fold_of(reference: str) -> int:
    return int(hashlib.sha256(reference.encode()).hexdigest(), 16) % FOLDS


def compare(lesson: Fit, in_use: Pack, progress: Callable[[int], object] = lambda _: None) -> CrossValidation:
    """The pack in use against what would be learnt, both on outcomes that the learning did not see."""
    folds = [fold_of(outcome.reference) for outcome in lesson.outcomes]
    before = forecasts(in_use, lesson.regions, lesson.outcomes)
    after: dict[int, Forecast] = {}
    for fold in sorted(set(folds)):
        proposed = lesson.pack(place for place, own in enumerate(folds) if own != fold)
        held = [place for place, own in enumerate(folds) if own == fold]
        found = forecasts(proposed, lesson.regions, [lesson.outcomes[place] for place in held])
        after |= dict(zip(held, found, strict=True))
        progress(len(after))
    ordered = [after[place] for place in range(len(folds))]
    return CrossValidation(
        before=scores(before),
        after=scores(ordered),
        gain=mean_difference([_loss(f) for f in before], [_loss(f) for f in ordered]),
        outcomes=len(ordered),
        unexpected=sum(forecast.found_probability <= MIN_PROBABILITY for forecast in before),
    )


def forecasts(pack: Pack, regions: Regions, outcomes: Sequence[Outcome]) -> list[Forecast]:
    """What the pack would have said to a van about each of these checks."""
    visited = observed_by_technician(pack)
    found = []
    for outcome in outcomes:
        belief = infer_belief(compile_model(visited, regions[outcome.region]), usable_answers(pack, outcome))
        chances: dict[str, float] = {}
        for hypothesis, chance in zip(belief.model.hypotheses, belief.probabilities, strict=True):
            chances[hypothesis.faults[0]] = chances.get(hypothesis.faults[0], 0.0) + chance
        found.append(Forecast(chances, job_found(pack, outcome.found)))
    return found


def _loss(forecast: Forecast) -> float:
    return -log(max(forecast.found_probability, MIN_PROBABILITY))
