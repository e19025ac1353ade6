"""From a belief to what to tell the person: the band, the causes, what cannot be told apart, the tasks.

The band follows the belief only where no rule speaks; a caution keeps it from falling below `qualified`, and when
the belief is divided the stricter reading wins.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import chain, combinations

from triage.engine.answers import parse_answers
from triage.engine.belief import Belief, infer_belief
from triage.engine.explanation import WeightOfEvidence, weights_of_evidence
from triage.engine.pack import Band, RedFlag, Region, Task
from triage.engine.reading_tasks import ranked_by_value
from triage.engine.readings.evidence import flags_raised_by
from triage.engine.safety import offered_tasks

MAKE_SAFE_SHARE = 0.65
MOST_CAUTIONS = 4
HARMLESS_SHARE = 0.50
MOST_CAUSES = 5
SMALLEST_CAUSE = 0.03
ALIKE_RATIO = 0.10
ALIKE_CHANCE = 0.005


@dataclass(frozen=True, slots=True)
class Cause:
    """A likely cause: its chance (0 to 1) and what each answer weighs for it."""

    fault: str
    chance: float
    weights: tuple[WeightOfEvidence, ...]


@dataclass(frozen=True, slots=True)
class Verdict:
    """What the answers come to: `alike` are the faults that cannot be told apart from the leading one,
    `also_check` those that a leading cause is known to bring along."""

    band: Band
    family: str
    causes: tuple[Cause, ...]
    alike: tuple[str, ...]
    also_check: tuple[str, ...]


def conclude(belief: Belief, answers: Mapping[str, str], flags: Iterable[RedFlag]) -> Verdict:
    """The verdict on these answers; `flags` are the red flags they raise."""
    leading = [f for f in belief.ranking[:MOST_CAUSES] if belief.faults[f] >= SMALLEST_CAUSE] or [belief.ranking[0]]
    weights = weights_of_evidence(belief.model, answers, tuple(leading))
    return Verdict(
        band=decide_band(belief, answers, flags),
        family=next(iter(belief.families)),
        causes=tuple(Cause(f, belief.faults[f], weights[f]) for f in leading),
        alike=_alike(belief),
        also_check=_also_check(belief, leading[0]),
    )


def decide_band(belief: Belief, answers: Mapping[str, str], flags: Iterable[RedFlag]) -> Band:
    """The advice level. Red flags that end the check always give `make-safe`; a caution never lowers it, not even by
    what it tells about the cause: the belief without any of them counts as well."""
    raised = tuple(flags)
    if any(flag.level.ends_check for flag in raised) or len(raised) > MOST_CAUTIONS:
        return Band.MAKE_SAFE
    known = belief.model.pack.observations
    cautions = [o for o, a in answers.items() if o in known and flags_raised_by(known[o], a)] if raised else []
    for left_out in chain.from_iterable(combinations(cautions, n) for n in range(len(cautions) + 1)):
        without = parse_answers(belief.model.pack, ((o, a) for o, a in answers.items() if o not in left_out)).answers
        if _shares(infer_belief(belief.model, without) if left_out else belief)[Band.MAKE_SAFE] >= MAKE_SAFE_SHARE:
            return Band.MAKE_SAFE
    share = _shares(belief)
    if raised or share[Band.SELF_CHECK] + share[Band.NORMAL] < HARMLESS_SHARE:
        return Band.QUALIFIED
    return Band.NORMAL if share[Band.NORMAL] > share[Band.SELF_CHECK] else Band.SELF_CHECK


def _shares(belief: Belief) -> dict[Band, float]:
    """The chance of each band, a pair counting for the graver of its two."""
    share = dict.fromkeys(Band, 0.0)
    for hypothesis, chance in zip(belief.model.hypotheses, belief.probabilities, strict=True):
        share[hypothesis.band] += chance
    return share


def tasks_for(region: Region, belief: Belief, answers: Mapping[str, str], band: Band) -> tuple[Task, ...]:
    """What the person may do: nothing at all where the band says make it safe."""
    return () if band is Band.MAKE_SAFE else ranked_by_value(belief, offered_tasks(region, belief, answers))


def _alike(belief: Belief) -> tuple[str, ...]:
    """The leading fault and those nobody can tell from it without opening the oven, likeliest first."""
    pack = belief.model.pack
    first = belief.ranking[0]
    family = {f.id for f in pack.faults.values() if f.family == pack.faults[first].family}
    looks = {fault for group in pack.look_alikes if first in group for fault in group}
    enough = ALIKE_RATIO * belief.faults[first]
    near = {f for f in family if belief.faults[f] >= enough} | {f for f in looks if belief.faults[f] >= ALIKE_CHANCE}
    return tuple(fault for fault in belief.ranking if fault in near)


def _also_check(belief: Belief, leading: str) -> tuple[str, ...]:
    """Faults that come with the leading one: known chains either way."""
    pairs = [pair for pair in belief.model.pack.fault_pairs if pair.causal and leading in (pair.cause, pair.effect)]
    others = [pair.effect if pair.cause == leading else pair.cause for pair in pairs]
    possible = [fault for fault in others if belief.faults[fault] >= SMALLEST_CAUSE / 3]
    return tuple(dict.fromkeys(possible))
