"""Chances as natural frequencies, and which answers speak for and against a cause.

"About 7 in 10 ovens that answer like this" is understood by more people than 70 %; nothing finer is claimed.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from triage.check_pages.presenters.answers import answer_label, question_label
from triage.check_pages.request import CheckRequest
from triage.engine import Cause as LikelyCause
from triage.engine import Verdict, WeightOfEvidence
from triage.jobsheet.wording import per_ten, short_chance, tenths
from triage.knowledge.texts import Texts

MIN_DECIBANS = 1.0  # the least weight a person is told about
MAX_LINES = 4

__all__ = ["Cause", "causes_of", "short_chance", "tenths"]


@dataclass(frozen=True)
class Cause:
    """One possible cause; `per_ten` of ten ovens that answer alike have it (`sentences/chance.txt`)."""

    name: str
    per_ten: int
    explanation: str
    points_to: list[str]
    points_away: list[str]
    part: str


def causes_of(check_request: CheckRequest, verdict: Verdict) -> list[Cause]:
    return [_cause(check_request.texts, cause) for cause in verdict.causes]


def _cause(texts: Texts, cause: LikelyCause) -> Cause:
    fault = texts.faults[cause.fault]
    return Cause(
        name=fault.name,
        per_ten=per_ten(cause.chance),
        explanation=fault.means,
        points_to=_lines(texts, (w for w in cause.weights if w.decibans >= MIN_DECIBANS)),
        points_away=_lines(texts, (w for w in cause.weights if w.decibans <= -MIN_DECIBANS)),
        part=fault.picture,
    )


def _lines(texts: Texts, weights: Iterable[WeightOfEvidence]) -> list[str]:
    """The heaviest answers first, as "question: answer"."""
    heaviest = sorted(weights, key=lambda weight: -abs(weight.decibans))[:MAX_LINES]
    return [
        f"{question_label(texts, weight.observation)}: {answer_label(texts, weight.observation, weight.answer)}"
        for weight in heaviest
    ]
