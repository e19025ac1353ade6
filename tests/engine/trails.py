"""Trails to try: those a person could give, and those a forger could send."""

from hypothesis import settings, strategies

from triage.engine.answers import parse_answers
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, SCREEN

# The decorators of property tests: how many examples, and none judged by the clock of a busy machine.
few, some, many = (settings(deadline=None, max_examples=number) for number in (20, 60, 1000))


def choices_of(pack):
    """Every answer a pack knows, the danger page's and "can't tell" among them."""
    told = [(o.id, option) for o in pack.observations.values() for option in (*o.options, CANT_TELL)]
    return [(SCREEN, NONE_OF_THESE), *told]


def flagged_choices(pack, ends_check):
    """The answers that raise a red flag which ends the check, or those whose flag does not."""
    return [
        (o.id, option)
        for o in pack.observations.values()
        for option, flag in o.flags.items()
        if pack.red_flags[flag].level.ends_check is ends_check
    ]


def trails(pack, most=7):
    """Answers in any order, each question at most once."""
    choices = strategies.sampled_from(choices_of(pack))
    return strategies.lists(choices, max_size=most, unique_by=lambda pair: pair[0])


def fitting_answers(pack, most=7):
    """Answers that fit together, as the engine's inner functions expect them."""
    return trails(pack, most).map(lambda trail: dict(parse_answers(pack, trail).answers))


def answers_of_one_oven(pack, most=7):
    """Answers that fit together and that one kind of oven can have given, whatever was said of its kind."""
    return fitting_answers(pack, most).filter(lambda answers: _some_oven_has_all(pack, answers))


def _some_oven_has_all(pack, answers):
    told = [pack.observations[o] for o, answer in answers.items() if o != SCREEN and answer != CANT_TELL]
    possible = {variant.id: set(variant.options) for variant in pack.variants.values()}
    for observation in told:
        for variant, allowed in observation.requires_variant.items():
            possible[variant] &= allowed
        if observation.reports in pack.variants:
            possible[observation.reports] &= {answers[observation.id]}
    return all(possible.values())


def forged_trails(pack, most=12):
    """Anything at all: unknown, repeated, contradictory, retired and mixed-up answers, with odd letters."""
    observations = [
        *pack.observations,
        *pack.retired,
        SCREEN,
        "",
        "no-such-question",
        "DANGER",
        "ключ",
        "a" * 500,
    ]
    options = [option for _, option in choices_of(pack)] + ["", "no-such-answer", "None", "\0", "z" * 500]
    mixed = strategies.tuples(strategies.sampled_from(observations), strategies.sampled_from(options))
    known = strategies.sampled_from(choices_of(pack))
    return strategies.lists(strategies.one_of(known, known, mixed), max_size=most)
