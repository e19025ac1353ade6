"""Cutting the supply, by how this oven is wired, as far as that was said. It is for safety; it proves nothing dead."""

from collections.abc import Iterable

from django.utils.translation import gettext as _

from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import Instruction, SwitchingOff
from triage.knowledge.texts import SupplyText
from triage.knowledge.wording import ISOLATE

SUPPLY = "supply"
AT_THE_BOARD = "unknown"


def supply_text(check_request: CheckRequest, away: bool = False) -> SupplyText:
    """The steps for this oven's supply. `away`: the supply may be cut only at the board, so no plug or wall switch."""
    known = check_request.texts.isolation.supplies
    answered = check_request.answers.get(SUPPLY, AT_THE_BOARD)
    return known[AT_THE_BOARD if away or answered not in known else answered]


def cut_supply(check_request: CheckRequest, words: str, away: bool = False) -> Instruction:
    """The steps in order under `words`; what to do if they cannot be done, and what may stay live in this region."""
    text = supply_text(check_request, away)
    cannot = _("If you can’t do that: %(cannot)s") % {"cannot": text.cannot}
    return Instruction(words, list(text.steps), [cannot, check_request.region.isolation_note])


def switching_off(check_request: CheckRequest) -> SwitchingOff:
    """All there is to know of cutting the supply before a task of one's own: at leisure, so in full."""
    text, known = supply_text(check_request), check_request.texts.isolation
    cut = cut_supply(check_request, _("How to cut the power"))
    return SwitchingOff(
        before=list(known.always),
        cut=cut,
        never=list(text.never),
        cannot_tell=text.looks_off,
        also=list(known.other_sources),
    )


def instructions(check_request: CheckRequest, lines: Iterable[str], away: bool = False) -> list[Instruction]:
    """Lines as instructions; the line that stands for cutting the supply becomes the steps of the one before it."""
    found: list[Instruction] = []
    for line in lines:
        if line != ISOLATE:
            found.append(Instruction(line, [], []))
        else:
            before = found.pop().text if found else _("Cut the power:")
            found.append(cut_supply(check_request, before, away))
    return found
