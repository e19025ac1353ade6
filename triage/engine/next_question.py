"""Which observation is worth asking next: expected information about the family and the band per second of effort.

    value(o) = P(the oven has what o requires) * (I(F; A) + I(B; A)) / (seconds to read it + seconds of effort)

Families are what is reported and stopped on, so nothing is asked only to split one. Ties fall to the pack's order.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from triage.engine.answers import applies, given, ruled_out
from triage.engine.belief import Belief
from triage.engine.enums import Method
from triage.engine.expected_information import ValueOfInformation
from triage.engine.pack import NONE_OF_THESE, OPENING, SCREEN, Observation, Pack
from triage.engine.safety import forbidden_looks

SECONDS_TO_READ = 20.0  # a question and its options, on top of the effort (author's judgement)
MIN_APPLICABILITY = 0.4  # what most such ovens do not have is not asked about (author's judgement)
# Two machines may differ in the last digits of a logarithm; what is closer than this is a tie.
TIE_TOLERANCE = 1e-9


@dataclass(frozen=True, slots=True)
class QuestionValue:
    """An askable observation: expected information in bits about family plus band, and bits per second."""

    observation: str
    bits: float
    bits_per_second: float


def next_question(belief: Belief, answers: Mapping[str, str]) -> str | None:
    """The observation to ask now, or None when the limit is reached, a family is settled or nothing is worth it."""
    pack = belief.model.pack
    if count_asked(pack, answers) >= pack.limits.max_questions:
        return None
    information = ValueOfInformation(belief)
    askable = list(_askable_questions(information, answers))
    urgent = next((o.id for o, _ in askable if o.urgent and given(o.urgent_after, answers)), None)
    if urgent:
        return urgent
    if next(iter(belief.families.values())) >= pack.limits.stop_probability:
        return None
    best = _best_value(information, askable)
    return best.observation if best and best.bits >= pack.limits.min_bits else None


def follow_up_question(belief: Belief, answers: Mapping[str, str]) -> str | None:
    """After a red flag: what the repairer would still like to know, from memory alone, touching nothing."""
    pack = belief.model.pack
    if count_asked(pack, answers) >= pack.limits.max_questions:
        return None
    information = ValueOfInformation(belief)
    askable = _askable_questions(information, answers)
    best = _best_value(information, [(o, p) for o, p in askable if o.method == Method.MEMORY])
    return best.observation if best and best.bits >= pack.limits.min_bits else None


def ranked_questions(belief: Belief, answers: Mapping[str, str]) -> tuple[QuestionValue, ...]:
    """Every observation that may be asked now with its exact value, the most worth first."""
    information = ValueOfInformation(belief)
    found = [_discounted_value(information, *askable) for askable in _askable_questions(information, answers)]
    return tuple(sorted(found, key=lambda worth: -worth.bits_per_second))


def question_value(information: ValueOfInformation, observation: Observation) -> QuestionValue:
    """The exact value of one observation, whether or not it may be put as a question."""
    return _discounted_value(information, observation, information.applicability(observation.requires_variant))


def count_asked(pack: Pack, answers: Mapping[str, str]) -> int:
    """How many questions were put: the complaint, the danger page and what the complaint itself said are free."""
    lines = [line.answers for line in pack.complaints if line.option == answers.get(OPENING)]
    said = max((line for line in lines if line.items() <= answers.items()), key=len, default={})
    asked = [pack.observations[o] for o in answers if o in pack.observations and o not in said]
    return sum(1 for o in asked if o.reports and o.id != OPENING and not o.task)


def _askable_questions(
    information: ValueOfInformation, answers: Mapping[str, str]
) -> Iterator[tuple[Observation, float]]:
    """Observations that exist, were not asked, and are safe now; each with the probability that it applies."""
    screened = information.model.implied_by_screening if answers.get(SCREEN) == NONE_OF_THESE else frozenset()
    forbidden = forbidden_looks(information.belief, answers)
    for observation in information.model.questions:
        if observation.id in answers or observation.id in screened or observation.id in forbidden:
            continue
        if observation.method == Method.TRIAL:
            continue
        if not applies(observation, answers) or ruled_out(observation.requires_variant, answers):
            continue
        applicability = information.applicability(observation.requires_variant)
        if applicability >= MIN_APPLICABILITY:
            yield observation, applicability


def _discounted_value(information: ValueOfInformation, observation: Observation, applicability: float) -> QuestionValue:
    bits = applicability * information.bits(observation)
    return QuestionValue(observation.id, bits, bits / _seconds_for(observation))


def _seconds_for(observation: Observation) -> float:
    return observation.effort_seconds + SECONDS_TO_READ


def _best_value(information: ValueOfInformation, askable: list[tuple[Observation, float]]) -> QuestionValue | None:
    """The most worth of them; exact figures are worked out only while a bound could still win."""
    bounds = [(p * information.max_bits(o) / _seconds_for(o), at) for at, (o, p) in enumerate(askable)]
    found: dict[int, QuestionValue] = {}
    most = 0.0
    for bound, at in sorted(bounds, key=lambda item: -item[0]):
        if bound < most * (1.0 - TIE_TOLERANCE):
            break
        found[at] = _discounted_value(information, *askable[at])
        most = max(most, found[at].bits_per_second)
    return next((found[at] for at in sorted(found) if found[at].bits_per_second >= most * (1.0 - TIE_TOLERANCE)), None)
