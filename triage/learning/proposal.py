"""What a person reads before accepting: how much better, which numbers move, and from how many outcomes."""

from collections.abc import Iterator
from dataclasses import asdict, dataclass
from typing import Any

from triage.authoring.figures import share
from triage.engine.frequency import Row
from triage.engine.pack import Pack
from triage.knowledge.overlay import Numbers, apply_overlay, learnable_answers, learnable_effects
from triage.knowledge.overlay_file import Overlay
from triage.learning.cross_validation import CrossValidation
from triage.learning.fit import Fit
from triage.learning.outcome import job_found
from triage.learning.reliability_plot import in_words
from triage.learning.scores import Scores

MAX_RATES = 10
MAX_ROWS = 10


@dataclass(frozen=True, slots=True, eq=False)
class Proposal:
    """The numbers that all these outcomes teach, and how such numbers did on outcomes held out."""

    firm: str
    fit: Fit
    numbers: Numbers
    comparison: CrossValidation

    def overlay(self, rules: str) -> Overlay:
        return Overlay(
            pack=self.fit.written.id,
            rules=rules,
            outcomes=len(self.fit.outcomes),
            log_score=(self.comparison.before.log_score, self.comparison.after.log_score),
            numbers=self.numbers,
            firm=self.firm,
        )

    def laid(self) -> Pack:
        written = self.fit.written
        return apply_overlay(written, self.numbers, f"{written.version}-proposed")


@dataclass(frozen=True, slots=True)
class RowChange:
    """One row of chances: whose it is, what each chance is of, before, after."""

    what: str
    names: tuple[str, ...]
    before: Row
    after: Row

    @property
    def size(self) -> float:
        return abs(self.after[self._most] - self.before[self._most])

    @property
    def _most(self) -> int:
        return max(range(len(self.after)), key=lambda place: abs(self.after[place] - self.before[place]))

    def __str__(self) -> str:
        most = self._most
        return f"{self.what}: {self.names[most]} {self.before[most]:.3f} -> {self.after[most]:.3f}"


def rate_changes(proposal: Proposal) -> list[tuple[str, float, float, int]]:
    """Fault, calls before and after, how often found; the largest change of calls first."""
    written, calls = proposal.fit.written, proposal.numbers.calls
    found = [job_found(written, outcome.found) for outcome in proposal.fit.outcomes]
    rows = [(f.id, f.calls_per_1000, calls[f.id], found.count(f.id)) for f in written.faults.values()]
    return sorted(rows, key=lambda row: -abs(row[2] - row[1]))


def row_changes(proposal: Proposal) -> list[RowChange]:
    """Effects and answers, the largest change first."""
    pack, numbers = proposal.fit.written, proposal.numbers
    effects, answers = learnable_effects(pack), learnable_answers(pack)
    changes = []
    for key, row in numbers.effects.items():
        fault, condition, when = key
        where = f" on {', '.join(sorted(when))}" if when else ""
        changes.append(
            RowChange(f"{fault} leaves {condition}{where}", pack.conditions[condition].levels, effects[key], row)
        )
    for (observation, level), row in numbers.answers.items():
        options = pack.observations[observation].options
        changes.append(RowChange(f"{observation} answered when {level}", options, answers[observation, level], row))
    return sorted(changes, key=lambda change: -change.size)


def as_lines(proposal: Proposal) -> str:
    return "\n".join([*_head(proposal), "", *_scores(proposal.comparison), "", *_changes(proposal)])


def _head(proposal: Proposal) -> Iterator[str]:
    outcomes = proposal.fit.outcomes
    days = [outcome.day for outcome in outcomes]
    whose = f"of {proposal.firm}, shrunk to all other firms" if proposal.firm else "of all firms"
    yield f"{len(outcomes)} outcomes {whose}, from {min(days)} to {max(days)}."
    yield f"Fixed at the first visit: {share(outcome.first_visit for outcome in outcomes)}."


def _scores(comparison: CrossValidation) -> Iterator[str]:
    middle, low, high = comparison.gain
    verdict = "The proposal is better" if comparison.better else "The proposal is not shown to be better"
    yield "On outcomes held out (every outcome forecast from the other four fifths), before and after:"
    for name, before, after in zip(SCORE_LABELS, _figures(comparison.before), _figures(comparison.after), strict=True):
        yield f"  {name:<26}{before:8.4f}{after:8.4f}"
    yield f"  The log score falls by {middle:.4f} (95 %: {low:.4f} to {high:.4f}). {verdict}."
    if comparison.unexpected:
        yield f"  {comparison.unexpected} findings were impossible to the pack; they count as one in a million million."
    yield "The chance of the leading fault, after:"
    yield from (f"  {line}" for line in in_words(comparison.after.bins))


SCORE_LABELS = (
    "log score",
    "Brier score, all faults",
    "Brier, leading fault",
    "+ reliability",
    "- resolution",
    "+ uncertainty",
    "+ variance within bins",
    "- covariance within bins",
)


def _figures(scores: Scores) -> tuple[float, ...]:
    terms = scores.terms
    return (
        scores.log_score,
        scores.brier,
        terms.total,
        terms.reliability,
        terms.resolution,
        terms.uncertainty,
        terms.variance_within,
        terms.covariance_within,
    )


def _changes(proposal: Proposal) -> Iterator[str]:
    yield "Calls per 1000 that change most:"
    for fault, before, after, found in rate_changes(proposal)[:MAX_RATES]:
        yield f"  {fault:<32}{before:8.1f} -> {after:<8.1f}found {found}"
    changes = row_changes(proposal)
    yield f"Rows of frequencies that change most, of {len(changes)}:"
    yield from (f"  {change}" for change in changes[:MAX_ROWS])


def as_json_ready(proposal: Proposal) -> dict[str, Any]:
    return {
        "firm": proposal.firm,
        "outcomes": len(proposal.fit.outcomes),
        "better": proposal.comparison.better,
        "held_out": asdict(proposal.comparison),
        "calls": [
            {"fault": fault, "before": before, "after": after, "found": found}
            for fault, before, after, found in rate_changes(proposal)
        ],
        "rows": [asdict(change) for change in row_changes(proposal)],
    }
