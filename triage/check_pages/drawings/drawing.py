"""A drawing as the template puts it on the page: shapes in order, and the facts that its caption tells.

What a shape means is its `kind`, which the style sheet knows; nothing is told by colour alone. Places are in units of
the drawing, which is `WIDTH` wide, and a template only writes them down. Names of parts stand in the templates
`_drawing_label.html` and `_drawing_caption.html`.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Literal

WIDTH = 320.0

Tag = Literal["rect", "line", "polyline", "path", "circle", "text"]
Anchor = Literal["start", "middle", "end"]
Facts = Mapping[str, object]
"""What a template puts in words; `kind` or `name` says which sentence it is."""


@dataclass(frozen=True, slots=True)
class Shape:
    """One SVG element: its class and its attributes; a text is either figures as they stand or `named`, which the
    template puts in words."""

    tag: Tag
    kind: str
    at: tuple[tuple[str, str], ...]
    text: str = ""
    named: Facts | None = None


@dataclass(frozen=True, slots=True)
class Drawing:
    """The caption made of `facts` says all that the shapes show."""

    height: float
    shapes: tuple[Shape, ...]
    facts: Facts
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


def label(text: str, across: float, down: float, anchor: Anchor = "start", kind: str = "label") -> Shape:
    return Shape("text", kind, _text_at(across, down, anchor), text)


def named(name: str, across: float, down: float, anchor: Anchor = "start", **facts: object) -> Shape:
    """A text that the template words: what `name` stands for, with these `facts`."""
    return Shape("text", "label", _text_at(across, down, anchor), named={"name": name, **facts})


def _text_at(across: float, down: float, anchor: Anchor) -> tuple[tuple[str, str], ...]:
    return (*_written((("x", across), ("y", down))), ("text-anchor", anchor))


def _written(places: Iterable[tuple[str, float]]) -> tuple[tuple[str, str], ...]:
    return tuple((name, f"{value:.1f}") for name, value in places)
