"""The same simulated people through two packs: whose check ends differently, and which change does it.

People are drawn from the old pack and say the same to both: an answer the new pack has no word for cannot be told, a
question only the new pack has is answered from its own table where the old pack knows what it reports. Number and
seed fix the people, however many processors share the work.
"""

import os
import pickle
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from functools import cache
from multiprocessing import get_context
from random import Random
from typing import TypeVar

from triage.authoring.attribution import trials
from triage.authoring.endings import Checks, FinishedCheck
from triage.authoring.pack_changes import Change, changes
from triage.authoring.simulated_users import SimulatedUser, draw_user
from triage.engine.pack import CANT_TELL, Observation, Pack, Region

BATCH = 250
MAX_TRACED = 200
SEVERAL = "only several changes together"

Statements = dict[str, str]
Work = TypeVar("Work")


@dataclass(frozen=True, slots=True)
class Difference:
    """One person whose check ends differently; `told` is all they could say, `because` the changes that alone do it."""

    person: int
    statements: Statements
    old: FinishedCheck
    new: FinishedCheck
    because: tuple[str, ...] = ()

    @property
    def kinds(self) -> tuple[str, ...]:
        """What differs: band, family, tasks, danger or way out."""
        was, now = self.old.ending, self.new.ending
        pairs = {
            "band": (was.band, now.band),
            "family": (was.family, now.family),
            "tasks": (was.tasks, now.tasks),
            "danger": (was.flags, now.flags),
            "way out": (was.exit, now.exit),
        }
        return tuple(kind for kind, (before, after) in pairs.items() if before != after)


@dataclass(frozen=True, slots=True)
class PackDiff:
    """`checks` were walked through both packs; `tried` of the differences were traced to a change."""

    changes: tuple[Change, ...]
    checks: int
    differences: tuple[Difference, ...]
    traced: int

    def groups(self) -> dict[str, list[Difference]]:
        """The traced differences by the changes that alone bring them about, the largest group first."""
        found: dict[str, list[Difference]] = {}
        for difference in self.differences[: self.traced]:
            found.setdefault(" or ".join(difference.because) or SEVERAL, []).append(difference)
        return dict(sorted(found.items(), key=lambda item: -len(item[1])))


def compare(
    old: Pack, new: Pack, region: Region, checks: int, seed: int, tick: Callable[[int], object] = lambda _done: None
) -> PackDiff:
    """`checks` simulated checks through both. Packs that differ in nothing a check could notice are not walked."""
    found = changes(old, new)
    if not found:
        return PackDiff((), checks, (), 0)
    knowledge = pickle.dumps((old, new, region, tuple((t.name, t.pack) for t in trials(old, new, found))))
    differences: list[Difference] = []
    done = 0
    jobs = [Job(knowledge, seed, start, min(BATCH, checks - start)) for start in range(0, checks, BATCH)]
    for count, batch in _shared(_walk_batch, jobs):
        differences += batch
        tick(done := done + count)
    tried = differences[:MAX_TRACED]
    size = max(1, -(-len(tried) // (4 * _processors())))
    parts = [Traced(knowledge, tuple(tried[start : start + size])) for start in range(0, len(tried), size)]
    traced = [difference for _, batch in _shared(_trace_batch, parts) for difference in batch]
    return PackDiff(found, checks, (*traced, *differences[len(tried) :]), len(tried))


@dataclass(frozen=True, slots=True)
class Job:
    """People number `start` and on, to be walked through both packs."""

    knowledge: bytes
    seed: int
    start: int
    count: int


@dataclass(frozen=True, slots=True)
class Traced:
    """Differences to be traced to single changes."""

    knowledge: bytes
    differences: tuple[Difference, ...]


@dataclass(frozen=True, eq=False)
class _Both:
    old: Checks
    new: Checks
    trials: tuple[tuple[str, Checks], ...]


def _walk_batch(job: Job) -> tuple[int, list[Difference]]:
    both = _knowledge(job.knowledge)
    found = []
    for person in range(job.start, job.start + job.count):
        dice = Random(f"{job.seed}, person {person}")  # noqa: S311  (simulated people, no secret)
        statements = statements_of(draw_user(both.old.model, dice), both.new.pack)
        was, now = both.old.walk(statements), both.new.walk(statements)
        if was.ending != now.ending:
            found.append(Difference(person, statements, was, now))
    return job.count, found


def _trace_batch(job: Traced) -> tuple[int, list[Difference]]:
    both = _knowledge(job.knowledge)
    found = []
    for d in job.differences:
        because = tuple(name for name, checks in both.trials if checks.walk(d.statements).ending != d.old.ending)
        found.append(Difference(d.person, d.statements, d.old, d.new, because))
    return len(found), found


def statements_of(household: SimulatedUser, new: Pack) -> Statements:
    """Everything this person would say to either pack."""
    old = household.pack
    statements = {name: household.answer(name) for name in old.observations}
    for question in new.observations.values():
        if question.id not in old.observations:
            statements[question.id] = _answer_to_new_question(household, new, question)
    return statements


def _answer_to_new_question(household: SimulatedUser, new: Pack, question: Observation) -> str:
    old, reported = household.pack, str(question.reports)
    if reported in household.variants:
        kind = household.variants[reported]
        unsure = household.dice.random() < household.answer_model.unsure_of_variant
        return CANT_TELL if unsure or kind not in question.options else kind
    if reported not in old.conditions or reported not in new.conditions:
        return CANT_TELL
    level = old.conditions[reported].levels[household.levels[reported]]
    fitted = all(household.variants.get(variant) in allowed for variant, allowed in question.requires_variant.items())
    if not fitted or household.dice.random() < household.answer_model.unsure[question.method]:
        return CANT_TELL
    levels = new.conditions[reported].levels
    says = question.answer_probabilities[levels.index(level)] if level in levels else ()
    return household.dice.choices(question.options, says)[0] if says else CANT_TELL


@cache
def _knowledge(pickled: bytes) -> _Both:
    """Loaded once in each process: a compiled model is found again by its pack's identity."""
    old, new, region, tried = pickle.loads(pickled)  # noqa: S301  (our own bytes, handed to our own process)
    return _Both(Checks(old, region), Checks(new, region), tuple((name, Checks(pack, region)) for name, pack in tried))


def _processors() -> int:
    return os.cpu_count() or 1


def _shared(
    work: Callable[[Work], tuple[int, list[Difference]]], jobs: Sequence[Work]
) -> Iterator[tuple[int, list[Difference]]]:
    """The results in order, shared by all processors; a single job is not worth a second process."""
    workers = min(_processors(), len(jobs))
    if workers <= 1:
        yield from map(work, jobs)
        return
    with ProcessPoolExecutor(workers, get_context("spawn")) as pool:
        yield from pool.map(work, jobs)
