"""Answers that say about the same whatever is true of the oven.

The weight of an answer is the most it can speak for one level of its condition against another, in decibans
(10*log10 of the likelihood ratio). An answer that raises a red flag or leads out of the check has its own purpose.
"""

from math import inf, log10

from triage.authoring.linting.finding import Gravity, LintFinding, PackSource
from triage.engine.pack import Observation, Pack

MIN_WEIGHT_DECIBANS = 1.0


def uninformative_answers(pack: Pack, places: PackSource) -> list[LintFinding]:
    """A mistake for a question none of whose answers weighs anything, a remark for single answers."""
    found = []
    for question in pack.observations.values():
        if question.reports not in pack.conditions or question.task:
            continue
        idle = [option for option in question.options if weight(question, option) < MIN_WEIGHT_DECIBANS]
        if len(idle) == len(question.options):
            found.append(_question(places, question))
            continue
        excused = {option for o, option in pack.out_of_scope if o == question.id} | set(question.flags)
        found += [_answer(places, question, option) for option in idle if option not in excused]
    return found


def weight(question: Observation, option: str) -> float:
    """The most this answer can weigh between two levels, in decibans."""
    place = question.options.index(option)
    chances = [row[place] for row in question.answer_probabilities]
    if min(chances) == 0.0:
        return inf if max(chances) > 0.0 else 0.0
    return 10.0 * log10(max(chances) / min(chances))


def _question(places: PackSource, question: Observation) -> LintFinding:
    problem = places.problem(
        "observations",
        question.id,
        f"no answer weighs anything: every level of {question.reports} says about the same.",
        "Let `answer_frequencies` differ between the levels, or take the question out.",
    )
    return LintFinding(Gravity.MISTAKE, "weightless", problem)


def _answer(places: PackSource, question: Observation, option: str) -> LintFinding:
    problem = places.problem(
        "observations",
        question.id,
        f"the answer {option} weighs {weight(question, option):.1f} dB: every level says it about as often.",
        "Let `answer_frequencies` name it for the level it speaks for, or join it with another answer.",
    )
    return LintFinding(Gravity.REMARK, "weightless", problem)
