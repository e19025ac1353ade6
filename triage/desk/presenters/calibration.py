"""How right the stated chances were at this firm's ovens, and what its outcomes would change."""

from dataclasses import dataclass
from datetime import datetime

from django.utils.translation import gettext as _

from triage.authoring.figures import Proportion, share
from triage.desk.outcome_stats import (
    MAX_SCORED,
    MIN_OUTCOMES_FOR_PROPOSAL,
    current_scores,
    outcomes_of,
    training_outcomes,
)
from triage.knowledge.library import library
from triage.learning.reliability_plot import in_words, reliability_svg
from triage.models import Firm, Report
from triage.models.report import ReportTopic

Row = tuple[str, str]


@dataclass(frozen=True, slots=True)
class RateChange:
    fault: str
    before: str
    after: str
    found: int


@dataclass(frozen=True, slots=True)
class ProposalSummary:
    """What `manage.py compute_reports` worked out, from so many outcomes on that day."""

    made: datetime
    outcomes: int
    better: bool
    gain: str
    rows: tuple[tuple[str, str, str], ...]
    rates: tuple[RateChange, ...]
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
    proposal: ProposalSummary | None
    min_outcomes: int
    firm: str


def calibration_page(firm: Firm) -> CalibrationPage:
    records = outcomes_of(firm)
    newest = list(records[:MAX_SCORED])
    outcomes = training_outcomes(newest, library().pack)
    scores = current_scores(outcomes)
    figures: tuple[Row, ...] = ()
    if scores is not None:
        first = share(outcome.first_visit for outcome in outcomes)
        figures = (
            (_("Fixed on the first visit"), _as_share(first)),
            (_("Brier score, all faults: 0 is perfect, 2 the worst"), f"{scores.brier:.3f}"),
            (_("Log score of what was found: 0 is perfect"), f"{scores.log_score:.3f}"),
        )
    return CalibrationPage(
        all=records.count(),
        used=len(outcomes),
        left_out=len(newest) - len(outcomes),
        figures=figures,
        bins=tuple(in_words(scores.bins)) if scores else (),
        plot=reliability_svg((), scores.bins) if scores else "",
        proposal=_proposal(firm),
        min_outcomes=MIN_OUTCOMES_FOR_PROPOSAL,
        firm=firm.slug,
    )


def _as_share(part: Proportion) -> str:
    params = {"count": part.count, "of": part.of, "low": round(100 * part.low), "high": round(100 * part.high)}
    return _("%(count)s of %(of)s (between %(low)s and %(high)s in 100, 95 %%)") % params


def _proposal(firm: Firm) -> ProposalSummary | None:
    report = Report.objects.filter(topic=ReportTopic.CALIBRATION, firm=firm).first()
    if report is None:
        return None
    contents = report.contents
    middle, low, high = contents["gain"]
    names = library().texts_for(firm.region).faults
    return ProposalSummary(
        made=report.computed,
        outcomes=contents["outcomes"],
        better=contents["better"],
        gain=f"{middle:.3f} ({low:.3f} – {high:.3f})",
        rows=tuple(
            (name, f"{before:.3f}", f"{after:.3f}")
            for name, before, after in zip(
                (_("Brier score, all faults"), _("Log score")), contents["before"], contents["after"], strict=True
            )
        ),
        rates=tuple(
            RateChange(names[fault].name if fault in names else fault, f"{before:.1f}", f"{after:.1f}", found)
            for fault, before, after, found in contents["rates"]
        ),
        lines=contents["lines"],
        plot=contents["plot"],
    )
