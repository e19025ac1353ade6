"""Calls thrown by dice: where the oven stands, what it has, who calls, and what they said before the questions ended.

Half are whole checks as the engine asks them, without a sign of danger that ends them, so that they come to advice;
some callers cannot tell much, which leaves the most to be done. Half are a heap of answers in no order, which raises
several danger signs at once.
"""

from random import Random

from tests.bench.sessions import one_check
from tests.published.random_trails import answers_of_one_oven, random_trail
from triage.desk.call.caller import CALLER_CHOICES
from triage.engine import CANT_TELL, compile_model, parse_answers
from triage.knowledge.library import library

DEGREES = (0, 0.3, 0.6, 0.9)  # how much a caller cannot tell


def drawn_calls(count, seed):
    """`count` of region, answers and what is known of the caller, each a mapping."""
    dice, pack = Random(seed), library().pack
    for number in range(count):
        name = dice.choice(sorted(library().regions))
        model = compile_model(pack, library().regions[name].region)
        if number % 2:
            told = _calm_answers(pack, answers_of_one_oven(dice, model), dice)
            *_, (trail, _step) = one_check(pack, model.region, told, dice)
        else:
            trail = [*dice.sample(_signs(pack), 2), *random_trail(dice, model)]
        yield name, dict(parse_answers(pack, trail).answers), _caller(dice)


def _calm_answers(pack, told, dice):
    """What is told of one oven but for danger, by somebody who is unsure to some degree."""
    ends, unsure = set(_signs(pack)), dice.choice(DEGREES)
    return {o: CANT_TELL if (o, said) in ends or dice.random() < unsure else said for o, said in told.items()}


def _signs(pack):
    return [sign for flag in pack.red_flags.values() if flag.level.ends_check for sign in flag.signs]


def _caller(dice):
    told = {f"call_{about}": dice.choice(["", *choices]) for about, choices in CALLER_CHOICES.items()}
    return {about: choice for about, choice in told.items() if choice}
