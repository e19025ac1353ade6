"""Chances as natural frequencies, and which answers speak for and against a cause.

"About 7 in 10 ovens that answer like this" is understood by more people than 70 %; nothing finer is claimed.
"""

from collections.abc import Iterable

from django.utils.translation import gettext as _

from triage.check_pages.presenters.answers import answer_words, question_words
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import Cause
from triage.engine import Cause as LikelyCause
from triage.engine import Verdict, WeightOfEvidence
from triage.jobsheet.wording import short_chance, tenths
from triage.knowledge.texts import Texts

SPEAKS = 1.0  # decibans: the least weight a person is told about
MOST_LINES = 4

__all__ = ["causes_of", "chance_words", "short_chance", "tenths"]


def causes_of(check_request: CheckRequest, verdict: Verdict) -> list[Cause]:
    return [_cause(check_request.texts, cause) for cause in verdict.causes]


def chance_words(chance: float) -> str:
    """A chance as so many of ten ovens; never certain, never nothing."""
    return _("%(share)s ovens that answer like this") % {"share": short_chance(chance)}


def _cause(texts: Texts, cause: LikelyCause) -> Cause:
    fault = texts.faults[cause.fault]
    return Cause(
        name=fault.name,
        chance_words=chance_words(cause.chance),
        tenths=tenths(cause.chance),
        explanation=fault.means,
        points_to=_lines(texts, (w for w in cause.weights if w.decibans >= SPEAKS)),
        points_away=_lines(texts, (w for w in cause.weights if w.decibans <= -SPEAKS)),
        part=fault.picture,
    )


def _lines(texts: Texts, weights: Iterable[WeightOfEvidence]) -> list[str]:
    """The heaviest answers first, as "question: answer"."""
    heaviest = sorted(weights, key=lambda weight: -abs(weight.decibans))[:MOST_LINES]
    return [
        f"{question_words(texts, weight.observation)}: {answer_words(texts, weight.observation, weight.answer)}"
        for weight in heaviest
    ]
