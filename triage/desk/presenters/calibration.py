"""How right the stated chances were at this firm's ovens, and what its outcomes would change."""

from dataclasses import dataclass
from datetime import datetime

from django.utils.translation import gettext as _

from triage.authoring.figures import Share, share
from triage.desk.calibrating import FEWEST_FOR_A_PROPOSAL, MOST_AT_ONCE, lessons_from, recorded_of, scores_now
from triage.knowledge.library import library
from triage.learning.reliability_plot import in_words, reliability_svg
from triage.models import Firm, Reckoning
from triage.models.reckoning import Topic

Row = tuple[str, str]


@dataclass(frozen=True, slots=True)
class RateLine:
    fault: str
    before: str
    after: str
    found: int


@dataclass(frozen=True, slots=True)
class ProposalPart:
    """What `manage.py reckon` worked out, from so many outcomes on that day."""

    made: datetime
    outcomes: int
    better: bool
    gain: str
    rows: tuple[tuple[str, str, str], ...]
    rates: tuple[RateLine, ...]
    lines: str
    plot: str


@dataclass(frozen=True, slots=True)
class CalibrationPage:
    """`all` outcomes there are, of which the newest `used` are scored."""

    all: int
    used: int
    left_out: int
    figures: tuple[Row, ...]
    bins: tuple[str, ...]
    plot: str
    proposal: ProposalPart | None
    fewest: int
    firm: str


def calibration_page(firm: Firm) -> CalibrationPage:
    recorded = recorded_of(firm)
    newest = list(recorded[:MOST_AT_ONCE])
    outcomes = lessons_from(newest, library().pack)
    held = scores_now(outcomes)
    figures: tuple[Row, ...] = ()
    if held is not None:
        first = share(outcome.first_visit for outcome in outcomes)
        figures = (
            (_("Fixed at the first visit"), _of(first)),
            (_("Brier score, all faults: 0 is perfect, 2 the worst"), f"{held.brier:.3f}"),
            (_("Log score of what was found: 0 is perfect"), f"{held.log_score:.3f}"),
        )
    return CalibrationPage(
        all=recorded.count(),
        used=len(outcomes),
        left_out=len(newest) - len(outcomes),
        figures=figures,
        bins=tuple(in_words(held.bins)) if held else (),
        plot=reliability_svg((), held.bins) if held else "",
        proposal=_proposal(firm),
        fewest=FEWEST_FOR_A_PROPOSAL,
        firm=firm.slug,
    )


def _of(told: Share) -> str:
    words = {"count": told.count, "of": told.of, "low": round(100 * told.low), "high": round(100 * told.high)}
    return _("%(count)s of %(of)s (between %(low)s and %(high)s in 100, 95 %%)") % words


def _proposal(firm: Firm) -> ProposalPart | None:
    kept = Reckoning.objects.filter(topic=Topic.CALIBRATION, firm=firm).first()
    if kept is None:
        return None
    told = kept.contents
    middle, low, high = told["gain"]
    names = library().words(firm.region).faults
    return ProposalPart(
        made=kept.made,
        outcomes=told["outcomes"],
        better=told["better"],
        gain=f"{middle:.3f} ({low:.3f} – {high:.3f})",
        rows=tuple(
            (name, f"{before:.3f}", f"{after:.3f}")
            for name, before, after in zip(
                (_("Brier score, all faults"), _("Log score")), told["before"], told["after"], strict=True
            )
        ),
        rates=tuple(
            RateLine(names[fault].name if fault in names else fault, f"{before:.1f}", f"{after:.1f}", found)
            for fault, before, after, found in told["rates"]
        ),
        lines=told["lines"],
        plot=told["plot"],
    )
