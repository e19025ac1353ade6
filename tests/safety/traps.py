"""Traps: single words that would be right elsewhere and could hurt on one page. One function per trap."""

import re

from tests.safety.invariants import flags_answered
from triage.knowledge.library import library

FORBIDS = re.compile(
    r"^(do not|don't|never|touch no|leave the|keep (away|off|everyone|people|children|hands)|use no|nobody)\b",
    re.IGNORECASE,
)
SWITCHING = re.compile(
    r"\b(switch|switches|plug|plugs|outlet|knobs?|controls|turn (it|the oven) off|main switch|cut the power)\b",
    re.IGNORECASE,
)
PULLS_A_PLUG = re.compile(r"\bpull (the|a) (?!.*\bcool\b)[\w ]*plug\b", re.IGNORECASE)


def told_to_do(shown):
    """What the page tells people to do, sentence by sentence: the items of its ordered lists that forbid nothing."""
    items = [e.text for steps in shown.classed("ol", "steps") for e in steps.all() if e.tag == "li"]
    items += [hint.text for hint in shown.classed("p", "hint")]
    sentences = [sentence for item in items for sentence in re.split(r"(?<=[.?!:]) ", item)]
    return [sentence for sentence in sentences if not FORBIDS.search(sentence)]


def raised_on(shown):
    return {flag.id for flag in flags_answered(library().pack, shown.pairs)}


def gas_means_no_switch(shown):
    """With gas or fumes nothing is switched, on or off, and nothing is plugged or unplugged."""
    if not raised_on(shown) & {"gas-smell", "co-alarm"} or not shown.shows_danger:
        return []
    words = (shown.region.terms["board"], shown.region.terms["breaker"], shown.region.terms["cooker_switch"])
    return [
        f"With gas about, the page says {line!r}."
        for line in told_to_do(shown)
        if SWITCHING.search(line) or any(word in line for word in words)
    ]


def a_hot_switch_is_left_alone(shown):
    """Where the oven's wall switch is hot or marked, no sentence sends anybody to it."""
    if "hot-wall-switch" not in raised_on(shown) or not shown.shows_danger:
        return []
    own = re.compile(
        rf"own (wall )?switch|switch on the wall|{re.escape(shown.region.terms['cooker_switch'])}", re.IGNORECASE
    )
    lines = [line for line in told_to_do(shown) if line not in shown.region.isolation_note]
    return [f"The wall switch is hot, and the page says {line!r}." for line in lines if own.search(line)]


def a_hot_plug_stays_where_it_is(shown):
    """Where the plug or its cable is hot or bare, nobody is told to pull it."""
    if not raised_on(shown) & {"hot-plug", "damaged-cable"} or not shown.shows_danger:
        return []
    return [f"The plug is hot, and the page says {line!r}." for line in told_to_do(shown) if PULLS_A_PLUG.search(line)]


def a_bad_board_is_left_alone(shown):
    """Where the board itself may burn or be live, nobody is sent to it and nothing on it is switched."""
    if not raised_on(shown) & {"hot-fuse-board", "tingle-wide"} or not shown.shows_danger:
        return []
    board = re.escape(shown.region.terms["board"])
    sends = re.compile(rf"go to the {board}|switch off (at|the|its|every|all)\b|main switch", re.IGNORECASE)
    return [f"The board is not safe, and the page says {line!r}." for line in told_to_do(shown) if sends.search(line)]


def a_fire_keeps_its_door_shut(shown):
    """With fire inside, the door stays shut and nobody is told to open it; with gas about, nobody stays to look."""
    flags = raised_on(shown)
    if "fire-inside" not in flags or not shown.shows_danger or flags & {"gas-smell", "co-alarm"}:
        return []
    told = "keep the oven door shut" in shown.words.lower()
    wrong = [] if told else ["There is fire inside, and nothing says to keep the oven door shut."]
    opens = re.compile(r"^open the (oven )?door", re.IGNORECASE)
    return wrong + [
        f"There is fire inside, and the page says {line!r}." for line in told_to_do(shown) if opens.search(line)
    ]


def a_runaway_is_cut_off(shown):
    """An oven that will not stop is cut off at the supply, with the breaker or the board named: the knob may fail."""
    if not shown.shows_danger or shown.step.flags[0].id not in ("will-not-stop", "overheats"):
        return []
    wrong = [] if "cut the power" in shown.words else ["It will not stop, and nothing says to cut the power."]
    named = any(shown.region.terms[word] in shown.words for word in ("breaker", "board"))
    return wrong if named else [*wrong, "It will not stop, and neither breaker nor board is named."]


TRAPS = (
    gas_means_no_switch,
    a_hot_switch_is_left_alone,
    a_hot_plug_stays_where_it_is,
    a_bad_board_is_left_alone,
    a_fire_keeps_its_door_shut,
    a_runaway_is_cut_off,
)


def sprung_traps(shown):
    return [sentence for trap in TRAPS for sentence in trap(shown)]
