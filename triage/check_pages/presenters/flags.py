"""Red flags in order of gravity, and which switches may still be touched while they are up.

The strictest rule of all flags raised holds for the whole page. Where one of them forbids every switch, only what
that flag says to do is shown, because the others may speak of switching off; of a graver one the very first action
stands before it, and that never is to switch anything.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from triage.check_pages.presenters.supply import instructions, supply_text
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import FlagNote, Instruction
from triage.engine import Level, RedFlag
from triage.engine.enums import SwitchUse
from triage.knowledge.wording import ISOLATE


@dataclass(frozen=True)
class Raised:
    """Flags raised together: `acting` give actions, the first of them the page; `told` are only to be spoken of."""

    acting: Sequence[RedFlag]
    told: Sequence[RedFlag]

    @property
    def away(self) -> bool:
        """Whether the supply may be cut only at a point away from the trouble."""
        return any(flag.switches == SwitchUse.AWAY for flag in self.acting)

    @property
    def bare(self) -> bool:
        """Whether people have to get out: no switch may be touched, and it is an emergency."""
        return any(flag.switches == SwitchUse.NEVER and flag.level is Level.EMERGENCY for flag in self.acting)


def sort_out(flags: Sequence[RedFlag]) -> Raised:
    untouchable = [flag for flag in flags if flag.switches == SwitchUse.NEVER]
    if not untouchable:
        return Raised(flags, [])
    others = [flag for flag in flags if flag not in untouchable]
    graver = [flag for flag in others if flag.level is Level.EMERGENCY or flag.rank < untouchable[0].rank]
    return Raised(untouchable, graver)


def urgent_first(check_request: CheckRequest, raised: Raised) -> list[Instruction]:
    """The first action of each flag that is graver than those that act."""
    graver = [flag for flag in raised.told if flag.rank < raised.acting[0].rank]
    return [Instruction(check_request.texts.flags[flag.id].first[0], [], []) for flag in graver]


def note_of(check_request: CheckRequest, flag: RedFlag, away: bool) -> FlagNote:
    text = check_request.texts.flags[flag.id]
    return FlagNote(
        signal=flag.signal,
        heading=text.heading,
        hazard=text.hazard,
        first=first_of(check_request, flag, away),
        never=never_of(check_request, flag, away),
    )


def first_of(check_request: CheckRequest, flag: RedFlag, away: bool) -> list[Instruction]:
    return instructions(check_request, check_request.texts.flags[flag.id].first, away)


def never_of(check_request: CheckRequest, flag: RedFlag, away: bool) -> list[str]:
    """What not to do; where the supply is cut, also what not to do while cutting it."""
    text = check_request.texts.flags[flag.id]
    return [*text.never, *(supply_text(check_request, away).never if ISOLATE in text.first else ())]
