"""Trails of mixed length, as real checks make them: ovens drawn by dice, asked as the engine asks."""

import random
from urllib.parse import urlencode

from tests.published.random_trails import answers_of_one_oven
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, Question, compile_model, run_check
from triage.engine.pack import OPENING

UNSURE = 0.15


def trails(pack, region, count, seed, leading_to=object):
    """`count` beginnings of checks, from the danger page on, whose next step is a `leading_to`; in mixed order."""
    dice = random.Random(seed)
    model = compile_model(pack, region)
    found = []
    while len(found) < count:
        steps = one_check(pack, region, answers_of_one_oven(dice, model), dice)
        found += [trail for trail, check in steps if isinstance(check.step, leading_to)]
    dice.shuffle(found)
    return found[:count]


def one_check(pack, region, told, dice):
    """Every trail of one owner's check with the check it makes; the owner is unsure now and then."""
    trail = ((OPENING, told[OPENING]), *danger_page(pack, told))
    while True:
        check = run_check(pack, region, trail)
        yield trail, check
        step = check.step
        question = step.observation if isinstance(step, Question) else getattr(step, "follow_up_question", None)
        if question is None:
            return
        trail = (*trail, (question, CANT_TELL if dice.random() < UNSURE else told[question]))


def danger_page(pack, told):
    """What the owner ticks there; a sign that exists only after another answer is not seen that early."""
    flags = [flag for flag in pack.red_flags.values() if flag.level.ends_check]
    signs = [(o, option) for flag in flags for o, option in flag.signs if not pack.observations[o].requires_answers]
    return [sign for sign in signs if told[sign[0]] == sign[1]] or [(SCREEN, NONE_OF_THESE)]


def question_addresses(pack, region, count, seed):
    """Addresses of pages that ask a question."""
    asked = trails(pack, region, count, seed, leading_to=Question)
    return [f"/check/?{urlencode([('region', region.id), *trail])}" for trail in asked]
