"""`pack simulate`: simulated people on the pack as it is, and in a world where it is off."""

import json
from argparse import ArgumentParser
from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

from django.core.management import CommandError

from triage.authoring.progress import Progress
from triage.authoring.simulated_users import AnswerModel
from triage.authoring.simulation import Simulation, World, simulate
from triage.conf import DEFAULT_REGION
from triage.knowledge.library import FIRST_LANGUAGE, Library, library
from triage.management.pack_commands import Output
from triage.management.pack_commands.regions import region_named

NAME = "simulate"
HELP = "simulated checks on the pack as it is and in a world where it is off: figures, confusions, what matters most"
MAX_CHECKS = 100_000
MAX_OFF_BY = 100.0
MAX_CONFUSIONS = 10
MAX_COSTS = 15


def add_arguments(parser: ArgumentParser) -> None:
    parser.add_argument("--samples", type=int, default=2000, help="how many checks in each world (2000)")
    parser.add_argument("--seed", type=int, default=1, help="the same number gives the same checks (1)")
    parser.add_argument("--region", help="such as gb-eng (the site's own)")
    parser.add_argument(
        "--off-by", type=float, default=2.0, help="every number of the pack off by up to this factor (2)"
    )
    parser.add_argument("--error-rate", type=float, default=0.05, help="share of answers that are wrong there (0.05)")
    parser.add_argument("--unknown-rate", type=float, default=0.1, help='share of further "can\'t tell" there (0.1)')
    parser.add_argument("--json", action="store_true", help="as JSON")


def run(options: Mapping[str, Any], out: Output, err: Output) -> None:
    _refuse(options)
    known = library()
    code = options["region"] or DEFAULT_REGION.value()
    region = region_named(known, code).region
    worlds = _worlds(options)
    kits, count = kits_of(known), options["samples"]
    simulations = {}
    for name, world in worlds.items():
        tell = Progress(f"checks, {name}", count, err.write)
        simulations[name] = simulate(known.pack, region, kits, world, count, options["seed"], tell)
    asked = {key: options[key] for key in ("samples", "seed", "off_by", "error_rate", "unknown_rate")} | {
        "region": code
    }
    out.write(as_json(asked, simulations) if options["json"] else as_lines(asked, simulations))


def _refuse(options: Mapping[str, Any]) -> None:
    """CommandError for the first number that makes no sense."""
    share = (0.0, 1.0)
    limits = {"samples": (1, MAX_CHECKS), "off_by": (1.0, MAX_OFF_BY), "error_rate": share, "unknown_rate": share}
    for name, (low, high) in limits.items():
        if not low <= options[name] <= high:
            shown = name.replace("_", "-")
            raise CommandError(f"--{shown} must be from {low:g} to {high:g}, not {options[name]}.", returncode=2)


def _worlds(options: Mapping[str, Any]) -> dict[str, World]:
    """The pack's own world, and the one where it is off unless nothing is."""
    worlds = {"as the pack says": World(weigh=True)}
    off = World(AnswerModel(error_rate=options["error_rate"], unknown_rate=options["unknown_rate"]), options["off_by"])
    if off != World():
        worlds["where it is off"] = off
    return worlds


def kits_of(known: Library) -> dict[str, frozenset[str]]:
    """The parts each fault's text names for the repairer."""
    return {fault: frozenset(text.kit) for fault, text in known.texts[FIRST_LANGUAGE].faults.items()}


def as_json(asked: Mapping[str, Any], simulations: Mapping[str, Simulation]) -> str:
    return json.dumps({"asked": asked, **{name: asdict(found) for name, found in simulations.items()}}, indent=2)


def as_lines(asked: Mapping[str, Any], simulations: Mapping[str, Simulation]) -> str:
    """The figures of each world, then what is taken for what, then which numbers matter."""
    lines = [
        f"{asked['samples']} checks in {asked['region']}, seed {asked['seed']}; in brackets the 95 % interval (Wilson)"
    ]
    for name, found in simulations.items():
        lines += ["", _heading(name, asked), *_table(_rows(found)), "", "  What is taken for what", *_confusions(found)]
        if found.costs:
            shown = [(str(c), f"{1000 * c.nats:.2f} ± {1000 * c.error:.2f}") for c in found.costs[:MAX_COSTS]]
            lines += ["", "  Which numbers deserve evidence: what the log score loses, in thousandths,"]
            lines += ["  when a rate or an effect is off by a factor of two, or trust by a tenth", *_table(shown)]
    return "\n".join(lines)


def _heading(name: str, asked: Mapping[str, Any]) -> str:
    if name != "where it is off":
        return f"{name.capitalize()}: people answer as the pack says people answer"
    wrong, unknown = 100 * asked["error_rate"], 100 * asked["unknown_rate"]
    return (
        f"{name.capitalize()}: numbers by up to a factor of {asked['off_by']:g}, {wrong:g} % of answers wrong, "
        f'{unknown:g} % more "can\'t tell"'
    )


def _rows(found: Simulation) -> list[tuple[str, str]]:
    rows = found.figures.as_rows()
    if found.stated is not None:
        rows.append(("Chance stated for the first job", f"{100 * found.stated:.1f} % on average"))
    return [*rows, ("All parts on the first visit", str(found.first_visit))]


def _confusions(found: Simulation) -> list[str]:
    if not found.confused:
        return ["  nothing"]
    shown = [(f"{true} taken for {led}", f"{n} of {found.families[true]}") for true, led, n in found.confused]
    return _table(shown[:MAX_CONFUSIONS])


def _table(rows: list[tuple[str, str]]) -> list[str]:
    wide = max(len(name) for name, _ in rows) + 2
    return [f"  {name:<{wide}}{said}" for name, said in rows]
