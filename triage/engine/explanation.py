"""How much each answer says for a cause: weight of evidence in decibans, 10*log10 of the Bayes factor (Good 1950).

Answers are taken in the order given, so the weights of a trail add up to the change of the cause's log odds.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import log10

from triage.engine.belief import infer_belief
from triage.engine.model import Model

MIN_PROBABILITY = 1e-12


@dataclass(frozen=True, slots=True)
class WeightOfEvidence:
    """What one answer weighs for one fault, in decibans: above zero points to it, below points away."""

    observation: str
    answer: str
    decibans: float


def weights_of_evidence(
    model: Model, answers: Mapping[str, str], faults: tuple[str, ...]
) -> Mapping[str, tuple[WeightOfEvidence, ...]]:
    """For each of `faults`, the weight of every answer in the order given."""
    odds = {fault: [_log_odds(model, {}, fault)] for fault in faults}
    known: dict[str, str] = {}
    for observation, answer in answers.items():
        known[observation] = answer
        belief = infer_belief(model, known)
        for fault in faults:
            odds[fault].append(_decibans(belief.faults[fault]))
    return {
        fault: tuple(
            WeightOfEvidence(observation, answer, after - before)
            for (observation, answer), before, after in zip(answers.items(), steps, steps[1:], strict=False)
        )
        for fault, steps in odds.items()
    }


def _log_odds(model: Model, answers: Mapping[str, str], fault: str) -> float:
    return _decibans(infer_belief(model, answers).faults[fault])


def _decibans(chance: float) -> float:
    bounded = min(max(chance, MIN_PROBABILITY), 1.0 - MIN_PROBABILITY)
    return 10.0 * log10(bounded / (1.0 - bounded))
