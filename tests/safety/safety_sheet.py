"""What the safety sheet of this project says of each red flag: how grave it is, and which switches may be touched.

Written down here a second time on purpose. A pack that makes a flag milder than the sheet fails, whoever edits it.
E: emergency number now. S: stop, cut the supply, do not use. C: stop what you do, get advice.
"""

ORDER = ("caution", "stop", "emergency")
SWITCHES = ("never", "away", "any")

LEVELS = {
    "gas-smell": "emergency",       # R14 E, no switches at all
    "co-alarm": "emergency",        # R15 E
    "shut-in": "emergency",         # R16 E
    "smoke-outside": "emergency",   # R7 E
    "fire-inside": "emergency",     # R6 E
    "shock": "emergency",           # R1 E
    "burn": "emergency",            # R22 E if large, on the face, a child or electrical; taken as E
    "tingle-wide": "stop",          # R2 S
    "tingle": "stop",               # R2 S
    "hot-fuse-board": "stop",       # R4 S
    "lights-swing": "stop",         # R4 S
    "hot-wall-switch": "stop",      # R4 S
    "hot-plug": "stop",             # R5 S
    "damaged-cable": "stop",        # R13 S
    "water-inside": "stop",         # R9 S
    "glow-on-element": "stop",      # R8 S
    "sparks": "stop",               # R8 S
    "smoke-inside": "stop",         # R6, smoke without flames
    "burning-smell": "stop",        # R3 S
    "will-not-stop": "stop",        # R11 S
    "overheats": "stop",            # R11 S
    "broken-element": "stop",       # R8 S
    "broken-glass": "stop",         # R10 S
    "trips-again": "stop",          # R12 S
    "recalled": "stop",             # R23 S
    "asbestos": "caution",          # R18 C
    "loose-wool": "caution",        # R19 C
    "loose-pane": "caution",        # R10 is a cracked pane; a loose one is judged milder
    "springing-door": "caution",    # R20 C
    "starts-alone": "caution",      # keys that beep or change alone; heat that comes on alone is will-not-stop (R11 S)
    "tripped": "caution",           # R12, tripped once: leave off, one reset at most
    "locked-door": "caution",       # R17 C
    "hot-panel": "caution",         # near R11; judged milder
}  # fmt: skip


# The most that may be switched: no switch at all, or only at a point away from the trouble. Any switch for the rest.
TOUCHED = dict.fromkeys(
    ("gas-smell", "co-alarm", "tingle-wide", "hot-fuse-board"),
    "never",
) | dict.fromkeys(
    (
        "smoke-outside",
        "shock",
        "tingle",
        "hot-wall-switch",
        "hot-plug",
        "damaged-cable",
        "water-inside",
        "glow-on-element",
        "sparks",
    ),
    "away",
)


def gravity(level):
    return ORDER.index(level)
