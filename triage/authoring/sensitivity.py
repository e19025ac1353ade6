"""Which of the author's numbers matter most, and so deserve evidence.

The score of a check is the logarithm of the chance given to the right family F at its end, after answers A. Its slope
along the logarithm of a number follows from the posterior alone, with no second run: a hypothesis h that the number
makes likelier by the factor 1 + r(h, A) gives

    slope = sum over h of r(h, A) * (P(h | F, A) - P(h | A))

with r = 1 for the hypotheses whose rate a call rate sets; for an effect on a level, P(level | h, A) - P(level | h);
for the trust in an observation, the expectation over levels of 1 - (answer given by anyone) / P(answer | level).

Over checks sampled from the pack itself the slopes average to nothing, because no proper score can be bettered there.
What a wrong number costs is the next term of the series: half the square of how far off it is, times the mean square
of the slope (the Fisher information that the checks hold about it). `cost` is that for a call rate or an effect off by
a factor of two and a trust off by a tenth, in nats of the mean log score: one shared sample serves all the numbers.
Where one rare check makes most of a cost, its standard error is as large as itself; so numbers are ranked by what is
left of their cost when that is taken off.

Approximate in three ways: the series stops at its second term, effects are followed through single faults (not through
pairs), and trust through answers given (not through what the danger page's "none of these" leaves unsaid).
"""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import log, sqrt
from operator import mul

from triage.engine.belief import Belief, infer_belief
from triage.engine.model import Model
from triage.engine.pack import CANT_TELL, Effect

# What a number is: a call rate (fault), an effect (fault, condition, level) or trust (observation).
Number = tuple[str, ...]
Row = Sequence[float]
Slopes = dict[Number, float]
RATE, EFFECT, TRUST = "call rate", "effect", "trust"
OFF_BY = {RATE: 2.0, EFFECT: 2.0, TRUST: 1.1}
MIN_SHIFT = 1e-4  # a hypothesis whose share moves less is passed over


@dataclass(frozen=True, slots=True)
class Cost:
    """What a number costs when it is wrong: `number` begins with its kind, `nats` is the loss of log score, give or
    take the standard `error` of the sample."""

    number: Number
    nats: float
    error: float

    def __str__(self) -> str:
        kind, *named = self.number
        if kind == RATE:
            return f"how often {named[0]} occurs"
        if kind == TRUST:
            return f"how far the answer to {named[0]} is trusted"
        return f"how often {named[0]} leaves {named[1]} at {named[2]}"


class Sums:
    """Squares of slopes added up check by check, and their squares, for the error of the mean."""

    def __init__(self) -> None:
        self.checks = 0
        self.squares: dict[Number, float] = defaultdict(float)
        self.fourths: dict[Number, float] = defaultdict(float)

    def add(self, found: Slopes) -> None:
        self.checks += 1
        for number, slope in found.items():
            self.squares[number] += slope**2
            self.fourths[number] += slope**4

    def merge(self, other: "Sums") -> None:
        self.checks += other.checks
        for number, square in other.squares.items():
            self.squares[number] += square
            self.fourths[number] += other.fourths[number]

    def costs(self) -> tuple[Cost, ...]:
        """The cost of every number, the surest dear one first."""
        found = [self._cost(number) for number in self.squares]
        return tuple(sorted(found, key=lambda cost: (cost.error - cost.nats, cost.number)))

    def _cost(self, number: Number) -> Cost:
        half_square = 0.5 * log(OFF_BY[number[0]]) ** 2
        mean = self.squares[number] / self.checks
        spread = max(self.fourths[number] / self.checks - mean**2, 0.0)
        return Cost(number, half_square * mean, half_square * sqrt(spread / self.checks))


def slopes(model: Model, answers: Mapping[str, str], family: str) -> Slopes:
    """The slope of the log score of one check, whose true family is `family`, along each number's logarithm."""
    belief = infer_belief(model, answers)
    right = belief.families.get(family, 0.0)
    if right <= 0.0:
        return {}
    shares = [
        chance * ((h.family == family) / right - 1.0)
        for h, chance in zip(model.hypotheses, belief.probabilities, strict=True)
    ]
    moving = {h: share for h, share in enumerate(shares) if abs(share) > MIN_SHIFT}
    found: Slopes = defaultdict(float)
    _rates(model, moving, found)
    _effects(belief, moving, found)
    _trusts(belief, answers, moving, found)
    return dict(found)


