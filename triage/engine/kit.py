"""What to bring: the parts and tools with the best chance of finishing in one visit for what they cost to carry.

A visit is finished when everything the job needs was brought. The set of parts with the greatest chance of that,
less what it costs to carry, is found exactly, whatever the number of causes and parts: it is a selection problem
(a gain is paid once all its parts are chosen), which a smallest cut solves. Source: Picard, "Maximal closure of a
graph and applications to combinatorial problems", Management Science 1976 (from memory, not seen).
Only parts count here: whether somebody opens the door, or the day is long enough, is not in the chance.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import product
from math import prod

from triage.engine.belief import Belief
from triage.engine.enums import PerformedBy
from triage.engine.pack import Pack
from triage.engine.repairs import Job

NEEDS_NOTHING: frozenset[str] = frozenset()
SCALE = 10**9  # chances are counted in whole billionths, so that the cut is exact

PartSet = frozenset[str]
Link = tuple[PartSet, str]


@dataclass(frozen=True, slots=True)
class KitPart:
    """A part in the kit; `gain` is how much the chance would fall without it."""

    part: str
    gain: float


@dataclass(frozen=True, slots=True)
class Kit:
    """What to bring, the most useful first; `chance` of finishing with it, and `at_best` with every part there is."""

    parts: tuple[KitPart, ...]
    completion_probability: float
    max_probability: float


def kit_for(belief: Belief, who: str) -> Kit:
    """The best kit for a visit by `who` (technician or electrician)."""
    wanted = needed_part_sets(belief, who)
    pack = belief.model.pack
    chosen = best_parts(wanted, {part.id: part.carrying_cost for part in pack.parts.values()})
    chance = completion_probability(chosen, wanted)
    gains = {part: chance - completion_probability(chosen - {part}, wanted) for part in pack.parts if part in chosen}
    carried = tuple(KitPart(part, gains[part]) for part in sorted(gains, key=lambda part: -gains[part]))
    return Kit(carried, chance, sum(wanted.values()))


def needed_part_sets(belief: Belief, who: str) -> dict[PartSet, float]:
    """The chance that finishing needs exactly these parts; what `who` cannot finish at all is left out."""
    pack = belief.model.pack
    wanted: dict[PartSet, float] = {}
    for hypothesis, chance in zip(belief.model.hypotheses, belief.probabilities, strict=True):
        for parts, share in part_sets_for(pack, hypothesis.faults, who).items():
            wanted[parts] = wanted.get(parts, 0.0) + chance * share
    return wanted


def part_sets_for(pack: Pack, faults: Iterable[str], who: str) -> dict[PartSet, float]:
    """What may be needed to put all of `faults` right, with chances that sum to one; nothing where `who` cannot."""
    every: dict[PartSet, float] = {NEEDS_NOTHING: 1.0}
    for fault in faults:
        job = pack.jobs.get(fault, Job())
        if not job.known or pack.faults[fault].performed_by not in (who, PerformedBy.HOUSEHOLDER):
            return {}
        each = _ways(job)
        both: dict[PartSet, float] = {}
        for (a, p), (b, q) in product(every.items(), each.items()):
            both[a | b] = both.get(a | b, 0.0) + p * q
        every = both
    return every


def _ways(job: Job) -> dict[PartSet, float]:
    """Every set of parts a job may turn out to need."""
    choices = [[(frozenset({part}), p), (NEEDS_NOTHING, 1.0 - p)] for part, p in job.may_need.items()]
    if job.one_of:
        choices.append([(frozenset({part}), p) for part, p in job.one_of.items()])
    ways: dict[PartSet, float] = {}
    for picked in product(*choices):
        parts = job.needs.union(*(part for part, _ in picked))
        ways[parts] = ways.get(parts, 0.0) + prod(p for _, p in picked)
    return ways


def completion_probability(kit: PartSet, wanted: Mapping[PartSet, float]) -> float:
    """The chance that nothing is missing."""
    return sum(chance for parts, chance in wanted.items() if parts <= kit)


def best_parts(wanted: Mapping[PartSet, float], carry: Mapping[str, float]) -> PartSet:
    """The parts whose chance of finishing, less what they cost to carry, is greatest; of equals the fewest.

    Each chance is spent on the parts it needs, which take up to what they cost. Where a chance is left over once
    nothing can be spent any more, its parts are worth carrying, and so are those of every chance spent on them.
    """
    left = {parts: round(chance * SCALE) for parts, chance in wanted.items() if parts}
    room = {part: round(cost * SCALE) for part, cost in carry.items()}
    spent = {parts: dict.fromkeys(sorted(parts), 0) for parts in left}
    kept: set[str] = set()
    for parts in left:
        while left[parts]:
            came = _reach(parts, spent, room)
            end = next((part for part in came if room[part]), None)
            if end is None:
                kept |= came.keys()
                break
            path = _path(end, came)
            amount = min(left[parts], room[end], *(spent[payer][part] for payer, part in path[1::2]))
            left[parts] -= amount
            room[end] -= amount
            for payer, part in path[::2]:
                spent[payer][part] += amount
            for payer, part in path[1::2]:
                spent[payer][part] -= amount
    return frozenset(kept)


def _reach(first: PartSet, spent: Mapping[PartSet, Mapping[str, int]], room: Mapping[str, int]) -> dict[str, Link]:
    """Every part that `first` could be spent on, directly or by making others spend elsewhere, the nearest first up
    to one with room: who would be spent on it, and the part that one gives up for it (none for `first` itself)."""
    came: dict[str, Link] = {}
    waiting: list[tuple[PartSet, str]] = [(first, "")]
    seen = {first}
    for payer, given_up in waiting:
        for part in spent[payer]:
            if part in came:
                continue
            came[part] = (payer, given_up)
            if room[part]:
                return came
            others = [other for other, on in spent.items() if other not in seen and on.get(part)]
            seen.update(others)
            waiting += [(other, part) for other in others]
    return came


def _path(end: str, came: Mapping[str, Link]) -> list[Link]:
    """Who is spent on what, from `end` back to the first: every other link is spent less, the rest more."""
    path: list[Link] = []
    part = end
    while part:
        payer, given_up = came[part]
        path.append((payer, part))
        if given_up:
            path.append((payer, given_up))
        part = given_up
    return path
