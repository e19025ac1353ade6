"""Which of the answers that can be picked the figures fit, without an edge: near one, both are named."""

from collections.abc import Sequence
from dataclasses import dataclass

from triage.check_pages.request import CheckRequest
from triage.engine.pack import Observation
from triage.engine.readings import option_likelihoods

CLEAR = 0.7


@dataclass(frozen=True)
class Interpretation:
    """The question in short, the answer that fits best, and the `next` best, which counts unless it is `clear`."""

    question: str
    best: str
    next: str
    clear: bool


def interpret(check_request: CheckRequest, observation: Observation, text: str) -> Interpretation:
    likelihoods = option_likelihoods(observation, text)
    question = check_request.texts.questions[observation.id]
    ranked = sorted(_distinct(observation), key=lambda option: -likelihoods[option])
    total = sum(likelihoods[option] for option in ranked)
    best, second = (question.options[option] for option in ranked[:2])
    return Interpretation(question.short, best, second, likelihoods[ranked[0]] >= CLEAR * total)


def _distinct(observation: Observation) -> Sequence[str]:
    """The options; of two with one span the later one, which says it in figures."""
    spans = observation.measurement.intervals if observation.measurement else {}
    by_span = {spans.get(option, option): option for option in observation.options}
    return list(by_span.values())
