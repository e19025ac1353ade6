"""What the pack knows and where it is weak, worked out by `manage.py reckon` for the page of who keeps the pack.

The findings of the review, made-up checks on the pack as it is and in a world where it is off, how well the stated
chances hold there, and the tree as grown to two questions.
"""

from collections.abc import Callable
from random import Random
from typing import Any

from triage.authoring.checking.finding import Finding as Weakness
from triage.authoring.checking.finding import Gravity
from triage.authoring.checking.review import review
from triage.authoring.findings import Finding
from triage.authoring.growing import MOST_PLACES, grow
from triage.authoring.households import Habits, draw_household
from triage.authoring.simulating import Kits, Simulation, World, check_of, simulate
from triage.authoring.tree_drawing import draw
from triage.authoring.tree_words import TreeWords
from triage.authoring.walking import Walk
from triage.desk.calibrating import keep
from triage.engine.pack import Region
from triage.knowledge.library import ELECTRIC_OVEN, FIRST_LANGUAGE, REGIONS, Library
from triage.learning.reliability_plot import in_words, reliability_svg
from triage.learning.scores import reliability
from triage.models import Reckoning
from triage.models.reckoning import Topic

SEED = 1
DEPTH = 2
OFF = World(Habits(wrong=0.05, blank=0.1), 2.0)
CONFUSIONS_SHOWN = 10

Tell = Callable[[str, int], Callable[[int], object]]


def reckon_knowledge(known: Library, code: str, count: int, tell: Tell) -> Reckoning:
    """Everything the page shows, from `count` made-up checks for each part; `tell` hears how far each has come."""
    region = known.regions[code].region
    kits = {fault: frozenset(text.kit) for fault, text in known.texts[FIRST_LANGUAGE].faults.items()}
    found = review(known, ELECTRIC_OVEN, REGIONS, count, SEED, tell("checks walked", count))
    contents = {
        "checks": count,
        "region": known.regions[code].name,
        "findings": [_finding(one) for one in found],
        "worlds": _worlds(known, region, kits, count, tell),
        "tree": _tree(known, code, tell),
        **_reliability(known, region, count, tell),
    }
    return keep(Topic.KNOWLEDGE, contents, known.pack.version)


def _finding(found: Weakness) -> dict[str, Any]:
    problem = found.problem
    return {
        "mistake": found.gravity is Gravity.MISTAKE,
        "kind": found.kind,
        "place": f"{problem.file}, line {problem.line}",
        "where": problem.where,
        "what": problem.what,
        "remedy": problem.remedy,
    }


def _worlds(known: Library, region: Region, kits: Kits, count: int, tell: Tell) -> list[dict[str, Any]]:
    worlds = (("As the pack says", World()), ("Where numbers are off by up to two, and people err", OFF))
    told = []
    for name, world in worlds:
        came = simulate(known.pack, region, kits, world, count, SEED, tell(f"checks, {name.lower()}", count))
        rows = [*came.figures.as_rows(), ("All parts on the first visit", str(came.first_visit))]
        told.append({"name": name, "rows": rows, "confused": _confused(came)})
    return told


def _confused(came: Simulation) -> list[list[object]]:
    return [[true, led, n, came.families[true]] for true, led, n in came.confused[:CONFUSIONS_SHOWN]]


def _reliability(known: Library, region: Region, count: int, tell: Tell) -> dict[str, Any]:
    walk, dice = Walk(known.pack, region), Random(SEED)  # noqa: S311  (made-up people)
    tick = tell("checks scored", count)
    stated = []
    for number in range(count):
        _step, finding = check_of(walk, draw_household(walk.model, dice), f"check {number}")
        stated += _stated(finding)
        tick(number + 1)
    bins = reliability(stated)
    return {"plot": reliability_svg((), bins), "bins": in_words(bins)}


def _stated(finding: Finding) -> list[tuple[float, bool]]:
    return [] if finding.stated is None else [(finding.stated, finding.right_job)]


def _tree(known: Library, code: str, tell: Tell) -> str:
    tree = grow(known.pack, known.regions[code].region, {}, None, DEPTH, tell("places at the most grown", MOST_PLACES))
    return draw(tree, TreeWords(known.pack, code, known.words(code)))
