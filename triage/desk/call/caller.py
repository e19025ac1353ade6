"""Who is calling, and what that forbids to say.

Nobody is sent to a board, or to read a meter, before they said that the way is lit and dry and that they can reach it
with both feet on the floor; and nobody is told to look at an oven they are not with. Not known counts as no.
"""

import re
from collections.abc import Mapping

from django.utils.translation import gettext_lazy

from triage.knowledge.region_builder import RegionProfile

CALLER_CHOICES = {
    "who": {
        "owner": gettext_lazy("owns it"),
        "tenant": gettext_lazy("rents the home"),
        "other": gettext_lazy("calls for somebody"),
    },
    "oven": {"yes": gettext_lazy("with it now"), "no": gettext_lazy("not with it")},
    "board": {"yes": gettext_lazy("safe to reach"), "no": gettext_lazy("not safe")},
    "alone": {"alone": gettext_lazy("alone"), "company": gettext_lazy("not alone")},
    "home": {
        "nobody": gettext_lazy("nobody at risk"),
        "child": gettext_lazy("a child"),
        "frail": gettext_lazy("somebody frail"),
    },
}

SENDS_TO_BOARD = r"\b(go to the|switch(ed)? off|at the {board}|use the main switch|put it back|put a note)\b"
WARNS_OFF = re.compile(r"^(do not|keep|stay|tell|leave|is the|nobody)\b")


def is_with_oven(caller: Mapping[str, str]) -> bool:
    return caller.get("oven") != "no"


def may_reach_board(caller: Mapping[str, str]) -> bool:
    return is_with_oven(caller) and caller.get("board") == "yes"


def board_unknown(caller: Mapping[str, str]) -> bool:
    """Whether it is worth asking if they can get to the board."""
    return is_with_oven(caller) and "board" not in caller


def mentions_board(region: RegionProfile, text: str) -> bool:
    """Whether a text speaks of the board, what is on it, or the meter."""
    terms = (region.terms["board"], region.terms["breaker"], "main switch", "meter")
    return any(word.casefold() in text.casefold() for word in terms)


def sends_to_board(region: RegionProfile, line: str) -> bool:
    """Whether a line to read out makes somebody go there. A line that warns them off never counts."""
    text = line.casefold()
    sends = SENDS_TO_BOARD.format(board=re.escape(region.terms["board"].casefold()))
    return mentions_board(region, line) and bool(re.search(sends, text)) and not WARNS_OFF.match(text)
