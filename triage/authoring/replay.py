"""Plays a told case against the engine as a person would live it: complaint, danger page, then what is asked.

Only what the case tells is answered; everything else is "can't tell".
"""

from collections.abc import Mapping

from triage.authoring.case_result import Finding, find
from triage.authoring.cases import Case
from triage.authoring.check_runner import Trail, Walk
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, OPENING, SCREEN, Pack


def replay(walk: Walk, case: Case, most: int | None = None) -> Finding:
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

    check = walk.to_the_end([*opening(walk.pack, case.answers), *danger_page(walk.pack, case.answers)], answer)
    return find(walk, case.id, check, case.expected, tuple(asked), answered)


def opening(pack: Pack, told: Mapping[str, str]) -> Trail:
    """The line of the start page that fits best: its complaint, and what its words say besides. A line is a link, so
    one has to be taken: of those that contradict nothing, the one that says most of what the case says and least that
    it does not."""
    if told.get(OPENING, CANT_TELL) == CANT_TELL:
        return []
    lines = [c.answers for c in pack.complaints if c.option == told[OPENING] and _fits(c.answers, told)]
    best = max(lines, key=lambda line: 2 * len(line.keys() & told.keys()) - len(line), default={})
    return [(OPENING, told[OPENING]), *best.items()]


def _fits(line: Mapping[str, str], told: Mapping[str, str]) -> bool:
    return all(told.get(observation, answer) == answer for observation, answer in line.items())


def danger_page(pack: Pack, told: Mapping[str, str]) -> Trail:
    """Every danger sign the case tells of, or "none of these"."""
    signs = [sign for flag in pack.red_flags.values() if flag.level.ends_check for sign in flag.signs]
    ticked = [(observation, option) for observation, option in signs if told.get(observation) == option]
    return ticked or [(SCREEN, NONE_OF_THESE)]
