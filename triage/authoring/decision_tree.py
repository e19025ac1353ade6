"""The decision tree as the engine grows it: from what a caller says first, every answer, to a chosen depth.

The tree begins after the complaint and the danger page, with no danger sign told; any of those ends the check. What
is stated of the kind of oven holds throughout. Answers that lead to the same place share one branch, and places that
are the same stand in the tree once.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field

from triage.engine.check import Emergency, OutOfScope, Question, Step, run_check
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, OPENING, SCREEN, Pack, Region

MAX_NODES = 20_000
MAX_DEPTH = 6

Pairs = tuple[tuple[str, str], ...]


class CannotGrow(ValueError):
    """A tree that cannot be grown as asked; the message says why and what to do."""


@dataclass(frozen=True, slots=True)
class Node:
    """A place of the tree. `kind` is ask (a question with branches), more (the depth ends here, `name` is asked next),
    advice (`name` is the leading family), make-safe (`name` is the red flag) or exit. `flags` limit an advice."""

    kind: str
    name: str
    band: str = ""
    flags: tuple[str, ...] = ()
    edges: tuple["Edge", ...] = ()


@dataclass(frozen=True, slots=True)
class Edge:
    """The answers that lead to one place."""

    answers: tuple[str, ...]
    node: Node


@dataclass(frozen=True, slots=True)
class Start:
    """One beginning of a check: the line of the start page (its number in the pack) and what grows from it."""

    line: int
    option: str
    root: Node


@dataclass(frozen=True, slots=True)
class Tree:
    """`grown` places were worked out, `different` of them differ."""

    stated: Mapping[str, str]
    depth: int
    starts: tuple[Start, ...]
    grown: int
    different: int


def grow(
    pack: Pack,
    region: Region,
    stated: Mapping[str, str],
    complaint: str | None,
    depth: int,
    tick: Callable[[int], object],
) -> Tree:
    """The tree for an oven of which `stated` is known, from one complaint or from every line of the start page.
    Raises CannotGrow for what the pack does not have and for a tree nobody could read."""
    _refuse_unknown(pack, stated, complaint, depth)
    growth = _Grower(pack, region, tick)
    starts = []
    for line, begins in enumerate(pack.complaints):
        if complaint in (None, begins.option):
            said = {**stated, OPENING: begins.option, **begins.answers}
            place = growth.grow_node((*said.items(), (SCREEN, NONE_OF_THESE)), depth)
            starts.append(Start(line, begins.option, place))
    return Tree(dict(stated), depth, tuple(starts), growth.grown, len(growth.known))


def _refuse_unknown(pack: Pack, stated: Mapping[str, str], complaint: str | None, depth: int) -> None:
    if not 1 <= depth <= MAX_DEPTH:
        raise CannotGrow(f"A depth of {depth} cannot be drawn. Choose 1 to {MAX_DEPTH}.")
    for variant, option in stated.items():
        if variant not in pack.variants or variant not in pack.observations:
            known = ", ".join(v for v in pack.variants if v in pack.observations)
            raise CannotGrow(f"There is no kind of oven called {variant}. Known: {known}.")
        if option not in pack.variants[variant].options:
            raise CannotGrow(f"{variant} has no {option}. Known: {', '.join(pack.variants[variant].options)}.")
    options = dict.fromkeys(line.option for line in pack.complaints)
    if complaint is not None and complaint not in options:
        raise CannotGrow(f"There is no complaint {complaint}. Known: {', '.join(options)}.")


@dataclass
class _Grower:
    """Grows places; each different place is kept once, so that equal ones are the same object."""

    pack: Pack
    region: Region
    tick: Callable[[int], object]
    grown: int = 0
    known: dict[tuple[object, ...], Node] = field(default_factory=dict)

    def grow_node(self, trail: Pairs, depth: int) -> Node:
        self.grown += 1
        if self.grown > MAX_NODES:
            raise CannotGrow(
                f"The tree has more than {MAX_NODES} places. Choose a smaller depth or one complaint, or state more."
            )
        self.tick(self.grown)
        step = run_check(self.pack, self.region, trail).step
        if not isinstance(step, Question) or depth == 0:
            return self._once(*_end(step), ())
        together: dict[int, tuple[list[str], Node]] = {}
        for option in (*self.pack.observations[step.observation].options, CANT_TELL):
            to = self.grow_node((*trail, (step.observation, option)), depth - 1)
            together.setdefault(id(to), ([], to))[0].append(option)
        branches = tuple(Edge(tuple(answers), to) for answers, to in together.values())
        return self._once("ask", step.observation, "", (), branches)

    def _once(self, kind: str, name: str, band: str, flags: tuple[str, ...], branches: tuple[Edge, ...]) -> Node:
        key = (kind, name, band, flags, tuple((branch.answers, id(branch.node)) for branch in branches))
        if key not in self.known:
            self.known[key] = Node(kind, name, band, flags, branches)
        return self.known[key]


def _end(step: Step) -> tuple[str, str, str, tuple[str, ...]]:
    if isinstance(step, Question):
        return "more", step.observation, "", ()
    if isinstance(step, OutOfScope):
        return "exit", step.reason, "", ()
    if isinstance(step, Emergency):
        return "make-safe", step.flags[0].id, step.verdict.band.value, ()
    return "advice", step.verdict.family, step.verdict.band.value, tuple(flag.id for flag in step.cautions)


@dataclass(frozen=True, slots=True)
class OutlineRow:
    """One place as it stands in a written or drawn tree: its number such as "2.1", the answers that lead to it (to a
    start: none, but its line of the start page), and, where the same place was written before, its number there."""

    number: str
    start: Start
    asked: str
    answers: tuple[str, ...]
    node: Node
    same_as: str = ""

    @property
    def level(self) -> int:
        return self.number.count(".")


def outline_rows(tree: Tree) -> Iterator[OutlineRow]:
    """Every place of a tree, each start from the root down; what was written once is not written again."""
    written: dict[int, str] = {}

    def below(number: str, start: Start, asked: str, answers: tuple[str, ...], place: Node) -> Iterator[OutlineRow]:
        same_as = written.get(id(place), "") if place.edges else ""
        yield OutlineRow(number, start, asked, answers, place, same_as)
        if place.edges and not same_as:
            written[id(place)] = number
            for count, branch in enumerate(place.edges, 1):
                yield from below(f"{number}.{count}", start, place.name, branch.answers, branch.node)

    for number, start in enumerate(tree.starts, 1):
        yield from below(str(number), start, "", (), start.root)
