"""What the answers make likely so far, which way the last one moved it, and which questions could still change it."""

from triage.check_pages.presenters.causes import short_chance, tenths
from triage.desk.call.open_call import Call
from triage.desk.call.view_models import Key, Leaning, Moved
from triage.engine import run_check
from triage.engine.next_question import QuestionValue, ranked_questions

MOST_LEANINGS = 3
FELT = 1.15  # a chance that moved by less than this share did not move
KEYS = "jkl"


def leanings(call: Call) -> list[Leaning]:
    """The first causes; nothing before anything was told."""
    check = call.check_request.check
    if not check.answers:
        return []
    *before, _last = check.answers.items()
    belief, was = check.belief, run_check(check.pack, check.region, before).belief.faults
    faults = call.check_request.texts.faults
    return [
        Leaning(faults[fault].name, short_chance(chance), tenths(chance), _moved(was[fault], chance))
        for fault, chance in ((fault, belief.faults[fault]) for fault in belief.ranking[:MOST_LEANINGS])
    ]


def _moved(before: float, now: float) -> Moved:
    if now > before * FELT:
        return "up"
    return "down" if now * FELT < before else ""


def askable(call: Call) -> list[QuestionValue]:
    """What may be asked now, what would move the belief most first."""
    check = call.check_request.check
    return sorted(ranked_questions(check.belief, check.answers), key=lambda worth: -worth.bits)


def would_change(call: Call, found: list[QuestionValue]) -> list[Key]:
    """The first few of them, as far as they are worth asking at all."""
    questions, least = call.check_request.texts.questions, call.check_request.pack.limits.min_bits
    return [
        Key(key, questions[worth.observation].short, call.links.asking(worth.observation))
        for key, worth in zip(KEYS, found, strict=False)
        if worth.bits >= least
    ]
