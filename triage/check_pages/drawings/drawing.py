"""A drawing as the template puts it on the page: shapes in order, and the words that say the same.

What a shape means is its `kind`, which the style sheet knows; nothing is told by colour alone. Places are in units of
the drawing, which is `WIDTH` wide, and a template only writes them down.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Literal

WIDTH = 320.0

Tag = Literal["rect", "line", "polyline", "path", "circle", "text"]
Anchor = Literal["start", "middle", "end"]


@dataclass(frozen=True, slots=True)
class Shape:
    """One SVG element: its class, its attributes, and its words where it is a text."""

    tag: Tag
    kind: str
    at: tuple[tuple[str, str], ...]
    words: str = ""


@dataclass(frozen=True, slots=True)
class Drawing:
    """`words` say all that the shapes show."""

    height: float
    shapes: tuple[Shape, ...]
    words: str
    width: float = field(default=WIDTH)

    @property
    def view_box(self) -> str:
        return f"0 0 {self.width:.0f} {self.height:.0f}"


@dataclass(frozen=True, slots=True)
class Scale:
    """A straight line from quantities to places; what lies beyond an end is drawn at the end."""

    low: float
    high: float
    start: float
    end: float

    def at(self, value: float) -> float:
        share = (value - self.low) / (self.high - self.low)
        return self.start + min(max(share, 0.0), 1.0) * (self.end - self.start)


def box(kind: str, left: float, top: float, right: float, bottom: float) -> Shape:
    places = (("x", left), ("y", top), ("width", max(right - left, 0.0)), ("height", max(bottom - top, 0.0)))
    return Shape("rect", kind, _written(places))


def line(kind: str, left: float, top: float, right: float, bottom: float) -> Shape:
    return Shape("line", kind, _written((("x1", left), ("y1", top), ("x2", right), ("y2", bottom))))


def dot(kind: str, across: float, down: float, radius: float) -> Shape:
    return Shape("circle", kind, _written((("cx", across), ("cy", down), ("r", radius))))


def through(kind: str, points: Iterable[tuple[float, float]]) -> Shape:
    return Shape("polyline", kind, (("points", " ".join(f"{x:.1f},{y:.1f}" for x, y in points)),))


def label(words: str, across: float, down: float, anchor: Anchor = "start", kind: str = "label") -> Shape:
    return Shape("text", kind, (*_written((("x", across), ("y", down))), ("text-anchor", anchor)), words)


def _written(places: Iterable[tuple[str, float]]) -> tuple[tuple[str, str], ...]:
    return tuple((name, f"{value:.1f}") for name, value in places)
