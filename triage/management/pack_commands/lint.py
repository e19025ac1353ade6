"""`pack lint`: everything that is wrong or weak in a pack, at once, each with file, line and remedy."""

import json
from argparse import ArgumentParser
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from django.core.management import CommandError

from triage.authoring.linting.finding import Gravity, LintFinding
from triage.authoring.linting.review import refusals, review
from triage.authoring.progress import Progress
from triage.knowledge.library import ELECTRIC_OVEN, REGIONS, load_library
from triage.knowledge.problems import PackProblems
from triage.management.pack_commands import Output

NAME = "lint"
HELP = "what is wrong or weak in a pack, each with file, line and remedy; exit code 1 when there is a mistake"
MAX_CHECKS = 1_000_000


def add_arguments(parser: ArgumentParser) -> None:
    parser.add_argument("folder", metavar="FOLDER", nargs="?", type=Path, default=ELECTRIC_OVEN, help="of a pack")
    parser.add_argument("--samples", type=int, default=1000, help="simulated checks, to see what is asked (1000)")
    parser.add_argument("--seed", type=int, default=1, help="the same number gives the same checks (1)")
    parser.add_argument("--json", action="store_true", help="as JSON")


def run(options: Mapping[str, Any], out: Output, err: Output) -> None:
    folder, checks = options["folder"].resolve(), options["samples"]
    if not folder.is_dir():
        raise CommandError(f"There is no folder {options['folder']}. Give the folder of a pack.", returncode=2)
    if not 0 <= checks <= MAX_CHECKS:
        raise CommandError(f"--samples must be from 0 to {MAX_CHECKS}, not {checks}.", returncode=2)
    found = findings_of(folder, checks, options["seed"], err)
    mistakes = sum(finding.gravity is Gravity.MISTAKE for finding in found)
    out.write(as_json(found) if options["json"] else as_lines(found, mistakes))
    if mistakes:
        raise CommandError(f"The pack in {folder.name} has mistakes: {mistakes}.", returncode=1)


def findings_of(folder: Path, checks: int, seed: int, err: Output) -> list[LintFinding]:
    """What the loader refuses, else what the review finds."""
    try:
        library = load_library(folder)
    except PackProblems as refused:
        return refusals(refused)
    return review(library, folder, REGIONS, checks, seed, Progress("checks walked", checks, err.write))


def as_json(found: Sequence[LintFinding]) -> str:
    entries = [
        {
            "level": finding.gravity.value,
            "kind": finding.kind,
            "file": finding.problem.file,
            "line": finding.problem.line,
            "where": finding.problem.where,
            "what": finding.problem.what,
            "remedy": finding.problem.remedy,
        }
        for finding in found
    ]
    return json.dumps(entries, ensure_ascii=False, indent=2)


def as_lines(found: Sequence[LintFinding], mistakes: int) -> str:
    """One line for each finding, and how many there are of which gravity."""
    lines = [str(finding) for finding in found]
    if any(finding.kind == "refused" for finding in found):
        lines.append("The pack does not load; what else is weak shows once it does.")
    return "\n".join([*lines, f"Mistakes: {mistakes}. Remarks: {len(found) - mistakes}."])
