"""A pack as it might truly be where the author's numbers are off.

Every call rate, rate of a pair, effect, sound state and answer table is multiplied by a factor of its own between
1/`off_by` and `off_by` (evenly on the logarithm) and, where chances must, made to add up to one again. What is
impossible stays impossible. Shares of each kind of oven are left alone: regions give them, and they can be counted.
"""

from dataclasses import replace
from random import Random

from triage.engine.frequency import Row
from triage.engine.pack import Condition, Fault, Observation, Pack


def perturbed(pack: Pack, dice: Random, off_by: float) -> Pack:
    """The pack with every number off by a factor of up to `off_by` (at least 1)."""
    return _Perturbation(dice, off_by).pack(pack)


class _Perturbation:
    def __init__(self, dice: Random, off_by: float) -> None:
        self.dice = dice
        self.off_by = off_by

    def pack(self, pack: Pack) -> Pack:
        return replace(
            pack,
            faults={name: self.fault(fault) for name, fault in pack.faults.items()},
            fault_pairs=tuple(
                replace(pair, rate_per_1000=pair.rate_per_1000 * self.factor()) for pair in pack.fault_pairs
            ),
            conditions={name: self.condition(condition) for name, condition in pack.conditions.items()},
            observations={name: self.observation(asked) for name, asked in pack.observations.items()},
        )

    def factor(self) -> float:
        return float(self.off_by ** self.dice.uniform(-1.0, 1.0))

    def row(self, chances: Row) -> Row:
        raw = [chance * self.factor() for chance in chances]
        return tuple(value / sum(raw) for value in raw)

    def fault(self, fault: Fault) -> Fault:
        effects = tuple(replace(effect, levels=self.row(effect.levels)) for effect in fault.effects)
        return replace(fault, calls_per_1000=fault.calls_per_1000 * self.factor(), effects=effects)

    def condition(self, condition: Condition) -> Condition:
        return replace(condition, baseline=self.row(condition.baseline))

    def observation(self, asked: Observation) -> Observation:
        return replace(asked, answer_probabilities=tuple(self.row(row) for row in asked.answer_probabilities))
