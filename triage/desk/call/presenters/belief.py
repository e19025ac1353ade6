"""What the answers make likely so far, which way the last one moved it, and which questions could still change it."""

from collections.abc import Mapping

from triage.check_pages.presenters.causes import short_chance, tenths
from triage.desk.call.open_call import Call
from triage.desk.call.view_models import Key, Leaning, Moved
from triage.engine import Belief, believe, compile_model, parse_answers
from triage.engine.next_question import Worth, worth_asking

MOST_LEANINGS = 3
FELT = 1.15  # a chance that moved by less than this share did not move
KEYS = "jkl"


def belief_of(call: Call, answers: Mapping[str, str]) -> Belief:
    check_request = call.check_request
    return believe(compile_model(check_request.library.pack, check_request.region.region), answers)


def leanings(call: Call, belief: Belief) -> list[Leaning]:
    """The first causes; nothing before anything was told."""
    answers = call.check_request.reading.answers
    if not answers:
        return []
    *before, _last = answers.items()
    was = belief_of(call, parse_answers(call.check_request.library.pack, before).answers).faults
    faults = call.check_request.texts.faults
    return [
        Leaning(faults[fault].name, short_chance(chance), tenths(chance), _moved(was[fault], chance))
        for fault, chance in ((fault, belief.faults[fault]) for fault in belief.ranking[:MOST_LEANINGS])
    ]


def _moved(before: float, now: float) -> Moved:
    if now > before * FELT:
        return "up"
    return "down" if now * FELT < before else ""


def askable(call: Call, belief: Belief) -> list[Worth]:
    """What may be asked now, what would move the belief most first."""
    return sorted(worth_asking(belief, call.check_request.reading.answers), key=lambda worth: -worth.bits)


def would_change(call: Call, found: list[Worth]) -> list[Key]:
    """The first few of them, as far as they are worth asking at all."""
    questions, least = call.check_request.texts.questions, call.check_request.library.pack.limits.worth
    return [
        Key(key, questions[worth.observation].short, call.links.asking(worth.observation))
        for key, worth in zip(KEYS, found, strict=False)
        if worth.bits >= least
    ]
