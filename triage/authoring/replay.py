"""Plays a case against the engine as a person would live it: complaint, danger page, then what is asked.

Only what the case tells is answered; everything else is "can't tell".
"""

from collections.abc import Mapping

from triage.authoring.case_result import CaseResult, case_result
from triage.authoring.cases import Case
from triage.authoring.check_runner import Answers, CheckRunner
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, OPENING, SCREEN, Pack


def replay(walk: CheckRunner, case: Case, most: int | None = None) -> CaseResult:
    """One case from the start page to the end; `most` is how many questions the caller can answer at all, as some
    hang up or know little."""
    asked: list[str] = []
    answered = 0

    def answer(question: str) -> str:
        nonlocal answered
        asked.append(question)
        if most is not None and answered >= most:
            return CANT_TELL
        said = case.answers.get(question, CANT_TELL)
        answered += said != CANT_TELL
        return said

    check = walk.run([*opening(walk.pack, case.answers), *danger_page(walk.pack, case.answers)], answer)
    return case_result(walk, case.id, check, case.expected, tuple(asked), answered)


def opening(pack: Pack, known: Mapping[str, str]) -> Answers:
    """The line of the start page that fits best: its complaint, and what its words say besides. A line is a link, so
    one has to be taken: of those that contradict nothing, the one that says most of what the case says and least that
    it does not."""
    if known.get(OPENING, CANT_TELL) == CANT_TELL:
        return []
    lines = [c.answers for c in pack.complaints if c.option == known[OPENING] and _fits(c.answers, known)]
    best = max(lines, key=lambda line: 2 * len(line.keys() & known.keys()) - len(line), default={})
    return [(OPENING, known[OPENING]), *best.items()]


def _fits(line: Mapping[str, str], known: Mapping[str, str]) -> bool:
    return all(known.get(observation, answer) == answer for observation, answer in line.items())


def danger_page(pack: Pack, known: Mapping[str, str]) -> Answers:
    """Every danger sign the case tells of, or "none of these"."""
    signs = [sign for flag in pack.red_flags.values() if flag.level.ends_check for sign in flag.signs]
    ticked = [(observation, option) for observation, option in signs if known.get(observation) == option]
    return ticked or [(SCREEN, NONE_OF_THESE)]
