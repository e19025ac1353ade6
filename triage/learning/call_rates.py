"""New call rates from what was found; a dangerous fault may become more likely but never less.

Outcomes are visits, so they are held against the pack as a van sees it (`as_visited`). The rate of a fault is the
same everywhere; what differs by region is how many ovens can have it. An outcome counts for the fault its job is
named after, and a pair keeps its share of that fault's calls: how often two faults come together is not learnt.

A rate is worth `WORTH` calls in the region where its fault is commonest, so that a few finds where a fault is
nearly unknown cannot flood a region where it is common.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from triage.engine.frequency import Row
from triage.engine.model import compile_model
from triage.engine.pack import Band, Pack, Region
from triage.knowledge.overlay import faults_only, observed_by_technician
from triage.learning.outcome import Outcome, job_found
from triage.learning.shrinkage import PRIOR_WEIGHT, rate_factor

Regions = Mapping[str, Region]
TOLERANCE = 1e-9
MAX_ROUNDS = 100


@dataclass(frozen=True, slots=True, eq=False)
class FaultPrior:
    """The chances before any answer as one region sees them: one per hypothesis, with its faults."""

    probabilities: Row
    faults: tuple[tuple[str, ...], ...]

    def jobs(self) -> dict[str, float]:
        """The chance of each fault that a job may be named after."""
        totals: dict[str, float] = {}
        for chance, faults in zip(self.probabilities, self.faults, strict=True):
            totals[faults[0]] = totals.get(faults[0], 0.0) + chance
        return totals

    def present(self, times: Mapping[str, float]) -> dict[str, float]:
        """The chance that each fault is there, alone or with another, once rates are multiplied by `times`."""
        weights = [chance * times[faults[0]] for chance, faults in zip(self.probabilities, self.faults, strict=True)]
        total = sum(weights)
        there = dict.fromkeys(times, 0.0)
        for weight, faults in zip(weights, self.faults, strict=True):
            for fault in faults:
                there[fault] += weight / total
        return there


def _fault_prior(pack: Pack, region: Region) -> FaultPrior:
    model = compile_model(pack, region)
    total = sum(model.prior)
    return FaultPrior(tuple(weight / total for weight in model.prior), tuple(h.faults for h in model.hypotheses))


@lru_cache(maxsize=8)
def _van_jobs(pack: Pack, regions: tuple[Region, ...]) -> dict[str, dict[str, float]]:
    """By region, how the visits of a van share out over the jobs."""
    visited = observed_by_technician(faults_only(pack))
    return {region.id: _fault_prior(visited, region).jobs() for region in regions}


@lru_cache(maxsize=8)
def _all_priors(pack: Pack, regions: tuple[Region, ...]) -> tuple[FaultPrior, ...]:
    """Every region, at the tool and at the van."""
    return tuple(
        _fault_prior(seen, region)
        for seen in (faults_only(pack), observed_by_technician(faults_only(pack)))
        for region in regions
    )


def fitted_calls(pack: Pack, written: Pack, regions: Regions, outcomes: Sequence[Outcome]) -> dict[str, float]:
    """Calls per fault after these outcomes, adding up to what they did before.

    `pack` has the numbers learning starts from, `written` those its authors wrote, below which no danger may fall.
    """
    jobs = _van_jobs(pack, tuple(regions.values()))
    found = [job_found(pack, outcome.found) for outcome in outcomes]
    visits = {code: sum(outcome.region == code for outcome in outcomes) for code in regions}
    times = {}
    for fault in pack.faults.values():
        expected = sum(visits[code] * jobs[code].get(fault.id, 0.0) for code in regions)
        commonest = max(shares.get(fault.id, 0.0) for shares in jobs.values())
        factor = rate_factor(commonest, PRIOR_WEIGHT, found.count(fault.id), expected) if commonest else 1.0
        times[fault.id] = factor * fault.calls_per_1000 / written.faults[fault.id].calls_per_1000
    safe = keep_dangers(written, regions, times)
    calls = {fault: written.faults[fault].calls_per_1000 * factor for fault, factor in safe.items()}
    scale = sum(fault.calls_per_1000 for fault in pack.faults.values()) / sum(calls.values())
    return {fault: value * scale for fault, value in calls.items()}


def keep_dangers(written: Pack, regions: Regions, times: Mapping[str, float]) -> dict[str, float]:
    """The same factors with those of make-safe faults raised until none is less likely than written, in any region,
    at the tool or at the van. Raising one takes a little from the others, so it is done until nothing moves."""
    views = _all_priors(written, tuple(regions.values()))
    dangers = [fault.id for fault in written.faults.values() if fault.band is Band.MAKE_SAFE]
    before = [seen.present(dict.fromkeys(written.faults, 1.0)) for seen in views]
    safe = dict(times)
    for _ in range(MAX_ROUNDS):
        after = [seen.present(safe) for seen in views]
        lacking = {
            fault: max(old[fault] / new[fault] if new[fault] else 1.0 for old, new in zip(before, after, strict=True))
            for fault in dangers
        }
        safe |= {fault: safe[fault] * lack for fault, lack in lacking.items() if lack > 1.0}
        if all(lack <= 1.0 + TOLERANCE for lack in lacking.values()):
            break
    return safe
