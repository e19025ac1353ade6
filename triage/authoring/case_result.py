"""How one check came out, beside what it should have come to."""

from dataclasses import dataclass

from triage.authoring.cases import Expected
from triage.authoring.check_runner import CheckRunner
from triage.engine.check import Check, Emergency, OutOfScope, Question, Result
from triage.engine.pack import Band

CERTAIN = 1.0


@dataclass(frozen=True, slots=True)
class CaseResult:
    """One check. `causes` as the advice names them, with their chances; `rank` the place of the best expected cause
    among all of them, None where it is none of the pack's. `job` is the leading family and `stated` its chance.
    `chance` is what the families of the expected causes were given at the end and `before` what they had before
    anything was said. The chances are None where the check ended, or should have, outside the pack."""

    case: str
    asked: tuple[str, ...]
    answered: int
    band: Band
    causes: tuple[tuple[str, float], ...]
    rank: int | None
    job: str
    leading_probability: float | None
    right_jobs: frozenset[str]
    job_probability: float | None
    prior_job_probability: float | None
    expected: Expected

    @property
    def right_band(self) -> bool:
        return self.band in self.expected.bands

    @property
    def under_triage(self) -> bool:
        """Whether the advice is milder than it should be; of several right bands the gravest is the measure."""
        return not self.right_band and self.band.severity < max(band.severity for band in self.expected.bands)

    @property
    def over_triage(self) -> bool:
        return not self.right_band and not self.under_triage

    @property
    def right_job(self) -> bool:
        return self.job in self.right_jobs

    def right_within(self, first: int) -> bool:
        """Whether an expected cause is among the first so many that the advice names."""
        return any(cause in self.expected.causes for cause, _ in self.causes[:first])


def case_result(
    walk: CheckRunner, case: str, check: Check, expected: Expected, asked: tuple[str, ...] = (), answered: int = 0
) -> CaseResult:
    """The finding of a check that was walked to its end."""
    step = check.step
    if isinstance(step, Question):
        raise TypeError(f"{case}: the check has not ended")
    jobs = frozenset(walk.pack.faults[c].family if c in walk.pack.faults else c for c in expected.causes)
    if isinstance(step, OutOfScope):
        causes: tuple[tuple[str, float], ...] = ((step.reason, CERTAIN),)
        rank = 1 if step.reason in expected.causes else None
        return CaseResult(
            case, asked, answered, Band.QUALIFIED, causes, rank, step.reason, None, jobs, None, None, expected
        )
    belief = check.belief
    places = [place for place, cause in enumerate(belief.ranking, 1) if cause in expected.causes]
    inside = jobs <= belief.families.keys()
    return CaseResult(
        case=case,
        asked=asked,
        answered=answered,
        band=band_of(step),
        causes=tuple((cause.fault, cause.chance) for cause in step.verdict.causes),
        rank=min(places, default=None),
        job=step.verdict.family,
        leading_probability=belief.families[step.verdict.family],
        right_jobs=jobs,
        job_probability=sum(belief.families[job] for job in jobs) if inside else None,
        prior_job_probability=sum(walk.prior_families[job] for job in jobs) if inside else None,
        expected=expected,
    )


def band_of(step: Emergency | Result) -> Band:
    return Band.MAKE_SAFE if isinstance(step, Emergency) else step.verdict.band
