"""`pack accept PROPOSAL --accepted-by NAME`: a proposal of `pack fit` becomes an overlay of the pack."""

import json
from argparse import ArgumentParser
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from django.utils.timezone import localdate

from triage.knowledge.library import ELECTRIC_OVEN, Library, load_library
from triage.knowledge.overlay_file import FOLDER, Overlay, read_overlay
from triage.knowledge.pack_builder import rules_hash
from triage.learning.acceptance import accept
from triage.management.pack_commands import Output

NAME = "accept"
HELP = "make a proposal of `pack fit` an overlay of the pack, with who, when and from how many outcomes"
ACCEPTED_BY_HELP = "the name of the person who accepts, kept in the overlay"
OVERLAYS_HELP = "where overlays are kept (the pack's own folder, where the site reads them)"


def add_arguments(parser: ArgumentParser) -> None:
    parser.add_argument("proposal", metavar="PROPOSAL", type=Path, help="what `pack fit --proposal` wrote")
    parser.add_argument("--accepted-by", required=True, help=ACCEPTED_BY_HELP)
    parser.add_argument("--overlays", metavar="FOLDER", type=Path, help=OVERLAYS_HELP)
    parser.add_argument("--json", action="store_true", help="as JSON")


def run(options: Mapping[str, Any], out: Output, err: Output) -> None:  # noqa: ARG001  (too quick for progress)
    known, proposal = load_library(learnt=False), options["proposal"]
    overlay = read_overlay(proposal, proposal.name, known.pack, rules_hash(ELECTRIC_OVEN), proposal=True)
    path = accepted(overlay, known, options)
    if options["json"]:
        out.write(json.dumps({"overlay": str(path), "accepted_by": options["accepted_by"].strip()}, ensure_ascii=False))
    else:
        out.write(f"Accepted: {path}\nThe site uses it when it starts again. To go back, delete the file.")


def accepted(overlay: Overlay, known: Library, options: Mapping[str, Any]) -> Path:
    """The overlay file that was written. Raises PackProblems; then none was."""
    regions = {code: profile.region for code, profile in known.regions.items()}
    folder = options["overlays"] or ELECTRIC_OVEN / FOLDER
    return accept(overlay, known.pack, regions, folder, options["accepted_by"], localdate().isoformat())
