"""The seal test: at eight places round the door, did a paper strip slip, or did torch light show?

A strip may be too thin and a greasy seal grips it: each place misleads with one in ten (author's judgement). What the
pattern says for a tight seal, one leaking spot (one place, or two beside each other) and a leaking side (its three
places) is its likelihood under each, every spot and every side alike. A place may be left out: many doors have no seal
along the bottom.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import prod

from triage.engine.readings.encoding import MAX_TEXT_LENGTH, Field, InvalidReading

SEAL_PLACES = (
    "top-left",
    "top",
    "top-right",
    "right",
    "bottom-right",
    "bottom",
    "bottom-left",
    "left",
)
MISREAD_PROBABILITY = 0.1
TIGHT, LEAKS, LEFT_OUT = "g", "s", "x"
MIN_PLACES = 5

GASKET_FIELDS: Mapping[str, Field] = {}  # one letter a place: see `read`

_EIGHT = range(len(SEAL_PLACES))
SPOTS = (*(frozenset({i}) for i in _EIGHT), *(frozenset({i, (i + 1) % 8}) for i in _EIGHT))
SIDES = tuple(frozenset({i, i + 1, (i + 2) % 8}) for i in (0, 2, 4, 6))


@dataclass(frozen=True, slots=True)
class Gasket:
    """`leaks` by place, None where it was left out; `classes` the likelihood of tight, spot and side."""

    leaks: tuple[bool | None, ...]
    likelihoods: Mapping[str, float]

    @property
    def leaking_places(self) -> tuple[str, ...]:
        return tuple(place for place, leaks in zip(SEAL_PLACES, self.leaks, strict=True) if leaks)


def encode_gasket(leaks: Mapping[str, bool]) -> str:
    """The text of what was found, place by place; places not named are left out."""
    return "p" + "".join(LEFT_OUT if p not in leaks else LEAKS if leaks[p] else TIGHT for p in SEAL_PLACES)


def read_gasket(text: str) -> Gasket:
    """The pattern a written reading stands for: "p" and eight letters, clockwise from the top left. Raises
    Unreadable."""
    if len(text) > MAX_TEXT_LENGTH or len(text) != 1 + len(SEAL_PLACES) or not text.startswith("p"):
        raise InvalidReading("not-a-reading")
    if set(text[1:]) - {TIGHT, LEAKS, LEFT_OUT}:
        raise InvalidReading("not-a-reading", "places")
    leaks = tuple(None if letter == LEFT_OUT else letter == LEAKS for letter in text[1:])
    if len(leaks) - leaks.count(None) < MIN_PLACES:
        raise InvalidReading("too-few", "places")
    told = {
        "tight": _pattern_likelihood(leaks, frozenset()),
        "spot": sum(_pattern_likelihood(leaks, spot) for spot in SPOTS) / len(SPOTS),
        "side": sum(_pattern_likelihood(leaks, side) for side in SIDES) / len(SIDES),
    }
    total = sum(told.values())
    return Gasket(leaks, {name: value / total for name, value in told.items()})


def _pattern_likelihood(leaks: tuple[bool | None, ...], truth: frozenset[int]) -> float:
    return prod(
        1.0 if leak is None else 1.0 - MISREAD_PROBABILITY if leak == (place in truth) else MISREAD_PROBABILITY
        for place, leak in enumerate(leaks)
    )
