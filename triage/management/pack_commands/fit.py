"""`pack fit FILE`: outcomes to proposed numbers, with scores before and after. Nothing changes unless accepted."""

import json
from argparse import ArgumentParser
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from django.core.management import CommandError

from triage.authoring.progress import Progress
from triage.engine.pack import Pack
from triage.knowledge.library import ELECTRIC_OVEN, Library, load_library
from triage.knowledge.overlay_file import FOLDER, newest_overlay, overlay_text
from triage.knowledge.pack_builder import overlaid, rules_hash
from triage.knowledge.problems import PackProblems
from triage.learning.cross_validation import compare
from triage.learning.fit import prepare
from triage.learning.outcome_file import read_outcomes
from triage.learning.proposal import Proposal, as_json_ready, as_lines
from triage.learning.reliability_plot import reliability_svg
from triage.management.pack_commands import Output
from triage.management.pack_commands.accept import ACCEPTED_BY_HELP, OVERLAYS_HELP, accepted

NAME = "fit"
HELP = "what outcomes (found and fitted) would change in the pack's numbers, with scores before and after"


def add_arguments(parser: ArgumentParser) -> None:
    parser.add_argument("files", metavar="FILE", nargs="+", type=Path, help="outcomes (the pack README shows some)")
    parser.add_argument("--firm", default="", help="only this firm's own numbers, shrunk to what all others found")
    parser.add_argument("--proposal", metavar="FILE", type=Path, help="write the proposal here, for `pack accept`")
    parser.add_argument("--plot", metavar="FILE", type=Path, help="write the reliability plot here, as SVG")
    parser.add_argument("--accept", action="store_true", help="accept it at once; needs --accepted-by")
    parser.add_argument("--accepted-by", default="", help=ACCEPTED_BY_HELP)
    parser.add_argument("--overlays", metavar="FOLDER", type=Path, help=OVERLAYS_HELP)
    parser.add_argument("--json", action="store_true", help="as JSON")


def run(options: Mapping[str, Any], out: Output, err: Output) -> None:
    known = load_library(learnt=False)
    if options["accept"] and not options["accepted_by"].strip():
        raise CommandError("Say who accepts: --accepted-by NAME.", returncode=2)
    proposal = propose(known, options, err)
    overlay = proposal.overlay(rules_hash(ELECTRIC_OVEN))
    if options["proposal"]:
        _write(options["proposal"], overlay_text(overlay, known.pack))
    if options["plot"]:
        _write(options["plot"], reliability_svg(proposal.comparison.before.bins, proposal.comparison.after.bins))
    if options["accept"]:
        err.write(f"Accepted by {options['accepted_by'].strip()}: {accepted(overlay, known, options)}")
    said = json.dumps(as_json_ready(proposal), ensure_ascii=False, indent=2) if options["json"] else as_lines(proposal)
    out.write(said)


def propose(known: Library, options: Mapping[str, Any], err: Output) -> Proposal:
    """The proposal of these outcomes. CommandError where the firm has none."""
    regions = {code: profile.region for code, profile in known.regions.items()}
    outcomes = read_outcomes(options["files"], known.pack, regions)
    firm = options["firm"]
    firms = sorted({outcome.firm for outcome in outcomes if outcome.firm})
    if firm and firm not in firms:
        raise CommandError(f"No outcome is of firm {firm}. Firms: {', '.join(firms) or 'none'}.", returncode=2)
    count = sum(outcome.firm == firm or not firm for outcome in outcomes)
    lesson = prepare(known.pack, regions, outcomes, firm, Progress("outcomes counted", count, err.write))
    in_use = _in_use(known.pack, options["overlays"], err)
    comparison = compare(lesson, in_use, Progress("outcomes forecast", count, err.write))
    return Proposal(firm, lesson, lesson.numbers(range(count)), comparison)


def _in_use(written: Pack, overlays: Path | None, err: Output) -> Pack:
    """The pack with what was accepted before; as written where that no longer fits."""
    folder = overlays or ELECTRIC_OVEN / FOLDER
    newest = newest_overlay(folder)
    try:
        return overlaid(written, ELECTRIC_OVEN, newest) if newest else written
    except PackProblems as found:
        err.write(f"{found}\nBefore is the pack as written.")
        return written


def _write(path: Path, text: str) -> None:
    try:
        path.write_text(text, "utf-8")
    except OSError as error:
        what = f"{path.name} cannot be written: {error.strerror}. Give another path."
        raise CommandError(what, returncode=2) from error
