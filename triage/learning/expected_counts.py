"""What one outcome says about the numbers of a pack: expected counts, one EM step.

The found faults are known but the conditions between faults and answers are hidden. So an outcome is shared out over
the levels of each condition as the pack itself would, given the faults found and all the answers (Dempster, Laird and
Rubin, "Maximum likelihood from incomplete data via the EM algorithm", JRSS B 1977; one step, from the pack's own
numbers). For a single outcome the mean that comes of it is the exact posterior mean; for many it is a step towards
the likelier numbers that never overshoots, and depends on no order.

- An effect counts where exactly its fault was found and an answer spoke about its condition; silence is no count.
- A row of answers counts wherever its question was answered in words and the pack knows what was found, pairs
  included. A reading speaks about effects only.
- Options on which a level cannot exist say nothing about the whole row, and are left out.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from triage.engine.belief import Belief, infer_belief
from triage.engine.frequency import Row
from triage.engine.model import compile_model
from triage.engine.pack import CANT_TELL, Condition, Fault, Pack, Region
from triage.knowledge.overlay import AnswerKey, EffectKey, learnable_answers, learnable_effects
from triage.learning.outcome import Outcome, hypothesis_found, usable_answers


@dataclass(slots=True)
class Counts:
    """Expected counts, added up over outcomes."""

    effects: dict[EffectKey, list[float]] = field(default_factory=dict)
    answers: dict[AnswerKey, list[float]] = field(default_factory=dict)

    def add_effect(self, key: EffectKey, row: Row) -> None:
        self.effects[key] = _sum(self.effects.get(key), row)

    def add_answer(self, key: AnswerKey, row: Row) -> None:
        self.answers[key] = _sum(self.answers.get(key), row)

    def add(self, other: "Counts") -> None:
        for effect, row in other.effects.items():
            self.add_effect(effect, tuple(row))
        for answer, row in other.answers.items():
            self.add_answer(answer, tuple(row))


def _sum(so_far: list[float] | None, row: Row) -> list[float]:
    return list(row) if so_far is None else [a + b for a, b in zip(so_far, row, strict=True)]


class Counter:
    """Counts outcomes against one pack, whose learnable numbers it looks up once."""

    def __init__(self, pack: Pack, regions: Mapping[str, Region]) -> None:
        self.pack = pack
        self.regions = regions
        self.effects = learnable_effects(pack)
        self.answers = learnable_answers(pack)

    def count(self, outcome: Outcome) -> Counts:
        """What this outcome says; nothing where the pack does not know what was found, or held it impossible."""
        model = compile_model(self.pack, self.regions[outcome.region])
        h = hypothesis_found(model, outcome.found)
        answers = {o: a for o, a in usable_answers(self.pack, outcome).items() if a != CANT_TELL}
        counts = Counts()
        if h is None:
            return counts
        belief = infer_belief(model, answers)
        if belief.probabilities[h] <= 0.0:
            return counts
        reported = [self.pack.observations[o].reports for o in answers if o in self.pack.observations]
        for condition in dict.fromkeys(c for c in reported if c in self.pack.conditions):
            shares = list(level_shares(belief, h, self.pack.conditions[str(condition)]))
            if len(outcome.found) == 1:
                self._count_effects(counts, self.pack.faults[outcome.found[0]], str(condition), shares)
            self._count_answers(counts, answers, str(condition), shares)
        return counts

    def _count_effects(self, counts: Counts, fault: Fault, condition: str, shares: list[Row]) -> None:
        """Each option's share goes to the effect that holds on it: one of its own, else the general one."""
        given, only = self.pack.conditions[condition].parent, self.pack.conditions[condition].allowed_on
        options: tuple[str, ...] = self.pack.variants[given].options if given else ("",)
        mine = [effect.when for effect in fault.effects if effect.condition == condition]
        for option, row in zip(options, shares, strict=True):
            when = next((w for w in mine if w is not None and option in w), None)
            whole = all(option in allowed for allowed in only.values())
            if (fault.id, condition, when) in self.effects and whole:
                counts.add_effect((fault.id, condition, when), row)

    def _count_answers(self, counts: Counts, answers: Mapping[str, str], condition: str, shares: list[Row]) -> None:
        levels = [sum(column) for column in zip(*shares, strict=True)]
        for name, answer in answers.items():
            observation = self.pack.observations.get(name)
            if observation is None or observation.reports != condition or answer not in observation.options:
                continue
            for level, chance in zip(self.pack.conditions[condition].levels, levels, strict=True):
                if (name, level) in self.answers:
                    said = tuple(chance * (option == answer) for option in observation.options)
                    counts.add_answer((name, level), said)


def level_shares(belief: Belief, h: int, condition: Condition) -> Iterator[Row]:
    """For every option of the variant the condition is given (or the only one): P(option, level | faults, answers)."""
    model, seen = belief.model, belief.likelihoods[condition.id]
    tables = model.level_tables[condition.id]
    weights = [1.0]
    if condition.parent:
        rows = belief.variant_weights.get(condition.parent, model.variant_weights[condition.parent])
        weights = [row[h] for row in rows]
    total = sum(weights)
    for table, weight in zip(tables, weights, strict=True):
        joint = [level * likelihood for level, likelihood in zip(table.distinct[table.index[h]], seen, strict=True)]
        reached = sum(joint)
        share = weight / total / reached if reached else 0.0
        yield tuple(value * share for value in joint)
