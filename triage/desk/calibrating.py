"""A firm's own outcomes as learning takes them, and how right the stated chances were.

What is quick is worked out for the page; the proposal takes a model for every fifth of the outcomes, so
`manage.py reckon` works it out beforehand. Nothing here changes a number of the pack: that is `pack accept`.
"""

from collections.abc import Callable, Iterable
from typing import Any

import yaml
from django.db.models import QuerySet
from django.utils import timezone

from triage.engine.pack import Pack
from triage.knowledge.library import library, load_library
from triage.learning.held_out import compare, forecasts
from triage.learning.lesson import prepare
from triage.learning.outcome import Outcome, usable_answers
from triage.learning.proposal import Proposal, as_lines, rate_changes
from triage.learning.reliability_plot import reliability_svg
from triage.learning.scores import Scores, scores
from triage.models import Firm, Reckoning
from triage.models import Outcome as Recorded
from triage.models.reckoning import Topic

MOST_AT_ONCE = 200  # about a second and a half of reckoning
FEWEST_FOR_A_PROPOSAL = 20
RATES_SHOWN = 12


def recorded_of(firm: Firm) -> QuerySet[Recorded]:
    """The firm's outcomes, the newest first."""
    return Recorded.objects.filter(sheet__firm=firm).select_related("sheet", "sheet__firm").order_by("-recorded", "-pk")


def lessons_from(recorded: Iterable[Recorded], pack: Pack) -> list[Outcome]:
    """Outcomes of which the pack knows everything that was found; the rest can teach it nothing."""
    parts = {name: part for part, name in library().texts["en"].parts.items()}
    found = []
    for one in recorded:
        if not one.found or any(fault not in pack.faults for fault in one.found):
            continue
        if one.sheet.region not in library().regions:
            continue
        named = library().words(one.sheet.region).parts
        ids = parts | {name: part for part, name in named.items()}
        found.append(
            Outcome(
                reference=one.sheet.reference,
                region=one.sheet.region,
                answers=dict(one.sheet.trail),
                found=tuple(one.found),
                day=f"{one.recorded:%Y-%m-%d}",
                first_visit=one.fixed_first_visit,
                fitted=tuple(dict.fromkeys(ids[name] for name in one.fitted if name in ids)),
                firm=one.sheet.firm.slug,
            )
        )
    return found


def scores_now(outcomes: list[Outcome]) -> Scores | None:
    """How right the pack in use was about these; None where there are none."""
    if not outcomes:
        return None
    return scores(forecasts(library().pack, _regions(), outcomes))


def outcomes_file(outcomes: Iterable[Outcome], pack: Pack) -> str:
    """The YAML file that `manage.py pack learn` reads."""
    rows: list[dict[str, Any]] = []
    for outcome in outcomes:
        row: dict[str, Any] = {"reference": outcome.reference, "firm": outcome.firm, "region": outcome.region}
        row |= {"day": outcome.day, "answers": dict(usable_answers(pack, outcome)), "found": list(outcome.found)}
        if outcome.fitted:
            row["fitted"] = list(outcome.fitted)
        rows.append(row | {"first_visit": outcome.first_visit})
    return yaml.safe_dump({"outcomes": rows}, sort_keys=False, allow_unicode=True)


def reckon_calibration(firm: Firm, tell: Callable[[int], object] = lambda _done: None) -> Reckoning | None:
    """What these outcomes propose, kept for the page; None where there are too few."""
    written = load_library(learnt=False).pack
    outcomes = lessons_from(recorded_of(firm), written)
    if len(outcomes) < FEWEST_FOR_A_PROPOSAL:
        return None
    lesson = prepare(written, _regions(), outcomes)
    comparison = compare(lesson, written, tell)
    proposal = Proposal(firm.slug, lesson, lesson.numbers(range(len(outcomes))), comparison)
    contents = {
        "outcomes": len(outcomes),
        "better": comparison.better,
        "gain": list(comparison.gain),
        "before": [comparison.before.brier, comparison.before.log_score],
        "after": [comparison.after.brier, comparison.after.log_score],
        "plot": reliability_svg(comparison.before.bins, comparison.after.bins),
        "lines": as_lines(proposal),
        "rates": [list(row) for row in rate_changes(proposal)[:RATES_SHOWN]],
    }
    return keep(Topic.CALIBRATION, contents, written.version, firm)


def keep(topic: Topic, contents: dict[str, Any], version: str, firm: Firm | None = None) -> Reckoning:
    kept, _made = Reckoning.objects.update_or_create(
        topic=topic, firm=firm, defaults={"contents": contents, "pack_version": version, "made": timezone.now()}
    )
    return kept


def _regions() -> dict[str, Any]:
    return {code: profile.region for code, profile in library().regions.items()}
