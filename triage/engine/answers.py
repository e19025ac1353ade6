"""The answers so far, read from anything a person or a forger may send. Never raises on what a trail says.

Every answer that still fits is kept; each that does not becomes a problem with its reason. What is kept depends on
the set of answers, not on their order.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from triage.engine.pack import CANT_TELL, NONE_OF_THESE, SCREEN, Observation, Pack, RedFlag, Requirement
from triage.engine.readings.evidence import flags_raised_by, invalid_reason

MAX_ANSWERS = 120
MAX_ID_LENGTH = 60


@dataclass(frozen=True, slots=True)
class AnswerProblem:
    """Why an answer was not used: `kind` is unknown-question, unknown-answer, unreadable-reading (`detail` says why,
    see `readings/encoding.py`), contradiction, retired, out-of-place or too-many."""

    kind: str
    observation: str
    answer: str = ""
    detail: str = ""


@dataclass(frozen=True, slots=True)
class ParsedAnswers:
    """What of a trail holds: `answers` in the order given, `problems` with the rest."""

    answers: Mapping[str, str]
    problems: tuple[AnswerProblem, ...]


def parse_answers(pack: Pack, pairs: Iterable[tuple[str, str]]) -> ParsedAnswers:
    """The usable answers of a trail and what was wrong with the others."""
    problems: list[AnswerProblem] = []
    given: dict[str, list[str]] = {}
    too_many = False
    for number, (observation, answer) in enumerate(pairs):
        problem = _misnamed(pack, observation, answer)
        if number >= MAX_ANSWERS and (problem or not _ends_check(pack, observation, answer)):
            too_many = True  # a danger sign is read wherever it stands
        elif problem:
            problems.append(problem)
        elif answer not in given.setdefault(observation, []):
            given[observation].append(answer)
    if too_many:
        problems.append(AnswerProblem("too-many", ""))
    answers: dict[str, str] = {}
    for observation, choices in given.items():
        kept = choices[0] if len(choices) == 1 else _safest(pack, observation, choices)
        if len(choices) > 1:
            problems.append(AnswerProblem("contradiction", observation))
        if kept:
            answers[observation] = kept
    answers, misplaced = _in_place(pack, answers)
    return ParsedAnswers(answers, (*problems, *misplaced))


def applies(observation: Observation, answers: Mapping[str, str]) -> bool:
    """Whether the answers that make an observation exist were given."""
    return given(observation.requires_answers, answers)


def given(gate: Requirement, answers: Mapping[str, str]) -> bool:
    """Whether every observation that `gate` names has one of the answers it allows."""
    return all(answers.get(observation) in options for observation, options in gate.items())


def ruled_out(needs: Requirement, answers: Mapping[str, str]) -> bool:
    """Whether a stated variant excludes what `needs` asks for."""
    return any(answers.get(variant, CANT_TELL) not in {CANT_TELL, *allowed} for variant, allowed in needs.items())


def _misnamed(pack: Pack, observation: str, answer: str) -> AnswerProblem | None:
    shown = observation[:MAX_ID_LENGTH]
    if observation == SCREEN:
        return None if answer == NONE_OF_THESE else AnswerProblem("unknown-answer", shown, answer[:MAX_ID_LENGTH])
    if observation in pack.retired:
        return AnswerProblem("retired", shown)
    if observation not in pack.observations:
        return AnswerProblem("unknown-question", shown)
    reason = invalid_reason(pack.observations[observation], answer)
    if reason is None:
        return None
    if pack.observations[observation].measurement is None:
        return AnswerProblem("unknown-answer", shown, answer[:MAX_ID_LENGTH])
    return AnswerProblem("unreadable-reading", shown, answer[:MAX_ID_LENGTH], reason)


def _raised(pack: Pack, observation: str, answer: str) -> list[RedFlag]:
    """The red flags this answer raises, whatever else was said."""
    asked = pack.observations.get(observation)
    return [pack.red_flags[flag] for flag in flags_raised_by(asked, answer)] if asked else []


def _ends_check(pack: Pack, observation: str, answer: str) -> bool:
    return any(flag.level.ends_check for flag in _raised(pack, observation, answer))


def _safest(pack: Pack, observation: str, choices: list[str]) -> str | None:
    """Of contradicting answers the one that raises the gravest flag, else none: it is asked again."""
    flagged = {choice: flags for choice in choices if (flags := _raised(pack, observation, choice))}
    return min(
        flagged,
        key=lambda choice: min((not flag.level.ends_check, flag.rank) for flag in flagged[choice]),
        default=None,
    )


def _in_place(pack: Pack, answers: dict[str, str]) -> tuple[dict[str, str], list[AnswerProblem]]:
    """Set aside answers to questions that do not exist on this oven or after these answers; flags always stay."""
    problems: list[AnswerProblem] = []
    while True:
        out = [o for o in answers if o != SCREEN and _is_out_of_place(pack.observations[o], answers)]
        if not out:
            return answers, problems
        problems += [AnswerProblem("out-of-place", o, answers[o]) for o in out]
        answers = {o: a for o, a in answers.items() if o not in out}


def _is_out_of_place(observation: Observation, answers: Mapping[str, str]) -> bool:
    answer = answers[observation.id]
    if answer == CANT_TELL or flags_raised_by(observation, answer):
        return False
    return not applies(observation, answers) or ruled_out(observation.requires_variant, answers)
