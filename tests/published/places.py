"""The region a told case comes from, as far as the reasoning cares: which kinds of oven are in use there."""

from tests.builders import ANYWHERE
from triage.engine import Region

# The common North American range: bake and broil elements, split-phase supply. Author's judgement, as in the regions.
RANGES = Region(
    "us",
    {
        "supply": {"plug-in": 0.02, "hard-wired": 0.02, "split-phase": 0.95, "two-phase": 0.01},
        "heating-system": {"fan-only": 0.01, "conventional": 0.03, "multifunction": 0.06, "bake-broil": 0.9},
        "form": {"built-in": 0.25, "freestanding": 0.75},
        "control": {"mechanical": 0.2, "electronic": 0.8},
        "grill-control": {"no-grill": 0.02, "energy-regulator": 0.03, "shared-thermostat": 0.2, "board": 0.75},
        "selector": {"combined": 0.15, "separate": 0.1, "touch": 0.75},
        "self-clean": {"not-fitted": 0.4, "pyrolytic": 0.6},
        "element-view": {"visible": 0.85, "hidden": 0.15},
        "hob-shared": {"separate": 0.25, "same-supply": 0.75},
        "cooling-fan": {"not-fitted": 0.6, "thermal-switch": 0.15, "board": 0.25},
        "cavity": {"single": 0.85, "twin": 0.15},
    },
)


def place(code):
    return RANGES if code == "us" else ANYWHERE
