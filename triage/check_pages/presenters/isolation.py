"""Cutting the supply, by how this oven is wired, as far as that was said. It is for safety; it proves nothing dead."""

from collections.abc import Iterable
from dataclasses import dataclass

from triage.check_pages.request import CheckRequest
from triage.jobsheet.sentences import sentence
from triage.knowledge.texts import SupplyText
from triage.knowledge.wording import ISOLATE

SUPPLY = "supply"
AT_THE_BOARD = "unknown"


@dataclass(frozen=True)
class Instruction:
    """One thing to do. Where it is cutting the supply: `parts` are the steps, `cannot` what to do if they cannot be
    done, `note` what may stay live in this region."""

    text: str
    parts: tuple[str, ...] = ()
    cannot: str = ""
    note: str = ""


@dataclass(frozen=True)
class FullIsolation:
    """Cutting the supply: what comes `before`, the `steps`, what never, what the eye `cannot_tell` and where power may
    `also` come from."""

    before: tuple[str, ...]
    steps: Instruction
    prohibitions: tuple[str, ...]
    cannot_tell: str
    also: tuple[str, ...]


def instruction_text(instruction: Instruction) -> str:
    return sentence("instruction", instruction=instruction)


def instruction_notes(instruction: Instruction) -> list[str]:
    """What to know beside the steps, where there are any."""
    cannot = sentence("cannot_isolate", instruction=instruction)
    return [cannot, instruction.note] if instruction.parts else []


def supply_text(check_request: CheckRequest, away: bool = False) -> SupplyText:
    """The steps for this oven's supply. `away`: the supply may be cut only at the board, so no plug or wall switch."""
    known = check_request.texts.isolation.supplies
    answered = check_request.answers.get(SUPPLY, AT_THE_BOARD)
    return known[AT_THE_BOARD if away or answered not in known else answered]


def isolation_steps(check_request: CheckRequest, text: str = "", away: bool = False) -> Instruction:
    """The steps in order under `text`; what to do if they cannot be done, and what may stay live in this region."""
    supply = supply_text(check_request, away)
    return Instruction(text, supply.steps, supply.cannot, check_request.region.isolation_note)


def full_isolation(check_request: CheckRequest) -> FullIsolation:
    """All there is to know of cutting the supply before a task of one's own: at leisure, so in full."""
    text, known = supply_text(check_request), check_request.texts.isolation
    steps = isolation_steps(check_request)
    return FullIsolation(known.always, steps, text.never, text.looks_off, known.other_sources)


def instructions(check_request: CheckRequest, lines: Iterable[str], away: bool = False) -> list[Instruction]:
    """Lines as instructions; the line that stands for cutting the supply becomes the steps of the one before it."""
    found: list[Instruction] = []
    for line in lines:
        if line == ISOLATE:
            found.append(isolation_steps(check_request, found.pop().text if found else "", away))
        else:
            found.append(Instruction(line))
    return found
