"""The figures of many checks: how often right, how grave the errors, how long, and how well the chances were stated.

A share comes with its Wilson interval (Wilson, "Probable inference, the law of succession, and statistical inference",
JASA 1927): it never leaves 0 to 1, and says something for twenty cases and for none of twenty.
The log score is minus the mean natural logarithm of the chance given to the right job (family): a proper score over
families, which is what the engine asks about and stops on. 0 is perfect; the score before anything was said stands
beside it. A chance below one in a million million counts as that.
"""

from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass
from math import log, sqrt
from statistics import fmean, median
from typing import Any

from triage.authoring.case_result import CaseResult

Z_95 = 1.959963984540054  # the normal deviate that leaves 2.5 % on either side
MIN_PROBABILITY = 1e-12


@dataclass(frozen=True, slots=True)
class Proportion:
    """How many of how many, and between which shares the true one lies (95 %)."""

    count: int
    of: int
    low: float
    high: float

    def __str__(self) -> str:
        if not self.of:
            return "none to count"
        share = 100 * self.count / self.of
        return f"{self.count} of {self.of}, {share:.1f} % ({100 * self.low:.1f} to {100 * self.high:.1f})"


@dataclass(frozen=True, slots=True)
class CaseFigures:
    """Figures of many checks; the scores are None where no check ended inside the pack."""

    cases: int
    cause_first: Proportion
    cause_in_three: Proportion
    job_first: Proportion
    right_band: Proportion
    under_triage: Proportion
    over_triage: Proportion
    questions_median: float
    questions_most: int
    log_score: float | None
    log_score_before: float | None

    def as_json(self) -> dict[str, Any]:
        return asdict(self)

    def as_rows(self) -> list[tuple[str, str]]:
        """Each figure with what people call it."""
        return [
            ("Right cause first", str(self.cause_first)),
            ("Right cause among the first three", str(self.cause_in_three)),
            ("Right job first", str(self.job_first)),
            ("Right band", str(self.right_band)),
            ("Under-triage (milder than right)", str(self.under_triage)),
            ("Over-triage (graver than right)", str(self.over_triage)),
            ("Questions, median and most", f"{self.questions_median:g} and {self.questions_most}"),
            ("Log score of the job", _score(self.log_score, self.log_score_before)),
        ]


def figures(findings: Sequence[CaseResult]) -> CaseFigures:
    """The figures of these checks, of which there must be one at least."""
    lengths = [len(finding.asked) for finding in findings]
    return CaseFigures(
        cases=len(findings),
        cause_first=share(finding.right_within(1) for finding in findings),
        cause_in_three=share(finding.right_within(3) for finding in findings),
        job_first=share(finding.right_job for finding in findings),
        right_band=share(finding.right_band for finding in findings),
        under_triage=share(finding.under_triage for finding in findings),
        over_triage=share(finding.over_triage for finding in findings),
        questions_median=median(lengths),
        questions_most=max(lengths),
        log_score=log_score(finding.job_probability for finding in findings),
        log_score_before=log_score(finding.prior_job_probability for finding in findings),
    )


def share(outcomes: Iterable[bool]) -> Proportion:
    """The share of true ones with its interval."""
    values = [bool(outcome) for outcome in outcomes]
    return Proportion(sum(values), len(values), *wilson(sum(values), len(values)))


def wilson(count: int, of: int, deviate: float = Z_95) -> tuple[float, float]:
    """Wilson's score interval for `count` of `of`; everything is possible when there is nothing to count."""
    if of == 0:
        return 0.0, 1.0
    rate, square = count / of, deviate * deviate / of
    middle = (rate + square / 2) / (1 + square)
    half = deviate / (1 + square) * sqrt(rate * (1 - rate) / of + square / (4 * of))
    return (0.0 if count == 0 else middle - half), (1.0 if count == of else middle + half)


def log_score(chances: Iterable[float | None]) -> float | None:
    """Minus the mean logarithm of the chances given to what was so; None when there is none."""
    known = [chance for chance in chances if chance is not None]
    return fmean(-log(min(max(chance, MIN_PROBABILITY), 1.0)) for chance in known) if known else None


def _score(after: float | None, before: float | None) -> str:
    if after is None or before is None:
        return "no check to score"
    return f"{after:.3f} (0 is perfect; {before:.3f} before anything is said)"
