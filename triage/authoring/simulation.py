"""Thousands of checks by simulated people, on the pack as it is and on a world where it is off.

The people are drawn from the pack itself, or from a disturbed one (`disturbing`), while the questions and the belief
are always the pack's own. They come in batches of `BATCH`, each with dice of its own (and, in a disturbed world, a
pack of its own), so that the result depends on the seed and not on how many processors share the work.

First visit: of the checks whose true causes have parts to bring (`kits`), the share where the parts of the causes on
the advice - those named, those that look alike, those that come along - hold every one of them.
"""

import os
import pickle
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from functools import cache
from multiprocessing import get_context
from random import Random

from triage.authoring.case_result import CaseResult, case_result
from triage.authoring.cases import Expected
from triage.authoring.check_runner import CheckRunner
from triage.authoring.figures import CaseFigures, Proportion, figures, share
from triage.authoring.perturbation import perturbed
from triage.authoring.sensitivity import Cost, Sums, slopes
from triage.authoring.simulated_users import AnswerModel, SimulatedUser, draw_user
from triage.engine.check import Check, Emergency, OutOfScope, Result, Step
from triage.engine.model import compile_model
from triage.engine.pack import Band, Pack, Region
from triage.engine.safety import ends_check

BATCH = 250
MAX_WEIGHED = 2000  # how many checks the costs of the numbers are worked out on

Kits = Mapping[str, frozenset[str]]


@dataclass(frozen=True, slots=True)
class World:
    """How the people and the truth differ from the pack; `weigh` asks for the costs of its numbers as well."""

    answer_model: AnswerModel = field(default_factory=AnswerModel)
    off_by: float = 1.0
    weigh: bool = False


@dataclass(frozen=True, slots=True)
class Job:
    """One batch to work out, whole: `knowledge` is the pickled pack, region and kits."""

    knowledge: bytes
    world: World
    seed: str
    count: int
    weigh: bool


@dataclass(frozen=True, slots=True)
class Batch:
    """`brought` is whether the parts on the advice held those needed, for the checks that need any."""

    findings: tuple[CaseResult, ...]
    families: tuple[str, ...]
    brought: tuple[bool, ...]
    sums: Sums


@dataclass(frozen=True, slots=True)
class Simulation:
    """What came of all the checks: `confused` counts (true family, family that led) where they differ, the commonest
    first; `stated` is the mean chance given to the leading family, beside `figures.job_first`."""

    figures: CaseFigures
    stated: float | None
    first_visit: Proportion
    confused: tuple[tuple[str, str, int], ...]
    families: Mapping[str, int]
    costs: tuple[Cost, ...]


def simulate(
    pack: Pack,
    region: Region,
    kits: Kits,
    world: World,
    count: int,
    seed: int,
    tell: Callable[[int], object] = lambda _done: None,
) -> Simulation:
    """`count` checks in that world; `tell` hears how many are done."""
    batches = []
    done = 0
    for batch in _run_batches(list(_jobs(pickle.dumps((pack, region, dict(kits))), world, count, seed))):
        batches.append(batch)
        done += len(batch.findings)
        tell(done)
    return _summed_up(batches)


def _jobs(knowledge: bytes, world: World, count: int, seed: int) -> Iterator[Job]:
    for number, start in enumerate(range(0, count, BATCH)):
        weigh = world.weigh and start < MAX_WEIGHED
        yield Job(knowledge, world, f"{seed}, batch {number}", min(BATCH, count - start), weigh)


def _run_batches(jobs: list[Job]) -> Iterable[Batch]:
    """Every batch in order, shared by all processors; a single one is not worth a second process."""
    workers = min(os.cpu_count() or 1, len(jobs))
    if workers <= 1:
        yield from map(run_batch, jobs)
        return
    with ProcessPoolExecutor(workers, get_context("spawn")) as pool:
        yield from pool.map(run_batch, jobs)


def run_batch(job: Job) -> Batch:
    """One batch, in whatever process it is."""
    walk, kits = _knowledge(job.knowledge)
    dice = Random(job.seed)  # noqa: S311  (simulated people, no secret)
    off = job.world.off_by > 1.0
    truth = compile_model(perturbed(walk.pack, dice, job.world.off_by), walk.region) if off else walk.model
    findings: list[CaseResult] = []
    families: list[str] = []
    brought: list[bool] = []
    sums = Sums()
    for number in range(job.count):
        household = draw_user(truth, dice, job.world.answer_model)
        check, finding = check_of(walk, household, f"{job.seed}, check {number}")
        findings.append(finding)
        families.append(household.family)
        brought += _brought(kits, household, check.step)
        if job.weigh:
            sums.add(slopes(walk.model, check.answers, household.family))
    return Batch(tuple(findings), tuple(families), tuple(brought), sums)


@cache
def _knowledge(pickled: bytes) -> tuple[CheckRunner, Kits]:
    """Loaded once in each process: the compiled model is found again by the pack's identity."""
    pack, region, kits = pickle.loads(pickled)  # noqa: S301  (our own bytes, handed to our own process)
    return CheckRunner(pack, region), kits


def check_of(walk: CheckRunner, household: SimulatedUser, name: str) -> tuple[Check, CaseResult]:
    """One check to its end, beside the truth. The right band is that of the fault, or of the danger the person told
    of where that is graver: rules outrank odds."""
    trail = household.opening_answers()
    begun = len(trail)
    check = walk.run(trail, household.answer)
    asked = tuple(question for question, _ in trail[begun:])
    ruled = Band.MAKE_SAFE if ends_check(check.flags) else Band.QUALIFIED if check.flags else Band.NORMAL
    right = max(household.hypothesis.band, ruled, key=lambda band: band.severity)
    return check, case_result(walk, name, check, Expected(household.faults, (right,)), asked)


def _brought(kits: Kits, household: SimulatedUser, step: Step) -> Iterator[bool]:
    needed = {part for fault in household.faults for part in kits.get(fault, ())}
    if needed and isinstance(step, Emergency | Result | OutOfScope):
        named = () if isinstance(step, OutOfScope) else _named(step)
        yield needed <= {part for fault in named for part in kits.get(fault, ())}


def _named(step: Emergency | Result) -> Iterator[str]:
    yield from (cause.fault for cause in step.verdict.causes)
    yield from step.verdict.alike
    yield from step.verdict.also_check


def _summed_up(batches: Iterable[Batch]) -> Simulation:
    batches = list(batches)
    findings = [finding for batch in batches for finding in batch.findings]
    truths = [family for batch in batches for family in batch.families]
    confused = Counter((true, f.job) for true, f in zip(truths, findings, strict=True) if f.job != true)
    sums = Sums()
    for batch in batches:
        sums.merge(batch.sums)
    stated = [finding.leading_probability for finding in findings if finding.leading_probability is not None]
    return Simulation(
        figures=figures(findings),
        stated=sum(stated) / len(stated) if stated else None,
        first_visit=share(was for batch in batches for was in batch.brought),
        confused=tuple((true, led, n) for (true, led), n in confused.most_common()),
        families=dict(Counter(truths)),
        costs=sums.costs(),
    )
