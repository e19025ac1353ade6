"""The same beliefs worked out the slow way: every fault, every kind of oven and every level, one world at a time.

Written from the meaning of a pack, not from the engine's code; it imports the shapes and nothing else of the engine.
"""

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import product
from math import log2, prod

from triage.engine.pack import CANT_TELL, NONE_OF_THESE, SCREEN


@dataclass(frozen=True)
class World:
    """One way an oven can be: the faults it has, what kind it is, the level of every condition, how often."""

    faults: tuple[str, ...]
    kind: Mapping[str, str]
    levels: Mapping[str, int]
    weight: float


def worlds_of(pack, region):
    """Every world of a small pack that can be, with its weight before any answer."""
    combinations = [((f.id,), f.calls_per_1000 * f.online_ratio) for f in pack.faults.values()]
    combinations += [((p.cause, p.effect), p.rate_per_1000) for p in pack.fault_pairs]
    return [
        World(faults, kind, levels, rate * share * chance)
        for faults, rate in combinations
        for kind, share in _kinds(pack, region, faults)
        if share
        for levels, chance in _levels(pack, faults, kind)
        if chance
    ]


def _kinds(pack, region, faults):
    names = list(pack.variants)
    for options in product(*(pack.variants[name].options for name in names)):
        kind = dict(zip(names, options, strict=True))
        share = 1.0
        for name, option in kind.items():
            usual = dict(zip(pack.variants[name].options, pack.variants[name].shares, strict=True))
            share *= region.shares.get(name, usual)[option]
            for fault in (pack.faults[f] for f in faults):
                share *= fault.rate_multipliers.get(name, {}).get(option, 1.0)
                share *= option in fault.requires_variant.get(name, pack.variants[name].options)
        yield kind, share


def _levels(pack, faults, kind):
    names = list(pack.conditions)
    rows = [_chances(pack.conditions[name], [pack.faults[f] for f in faults], kind) for name in names]
    for levels in product(*(range(len(row)) for row in rows)):
        yield (
            dict(zip(names, levels, strict=True)),
            prod(row[level] for row, level in zip(rows, levels, strict=True)),
        )


def _chances(condition, faults, kind):
    """P(level): each fault throws its own die and the most dominant level shows."""
    dice = [die for fault in faults if (die := _die(fault, condition, kind))]
    shown = [0.0] * len(condition.levels)
    for thrown in product(*(range(len(condition.levels)) for _ in dice)):
        if dice:
            shown[max(thrown)] += prod(die[level] for die, level in zip(dice, thrown, strict=True))
    row = shown if dice else list(condition.baseline)
    if condition.parent:
        for i, level in enumerate(condition.levels):
            if kind[condition.parent] not in condition.allowed_on.get(level, (kind[condition.parent],)):
                row[i] = 0.0
    return [chance / sum(row) for chance in row]


def _die(fault, condition, kind):
    if fault.noise_share:
        return [
            sound * (1 - fault.noise_share) + fault.noise_share / len(condition.levels) for sound in condition.baseline
        ]
    special, general = [], []
    for effect in fault.effects:
        if effect.condition == condition.id and effect.when is None:
            general.append(effect.levels)
        elif effect.condition == condition.id and kind[condition.parent] in effect.when:
            special.append(effect.levels)
    return (special + general + [None])[0]


def fit(pack, world, answers):
    """How well `answers` fit one world: the chance that a person in it would give them."""
    return prod(
        _fit_one(pack, world, observation, answers.get(observation.id), answers)
        for observation in pack.observations.values()
    )


def _fit_one(pack, world, observation, answer, answers):
    if answer is None or answer == CANT_TELL:
        return _fit_screen(pack, world, observation) if answers.get(SCREEN) == NONE_OF_THESE else 1.0
    if any(world.kind[variant] not in allowed for variant, allowed in observation.requires_variant.items()):
        return 0.0
    return chance_of(world, pack, observation, answer)


def _fit_screen(pack, world, observation):
    """Nobody who saw the danger page and ticked nothing would give an answer that ends the check."""
    on_page = {sign[0] for flag in pack.red_flags.values() for sign in flag.signs}
    if observation.id not in on_page or observation.reports not in pack.conditions:
        return 1.0
    ending = {option for option, flag in observation.flags.items() if pack.red_flags[flag].level.value != "caution"}
    return sum(chance_of(world, pack, observation, option) for option in observation.options if option not in ending)


def chance_of(world, pack, observation, answer):
    """P(answer) in one world."""
    if observation.reports is None:
        return 1.0
    if observation.reports in pack.variants:
        return float(world.kind[observation.reports] == answer)
    return observation.answer_probabilities[world.levels[observation.reports]][observation.options.index(answer)]


def weighed(pack, worlds, answers):
    """The worlds that can be, each with its chance after `answers`."""
    fits = [(world, world.weight * fit(pack, world, answers)) for world in worlds]
    whole = sum(weight for _, weight in fits)
    return [(world, weight / whole) for world, weight in fits if weight]


def posterior(worlds):
    """The chance of each combination of faults; `worlds` as `weighed` gives them."""
    totals = defaultdict(float)
    for world, chance in worlds:
        totals[world.faults] += chance
    return totals


def mutual_information(joint):
    """Bits that the first part of a pair tells about the second; `joint` maps pairs to chances."""
    first, second = defaultdict(float), defaultdict(float)
    for (a, b), chance in joint.items():
        first[a] += chance
        second[b] += chance
    return sum(p * log2(p / (first[a] * second[b])) for (a, b), p in joint.items() if p > 0.0)


def joint_with(pack, worlds, observation, label):
    """P(answer to `observation`, label of the faults); `worlds` as `weighed` gives them."""
    joint = defaultdict(float)
    for world, chance in worlds:
        for option in observation.options:
            joint[option, label(world.faults)] += chance * chance_of(world, pack, observation, option)
    return joint
