"""Trails thrown by dice: some answered as one oven would answer, some as nobody would."""

from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, infer_belief, parse_answers


def random_trail(dice, model, most=20):
    """A trail as it may reach the engine: any length, any order, the danger page answered or not."""
    pack = model.pack
    if dice.random() < 0.6:
        told = answers_of_one_oven(dice, model)
    else:
        told = {o: dice.choice(observation.options) for o, observation in pack.observations.items()}
    asked = dice.sample(sorted(told), dice.randint(0, most))
    trail = [(o, CANT_TELL if dice.random() < 0.1 else told[o]) for o in asked]
    if dice.random() < 0.7:
        trail.insert(dice.randint(0, len(trail)), (SCREEN, NONE_OF_THESE))
    return trail


def usable_answers(pack, trail):
    return parse_answers(pack, trail).answers


def answers_of_one_oven(dice, model):
    """What the owner of one oven would say: its cause, kind and conditions drawn from the model."""
    pack = model.pack
    cause = _draw(dice, infer_belief(model, {}).probabilities)
    kinds = {v: _draw(dice, [row[cause] for row in rows]) for v, rows in model.variant_weights.items()}
    levels = {}
    for condition in pack.conditions.values():
        table = model.level_tables[condition.id][kinds[condition.parent] if condition.parent else 0]
        levels[condition.id] = _draw(dice, table.distinct[table.index[cause]])
    return {o.id: o.options[_answer(dice, o, kinds, levels)] for o in pack.observations.values()}


def _answer(dice, observation, kinds, levels):
    if observation.reports in kinds:
        return kinds[observation.reports]
    if observation.reports in levels:
        return _draw(dice, observation.answer_probabilities[levels[observation.reports]])
    return dice.randrange(len(observation.options))


def _draw(dice, weights):
    return dice.choices(range(len(weights)), weights)[0]