def _rates(model: Model, moving: Mapping[int, float], found: Slopes) -> None:
    """A chain's rate follows from that of its cause alone, a companion's from both."""
    chains = {(pair.cause, pair.effect) for pair in model.pack.fault_pairs if pair.causal}
    for h, share in moving.items():
        faults = model.hypotheses[h].faults
        for fault in faults[:1] if faults in chains else faults:
            found[RATE, fault] += share


def _effects(belief: Belief, moving: Mapping[int, float], found: Slopes) -> None:
    pack = belief.model.pack
    for h, share in moving.items():
        faults = belief.model.hypotheses[h].faults
        if len(faults) > 1:
            continue
        for effect in pack.faults[faults[0]].effects:
            if effect.condition in belief.likelihoods:
                levels = pack.conditions[effect.condition].levels
                for level, moved in zip(levels, _moved_levels(belief, h, effect), strict=True):
                    found[EFFECT, faults[0], effect.condition, level] += share * moved


def _moved_levels(belief: Belief, h: int, effect: Effect) -> list[float]:
    """P(level | h, A) - P(level | h), over the options of the condition's variant where this effect holds."""
    moved = [0.0] * len(belief.model.pack.conditions[effect.condition].levels)
    for option, chance, before, after in _levels(belief, h, effect.condition):
        if _holds(belief, h, effect, option):
            moved = [m + chance * (new - old) for m, new, old in zip(moved, after, before, strict=True)]
    return moved


def _holds(belief: Belief, h: int, effect: Effect, option: str | None) -> bool:
    """Whether this effect speaks on ovens of that kind: a special one outranks the general one."""
    if effect.when is not None:
        return option in effect.when
    fault = belief.model.pack.faults[belief.model.hypotheses[h].faults[0]]
    special = [e.when for e in fault.effects if e.condition == effect.condition and e.when]
    return not any(option in when for when in special)


def _levels(belief: Belief, h: int, condition: str) -> Iterator[tuple[str | None, float, Row, Row]]:
    """Each option of the condition's variant with its chance, and the chances of the levels before and after the
    answers that speak about them; all given hypothesis `h`."""
    tables = belief.model.level_tables[condition]
    given = belief.model.pack.conditions[condition].parent
    options: Sequence[str | None] = belief.model.pack.variants[given].options if given else [None]
    weights = [row[h] for row in belief.variant_weights[given]] if given else [1.0]
    for option, weight, table in zip(options, weights, tables, strict=True):
        before = table.distinct[table.index[h]]
        joint = list(map(mul, before, belief.likelihoods[condition]))
        total = sum(joint) or 1.0
        yield option, weight / (sum(weights) or 1.0), before, [value / total for value in joint]


def _trusts(belief: Belief, answers: Mapping[str, str], moving: Mapping[int, float], found: Slopes) -> None:
    """Trust mixes the table of answers with what anyone would say: a level gains by how far the two differ."""
    pack = belief.model.pack
    shifts: dict[str, list[float]] = {}
    for observation, row in _evidence(belief, answers):
        condition = pack.conditions[str(pack.observations[observation].reports)]
        if condition.id not in shifts:
            shifts[condition.id] = _shifted_levels(belief, moving, condition.id)
        anyone = sum(map(mul, condition.baseline, row))
        gain = [1.0 - anyone / said if said > 0.0 else 0.0 for said in row]
        found[TRUST, observation] += sum(map(mul, shifts[condition.id], gain))


def _evidence(belief: Belief, answers: Mapping[str, str]) -> Iterator[tuple[str, Row]]:
    """Each observation that was answered, with P(that answer | level)."""
    model = belief.model
    for name, answer in answers.items():
        if answer != CANT_TELL and name in model.answer_tables:
            observation = model.pack.observations[name]
            yield name, [row[observation.options.index(answer)] for row in observation.answer_probabilities]


def _shifted_levels(belief: Belief, moving: Mapping[int, float], condition: str) -> list[float]:
    """P(level | F, A) - P(level | A)."""
    shifted = [0.0] * len(belief.model.pack.conditions[condition].levels)
    for h, share in moving.items():
        for _, chance, _, after in _levels(belief, h, condition):
            shifted = [s + share * chance * new for s, new in zip(shifted, after, strict=True)]
    return shifted
