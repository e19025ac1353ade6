"""Trails nobody could give: answers in any order, repeated, contradictory, retired, unknown, with odd letters.

The dice have fixed seeds, so a trail that breaks a rule comes back in the next run.
"""

import time
from dataclasses import replace
from functools import cache
from random import Random

from tests.safety.result import SearchResult
from tests.safety.walking import look_at, region_named
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN
from triage.knowledge.library import library

LONGEST = 25
# Of a hundred pairs: as a person answers, answers that raise an ending flag, and pairs that mean nothing.
KINDS, WEIGHTS = (
    ("harmless", "cant-tell", "screen", "danger", "again", "other-answer", "nonsense"),
    (57, 6, 7, 1, 8, 8, 13),
)
ODD = ["", "no-such-question", "DANGER", "ключ", "a" * 500, "\0", "did-", "region", "smell-type ", "danger"]


def forge(region, number, seed):
    """`number` forged trails in one region, every rule looked at on each."""
    pack, region, found, begun = with_retired_questions(), region_named(region), SearchResult(), time.perf_counter()
    dice, pools = Random(seed), pools_of(pack)
    for _ in range(number):
        pairs = forged_trail(pack, dice, pools)
        found.edges += len(pairs)
        look_at(found, pack, region, pairs)
    found.seconds = time.perf_counter() - begun
    return found


@cache
def with_retired_questions():
    """The pack people use, with two ids more that were used once."""
    return replace(library().pack, retired={"old-heat": "heat-main", "old-smell": "smell-type"})


def pools_of(pack):
    """Answers that end no check, and answers that do."""
    told = [(o.id, option) for o in pack.observations.values() for option in o.options]
    danger = [
        (name, option)
        for name, option in told
        if option in pack.observations[name].flags
        and pack.red_flags[pack.observations[name].flags[option]].level.ends_check
    ]
    return [pair for pair in told if pair not in danger], danger


def forged_trail(pack, dice, pools):
    """One to twenty-five pairs, short ones more often."""
    harmless, danger = pools
    pairs = []
    for kind in dice.choices(KINDS, WEIGHTS, k=min(dice.randint(1, LONGEST), dice.randint(1, LONGEST))):
        if kind == "screen":
            pairs.append((SCREEN, NONE_OF_THESE))
        elif kind == "danger":
            pairs.append(dice.choice(danger))
        elif kind == "cant-tell":
            pairs.append((dice.choice(harmless)[0], CANT_TELL))
        elif kind == "nonsense":
            pairs.append(nonsense(pack, dice))
        elif kind == "harmless" or not pairs:
            pairs.append(dice.choice(harmless))
        else:
            pairs.append(once_more(pack, dice, dice.choice(pairs), kind))
    dice.shuffle(pairs)
    return pairs


def once_more(pack, dice, pair, kind):
    """The same pair again, or the same question with another answer."""
    observation = pack.observations.get(pair[0])
    if kind == "again" or observation is None:
        return pair
    return pair[0], dice.choice(observation.options)


def nonsense(pack, dice):
    """A pair of which at least one half is unknown, retired or in the wrong place."""
    names = [*ODD, *pack.retired, dice.choice(list(pack.observations))]
    answers = [*ODD, "yes", "none", dice.choice(list(pack.faults)), dice.choice(list(pack.red_flags))]
    return dice.choice(names), dice.choice(answers)
