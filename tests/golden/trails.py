"""Trails for both engines: checks as people do them, every answer there is, and what only a forger would send.

`chunk_of` gives one region's share, the same in every run. Every region gets every complaint and every kind of oven;
every answer of every question comes in at least one region, and the rest is thrown by dice.
"""

from random import Random

from tests.bench.sessions import one_check
from tests.golden.written_readings import written_reading
from tests.published.random_trails import answers_of_one_oven, random_trail
from tests.safety.forging import forged_trail, pools_of
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, compile_model
from triage.engine.answers import MAX_ANSWERS
from triage.engine.pack import OPENING

# Names that mean something to a JavaScript object, and letters that take two places there.
TRAPS = (
    "__proto__",
    "constructor",
    "toString",
    "hasOwnProperty",
    "size",
    "0",
    "-1",
    "🔥" * 70,
    "é" * 61,
    "\ud7ff\ue000",
)


def chunk_of(pack, region, seed, number, forged):
    """At least `number` trails, each with its check where the walk found it already; `forged` of them are forged."""
    dice = Random(f"{seed} {region.id}")
    made = [
        *every_complaint(pack),
        *every_kind_of_oven(pack, dice),
        *every_way_out(pack, dice),
        *every_answer(pack, dice),
    ]
    made += [forge(pack, dice) for _ in range(forged)]
    made += [*every_reading(pack, dice)]
    found = [(pairs, None) for pairs in made]
    while len(found) < number:
        found += whole_check(pack, region, dice)
    return found


def every_complaint(pack):
    """The lines of the start page, before and after the danger page."""
    lines = [[(OPENING, line.option), *line.answers.items()] for line in pack.complaints]
    return lines + [[*line, (SCREEN, NONE_OF_THESE)] for line in lines]


def every_kind_of_oven(pack, dice):
    """Each option of each variant, after some complaint."""
    for variant in pack.variants.values():
        for option in variant.options:
            line = dice.choice(pack.complaints)
            yield [(OPENING, line.option), *line.answers.items(), (SCREEN, NONE_OF_THESE), (variant.id, option)]


def every_way_out(pack, dice):
    """Each answer that says this is another appliance, after what makes its question exist, among other answers."""
    for observation, option in pack.out_of_scope:
        pairs = [(o, min(options)) for o, options in pack.observations[observation].requires_answers.items()]
        yield [*pairs, (observation, option)]
        yield [*pairs, (observation, option), *dice.sample(pools_of(pack)[0], 3)]


def every_answer(pack, dice):
    """Each answer of each question, with the answers that make the question exist; one in eight by dice, so that
    over nineteen regions every one is met."""
    for observation in pack.observations.values():
        before = [(o, min(options)) for o, options in observation.requires_answers.items()]
        for option in (*observation.options, CANT_TELL):
            if dice.randrange(8) == 0:
                yield [(SCREEN, NONE_OF_THESE), *before, (observation.id, option)]


def every_reading(pack, dice):
    """Each kind of reading, as an answer to each question it answers, after some complaint; one twice at times."""
    for observation in pack.observations.values():
        if observation.measurement is None:
            continue
        before = [(o, min(options)) for o, options in observation.requires_answers.items()]
        for _ in range(8):
            line = dice.choice(pack.complaints)
            opening = [(OPENING, line.option), *line.answers.items(), (SCREEN, NONE_OF_THESE)]
            readings = [(observation.id, written_reading(observation.measurement.kind, dice))]
            if dice.random() < 0.2:
                readings.append((observation.id, written_reading(observation.measurement.kind, dice)))
            yield [*(opening if dice.random() < 0.75 else []), *before, *readings]


def whole_check(pack, region, dice):
    """Each beginning of one owner's check with its check, or a trail thrown by dice."""
    model = compile_model(pack, region)
    if dice.random() < 0.7:
        return [(random_trail(dice, model, most=dice.randint(3, 20)), None)]
    told = answers_of_one_oven(dice, model)
    return [([*trail], check) for trail, check in one_check(pack, region, told, dice)]


def forge(pack, dice):
    """Answers in any order, repeated, contradictory, retired, unknown; now and then a trap or far too many."""
    pairs = forged_trail(pack, dice, pools_of(pack))
    if dice.random() < 0.3:
        known = dice.choice(list(pack.observations))
        pairs.insert(dice.randrange(len(pairs) + 1), (dice.choice([*TRAPS, known]), dice.choice(TRAPS)))
    if dice.random() < 0.02:
        padding = [(dice.choice(list(pack.observations)), CANT_TELL) for _ in range(MAX_ANSWERS)]
        pairs = [*padding, *pairs] if dice.random() < 0.5 else [*pairs, *padding, *pairs[:3]]
    return pairs
