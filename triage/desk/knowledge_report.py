"""What the pack knows and where it is weak: `manage.py compute_reports` writes it for the page of the knowledge base.

The findings of the review, simulated checks on the pack as it is and in a world where it is off, how well the stated
chances hold there, and the tree as grown to two questions.
"""

from collections.abc import Callable
from random import Random
from typing import Any

from triage.authoring.case_result import CaseResult
from triage.authoring.check_runner import CheckRunner
from triage.authoring.decision_tree import MAX_NODES, grow
from triage.authoring.linting.finding import Gravity
from triage.authoring.linting.finding import LintFinding as Weakness
from triage.authoring.linting.review import review
from triage.authoring.simulated_users import AnswerModel, draw_user
from triage.authoring.simulation import Kits, Simulation, World, check_of, simulate
from triage.authoring.tree_drawing import draw
from triage.authoring.tree_labels import TreeLabels
from triage.desk.outcome_stats import save_report
from triage.engine.pack import Region
from triage.knowledge.library import ELECTRIC_OVEN, FIRST_LANGUAGE, REGIONS, Library
from triage.learning.reliability_plot import in_words, reliability_svg
from triage.learning.scores import reliability
from triage.models import Report
from triage.models.report import ReportTopic

SEED = 1
TREE_DEPTH = 2
PERTURBED_WORLD = World(AnswerModel(error_rate=0.05, unknown_rate=0.1), 2.0)
MAX_CONFUSIONS_SHOWN = 10

Progress = Callable[[str, int], Callable[[int], object]]


def report_knowledge(library: Library, region_code: str, count: int, progress: Progress) -> Report:
    """Everything the page shows, from `count` simulated checks for each part; `tell` hears how far each has come."""
    region = library.regions[region_code].region
    kits = {fault: frozenset(text.kit) for fault, text in library.texts[FIRST_LANGUAGE].faults.items()}
    found = review(library, ELECTRIC_OVEN, REGIONS, count, SEED, progress("checks walked", count))
    contents = {
        "checks": count,
        "region": library.regions[region_code].name,
        "findings": [_finding(one) for one in found],
        "worlds": _worlds(library, region, kits, count, progress),
        "tree": _tree(library, region_code, progress),
        **_reliability(library, region, count, progress),
    }
    return save_report(ReportTopic.KNOWLEDGE, contents, library.pack.version)


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


def _worlds(library: Library, region: Region, kits: Kits, count: int, progress: Progress) -> list[dict[str, Any]]:
    worlds = (
        ("As the knowledge base states", World()),
        ("With rates off by a factor of up to two, and mistaken answers", PERTURBED_WORLD),
    )
    figures = []
    for name, world in worlds:
        simulation = simulate(
            library.pack, region, kits, world, count, SEED, progress(f"checks, {name.lower()}", count)
        )
        rows = [*simulation.figures.as_rows(), ("All parts on the first visit", str(simulation.first_visit))]
        figures.append({"name": name, "rows": rows, "confused": _confused(simulation)})
    return figures


def _confused(simulation: Simulation) -> list[list[object]]:
    return [
        [true, led, count, simulation.families[true]] for true, led, count in simulation.confused[:MAX_CONFUSIONS_SHOWN]
    ]


def _reliability(library: Library, region: Region, count: int, progress: Progress) -> dict[str, Any]:
    walk, rng = CheckRunner(library.pack, region), Random(SEED)  # noqa: S311  (simulated people)
    tick = progress("checks scored", count)
    stated = []
    for number in range(count):
        _step, finding = check_of(walk, draw_user(walk.model, rng), f"check {number}")
        stated += _stated(finding)
        tick(number + 1)
    bins = reliability(stated)
    return {"plot": reliability_svg((), bins), "bins": in_words(bins)}


def _stated(finding: CaseResult) -> list[tuple[float, bool]]:
    return [] if finding.leading_probability is None else [(finding.leading_probability, finding.right_job)]


def _tree(library: Library, region_code: str, progress: Progress) -> str:
    tree = grow(
        library.pack,
        library.regions[region_code].region,
        {},
        None,
        TREE_DEPTH,
        progress("places at the most grown", MAX_NODES),
    )
    return draw(tree, TreeLabels(library.pack, region_code, library.texts_for(region_code)))
