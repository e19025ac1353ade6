"""A decision tree as an SVG: left to right, one column per question, every answer on a rule of its own.

Our own layout: each place takes the height of its words, a question stands in the middle of its answers, and one
upright line joins them. Text is text, so it can be searched, read aloud and copied; presentation attributes only.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field
from textwrap import wrap
from xml.etree import ElementTree
from xml.etree.ElementTree import Element, SubElement

from triage.authoring.decision_tree import OutlineRow, Tree, outline_rows
from triage.authoring.tree_labels import SIGNATURE_FIELDS, TreeLabels

ENAMEL, INK, SOFT, RULE_INK, HEAT = "#fbf9f4", "#1f2326", "#474b4c", "#84837d", "#8a2b04"
SIZE, SMALL = 13, 12
LEAD, SMALL_LEAD = 17, 15
TEXT_WIDTH, TEXT_COLUMNS = 216, 31
RULE_WIDTH, RULE_COLUMNS = 184, 27
GAP, MARGIN = 12, 28
COLUMN = TEXT_WIDTH + RULE_WIDTH + 2 * GAP


@dataclass
class _Box:
    """One place on the sheet: its wrapped words, the wrapped answers on the rule before it, and what is below."""

    line: OutlineRow
    text: list[str]
    answers: list[str]
    below: list["_Box"] = field(default_factory=list)
    middle: float = 0.0

    @property
    def left(self) -> float:
        return MARGIN + self.line.level * COLUMN

    @property
    def own_height(self) -> float:
        return max(len(self.text) * LEAD, 2 * len(self.answers) * SMALL_LEAD) + GAP


def draw(tree: Tree, labels: TreeLabels) -> str:
    """The drawing as one SVG document."""
    starts = _nodes(tree, labels)
    head = [labels.title(tree), *labels.provenance(tree)]
    bottom: float = MARGIN + len(head) * LEAD + 2 * GAP
    for start in starts:
        bottom = _place(start, bottom) + GAP
    width = MARGIN + max(node.left for node in _all(starts)) + TEXT_WIDTH if starts else 2 * COLUMN
    root = _sheet(max(width, 2 * COLUMN), bottom + (len(SIGNATURE_FIELDS) + 2) * 2 * LEAD, head)
    _write(root, MARGIN, MARGIN + LEAD, head, SIZE, LEAD, INK)
    for node in _all(starts):
        _ink(root, node)
    _signing(root, bottom + 2 * LEAD)
    ElementTree.indent(root)
    return ElementTree.tostring(root, encoding="unicode", xml_declaration=True) + "\n"


def _nodes(tree: Tree, labels: TreeLabels) -> list[_Box]:
    """The starts, each with everything below it."""
    path: list[_Box] = []
    starts: list[_Box] = []
    for line in outline_rows(tree):
        text = labels.node(line) if line.level else f"{labels.start_line(line)}\n{labels.node(line)}"
        node = _Box(
            line, _wrapped(f"{line.number}  {text}", TEXT_COLUMNS), _wrapped(labels.answers(line), RULE_COLUMNS)
        )
        del path[line.level :]
        (path[-1].below if path else starts).append(node)
        path.append(node)
    return starts


def _wrapped(text: str, signs: int) -> list[str]:
    return [piece for part in text.splitlines() for piece in wrap(part, signs, break_on_hyphens=False)]


def _place(node: _Box, top: float) -> float:
    """Give a place and all below it their height from `top` on; where they end."""
    bottom = top
    for below in node.below:
        bottom = _place(below, bottom)
    if node.below:
        node.middle = (node.below[0].middle + node.below[-1].middle) / 2.0
        shortage = top + node.own_height / 2.0 - node.middle
        if shortage > 0.0:
            for each in _all([node]):
                each.middle += shortage
            bottom += shortage
    else:
        node.middle = top + node.own_height / 2.0
    return max(bottom, node.middle + node.own_height / 2.0)


def _all(nodes: Iterable[_Box]) -> list[_Box]:
    return [each for node in nodes for each in (node, *_all(node.below))]


def _sheet(width: float, height: float, head: list[str]) -> Element:
    size = {"width": f"{width:g}", "height": f"{height:g}", "viewBox": f"0 0 {width:g} {height:g}"}
    label = {"role": "img", "aria-labelledby": "title desc", "font-family": "system-ui, sans-serif"}
    root = Element("svg", {"xmlns": "http://www.w3.org/2000/svg", **size, **label})
    SubElement(root, "title", id="title").text = head[0]
    SubElement(root, "desc", id="desc").text = " ".join(head[1:])
    SubElement(root, "rect", {"width": "100%", "height": "100%", "fill": ENAMEL})
    return root


def _ink(root: Element, node: _Box) -> None:
    kind = node.line.node.kind
    colour = HEAT if kind == "make-safe" else INK if kind in {"ask", "advice"} else SOFT
    top = node.middle - len(node.text) * LEAD / 2.0 + SIZE - 1
    _write(root, node.left, top, node.text, SIZE, LEAD, colour, bold=kind == "make-safe")
    if node.answers:
        start = node.left - RULE_WIDTH - GAP
        _rule(root, start, node.middle, node.left - GAP / 2, node.middle)
        above = node.middle - 5 - (len(node.answers) - 1) * SMALL_LEAD
        _write(root, start + GAP / 2, above, node.answers, SMALL, SMALL_LEAD, SOFT)
    if node.below:
        upright = node.left + TEXT_WIDTH + GAP
        _rule(root, upright, node.below[0].middle, upright, node.below[-1].middle)
        _rule(root, upright - GAP / 2, node.middle, upright, node.middle)


def _rule(root: Element, x1: float, y1: float, x2: float, y2: float) -> None:
    ends = {"x1": f"{x1:g}", "y1": f"{y1:g}", "x2": f"{x2:g}", "y2": f"{y2:g}"}
    SubElement(root, "line", {**ends, "stroke": RULE_INK, "stroke-width": "1.25"})


def _write(
    root: Element, x: float, y: float, lines: list[str], size: int, lead: int, colour: str, bold: bool = False
) -> None:
    if not lines:
        return
    weight = {"font-weight": "700"} if bold else {}
    text = SubElement(root, "text", {"font-size": f"{size}", "fill": colour, **weight})
    for count, line in enumerate(lines):
        SubElement(text, "tspan", {"x": f"{x:g}", "y": f"{y + count * lead:g}"}).text = line


def _signing(root: Element, top: float) -> None:
    for count, label in enumerate(SIGNATURE_FIELDS):
        y = top + count * 2 * LEAD
        _write(root, MARGIN, y, [label], SIZE, LEAD, INK)
        _rule(root, MARGIN + TEXT_WIDTH, y + 3, MARGIN + TEXT_WIDTH + 2 * RULE_WIDTH, y + 3)
