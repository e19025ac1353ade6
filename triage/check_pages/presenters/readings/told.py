"""What comes of a reading, kind by kind alike: the value in words, what it means, and its picture."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from django.utils.translation import gettext as _

from triage.check_pages.drawings.drawing import Drawing
from triage.check_pages.request import CheckRequest
from triage.engine.pack import Observation
from triage.engine.readings import gauge_answer

CLEAR = 0.7


@dataclass(frozen=True)
class Told:
    """`lines` beside what the answer's options say; `wanting` what would make it surer."""

    drawing: Drawing
    lines: list[str] = field(default_factory=list)


def meaning(check_request: CheckRequest, observation: Observation, text: str) -> str:
    """Which of the answers in words the figures fit, without an edge: near one, both are named."""
    told = gauge_answer(observation, text)
    question = check_request.texts.questions[observation.id]
    ranked = sorted(_distinct(observation), key=lambda option: -told[option])
    total = sum(told[option] for option in ranked)
    first, second = (question.options[option] for option in ranked[:2])
    words = {"short": question.short, "words": first, "other": second}
    if told[ranked[0]] >= CLEAR * total:
        return _("%(short)s: this fits “%(words)s”.") % words
    return _("%(short)s: this lies between “%(words)s” and “%(other)s”. Both are weighed.") % words


def _distinct(observation: Observation) -> Sequence[str]:
    """The options; of two with one span the later one, which says it in figures."""
    spans = observation.gauge.spans if observation.gauge else {}
    by_span = {spans.get(option, option): option for option in observation.options}
    return list(by_span.values())
