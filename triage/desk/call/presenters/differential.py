"""What the answers make likely so far, which way the last one moved it, and which questions could still change it."""

from triage.check_pages.presenters.causes import short_chance, tenths
from triage.desk.call.open_call import Call
from triage.desk.call.view_models import Candidate, KeyChoice, Trend
from triage.engine import run_check
from triage.engine.next_question import QuestionValue, ranked_questions

MAX_CANDIDATES = 3
MIN_CHANGE_RATIO = 1.15  # a chance that moved by less than this share did not move
QUESTION_KEYS = "jkl"


def differential(call: Call) -> list[Candidate]:
    """The first causes; nothing before anything was told."""
    check = call.check_request.check
    if not check.answers:
        return []
    *before, _last = check.answers.items()
    belief, was = check.belief, run_check(check.pack, check.region, before).belief.faults
    faults = call.check_request.texts.faults
    return [
        Candidate(faults[fault].name, short_chance(chance), tenths(chance), _trend(was[fault], chance))
        for fault, chance in ((fault, belief.faults[fault]) for fault in belief.ranking[:MAX_CANDIDATES])
    ]


def _trend(before: float, now: float) -> Trend:
    if now > before * MIN_CHANGE_RATIO:
        return "up"
    return "down" if now * MIN_CHANGE_RATIO < before else ""


def allowed_questions(call: Call) -> list[QuestionValue]:
    """What may be asked now, what would move the belief most first."""
    check = call.check_request.check
    return sorted(ranked_questions(check.belief, check.answers), key=lambda worth: -worth.bits)


def useful_questions(call: Call, found: list[QuestionValue]) -> list[KeyChoice]:
    """The first few of them, as far as they are worth asking at all."""
    questions, least = call.check_request.texts.questions, call.check_request.pack.limits.min_bits
    return [
        KeyChoice(key, questions[worth.observation].short, call.links.with_question(worth.observation))
        for key, worth in zip(QUESTION_KEYS, found, strict=False)
        if worth.bits >= least
    ]
