"""A firm's own outcomes as learning takes them, and how right the stated chances were.

What is quick is worked out for the page; the proposal takes a model for every fifth of the outcomes, so
`manage.py compute_reports` works it out beforehand. Nothing here changes a number of the pack: that is `pack accept`.
"""

from collections.abc import Callable, Iterable
from typing import Any

import yaml
from django.db.models import QuerySet
from django.utils import timezone

from triage.engine.pack import Pack
from triage.knowledge.library import library, load_library
from triage.learning.cross_validation import compare, forecasts
from triage.learning.fit import prepare
from triage.learning.outcome import Outcome, usable_answers
from triage.learning.proposal import Proposal, as_lines, rate_changes
from triage.learning.reliability_plot import reliability_svg
from triage.learning.scores import Scores, scores
from triage.models import Firm, Report
from triage.models import Outcome as Recorded
from triage.models.report import ReportTopic

MAX_SCORED = 200  # about a second and a half of reckoning
MIN_OUTCOMES_FOR_PROPOSAL = 20
MAX_RATES_SHOWN = 12


def outcomes_of(firm: Firm) -> QuerySet[Recorded]:
    """The firm's outcomes, the newest first."""
    return Recorded.objects.filter(sheet__firm=firm).select_related("sheet", "sheet__firm").order_by("-recorded", "-pk")


def training_outcomes(recorded: Iterable[Recorded], pack: Pack) -> list[Outcome]:
    """Outcomes of which the pack knows everything that was found; the rest can teach it nothing."""
    parts = {name: part for part, name in library().texts["en"].parts.items()}
    outcomes = []
    for record in recorded:
        if not record.found or any(fault not in pack.faults for fault in record.found):
            continue
        if record.sheet.region not in library().regions:
            continue
        regional = library().texts_for(record.sheet.region).parts
        ids = parts | {name: part for part, name in regional.items()}
        outcomes.append(
            Outcome(
                reference=record.sheet.reference,
                region=record.sheet.region,
                answers=dict(record.sheet.answers),
                found=tuple(record.found),
                day=f"{record.recorded:%Y-%m-%d}",
                first_visit=record.fixed_first_visit,
                fitted=tuple(dict.fromkeys(ids[name] for name in record.fitted if name in ids)),
                firm=record.sheet.firm.slug,
            )
        )
    return outcomes


def current_scores(outcomes: list[Outcome]) -> Scores | None:
    """How right the pack in use was about these; None where there are none."""
    if not outcomes:
        return None
    return scores(forecasts(library().pack, _regions(), outcomes))


def outcomes_file(outcomes: Iterable[Outcome], pack: Pack) -> str:
    """The YAML file that `manage.py pack fit` reads."""
    rows: list[dict[str, Any]] = []
    for outcome in outcomes:
        row: dict[str, Any] = {"reference": outcome.reference, "firm": outcome.firm, "region": outcome.region}
        row |= {"day": outcome.day, "answers": dict(usable_answers(pack, outcome)), "found": list(outcome.found)}
        if outcome.fitted:
            row["fitted"] = list(outcome.fitted)
        rows.append(row | {"first_visit": outcome.first_visit})
    return yaml.safe_dump({"outcomes": rows}, sort_keys=False, allow_unicode=True)


def report_calibration(firm: Firm, progress: Callable[[int], object] = lambda _done: None) -> Report | None:
    """What these outcomes propose, kept for the page; None where there are too few."""
    pack = load_library(learnt=False).pack
    outcomes = training_outcomes(outcomes_of(firm), pack)
    if len(outcomes) < MIN_OUTCOMES_FOR_PROPOSAL:
        return None
    lesson = prepare(pack, _regions(), outcomes)
    comparison = compare(lesson, pack, progress)
    proposal = Proposal(firm.slug, lesson, lesson.numbers(range(len(outcomes))), comparison)
    contents = {
        "outcomes": len(outcomes),
        "better": comparison.better,
        "gain": list(comparison.gain),
        "before": [comparison.before.brier, comparison.before.log_score],
        "after": [comparison.after.brier, comparison.after.log_score],
        "plot": reliability_svg(comparison.before.bins, comparison.after.bins),
        "lines": as_lines(proposal),
        "rates": [list(row) for row in rate_changes(proposal)[:MAX_RATES_SHOWN]],
    }
    return save_report(ReportTopic.CALIBRATION, contents, pack.version, firm)


def save_report(topic: ReportTopic, contents: dict[str, Any], version: str, firm: Firm | None = None) -> Report:
    report, _created = Report.objects.update_or_create(
        topic=topic, firm=firm, defaults={"contents": contents, "pack_version": version, "computed": timezone.now()}
    )
    return report


def _regions() -> dict[str, Any]:
    return {code: profile.region for code, profile in library().regions.items()}
