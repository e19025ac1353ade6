"""Red flags in order of gravity, and which switches may still be touched while they are up.

The strictest rule of all flags raised holds for the whole page. Where one of them forbids every switch, only what
that flag says to do is shown, because the others may speak of switching off; of a graver one the very first action
stands before it, and that never is to switch anything.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from triage.check_pages.presenters.isolation import Instruction, instructions, supply_text
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import Signal
from triage.engine import Level, RedFlag
from triage.engine.enums import SwitchUse
from triage.knowledge.wording import ISOLATE


@dataclass(frozen=True)
class RaisedFlags:
    """Flags raised together: the `primary` ones give actions, the first of them the page; the `mentioned` ones are only
    to be spoken of."""

    primary: Sequence[RedFlag]
    mentioned: Sequence[RedFlag]

    @property
    def isolate_remotely(self) -> bool:
        """Whether the supply may be cut only at a point away from the trouble."""
        return any(flag.switches == SwitchUse.AWAY for flag in self.primary)

    @property
    def evacuate(self) -> bool:
        """Whether people have to get out: no switch may be touched, and it is an emergency."""
        return any(flag.switches == SwitchUse.NEVER and flag.level is Level.EMERGENCY for flag in self.primary)


@dataclass(frozen=True)
class FlagNote:
    """A red flag beside the main matter of a page: what it is, what to do first, what never."""

    signal: Signal
    heading: str
    hazard: str
    steps: list[Instruction]
    prohibitions: list[str]


def prioritise_flags(flags: Sequence[RedFlag]) -> RaisedFlags:
    untouchable = [flag for flag in flags if flag.switches == SwitchUse.NEVER]
    if not untouchable:
        return RaisedFlags(flags, [])
    others = [flag for flag in flags if flag not in untouchable]
    graver = [flag for flag in others if flag.level is Level.EMERGENCY or flag.rank < untouchable[0].rank]
    return RaisedFlags(untouchable, graver)


def graver_flags_first(check_request: CheckRequest, raised: RaisedFlags) -> list[Instruction]:
    """The first action of each flag that is graver than those that act."""
    graver = [flag for flag in raised.mentioned if flag.rank < raised.primary[0].rank]
    return [Instruction(check_request.texts.flags[flag.id].first[0]) for flag in graver]


def flag_note(check_request: CheckRequest, flag: RedFlag, away: bool) -> FlagNote:
    text = check_request.texts.flags[flag.id]
    return FlagNote(
        signal=flag.signal,
        heading=text.heading,
        hazard=text.hazard,
        steps=flag_steps(check_request, flag, away),
        prohibitions=flag_prohibitions(check_request, flag, away),
    )


def flag_steps(check_request: CheckRequest, flag: RedFlag, away: bool) -> list[Instruction]:
    return instructions(check_request, check_request.texts.flags[flag.id].first, away)


def flag_prohibitions(check_request: CheckRequest, flag: RedFlag, away: bool) -> list[str]:
    """What not to do; where the supply is cut, also what not to do while cutting it."""
    text = check_request.texts.flags[flag.id]
    return [*text.never, *(supply_text(check_request, away).never if ISOLATE in text.first else ())]
