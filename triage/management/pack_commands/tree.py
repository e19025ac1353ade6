"""`pack tree`: the decision tree as grown, to read, to draw and to sign."""

import json
from argparse import ArgumentParser
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from django.core.management import CommandError

from triage.authoring.decision_tree import MAX_NODES, CannotGrow, Tree, grow, outline_rows
from triage.authoring.progress import Progress
from triage.authoring.tree_drawing import draw
from triage.authoring.tree_labels import TreeLabels
from triage.authoring.tree_outline import outline
from triage.conf import DEFAULT_REGION
from triage.knowledge.library import library
from triage.management.pack_commands import Output
from triage.management.pack_commands.files import write_whole
from triage.management.pack_commands.regions import region_named

NAME = "tree"
HELP = "the decision tree to a chosen depth, as an outline to review and sign and as a drawing"


def add_arguments(parser: ArgumentParser) -> None:
    parser.add_argument("--variant", metavar="ID=OPTION", nargs="+", default=[], help="what is known of the oven")
    parser.add_argument("--complaint", help="one complaint, such as no-heat (every line of the start page)")
    parser.add_argument("--depth", type=int, default=2, help="questions after the danger page (2)")
    parser.add_argument("--region", help="such as gb-eng (the site's own)")
    parser.add_argument("--svg", metavar="FILE", type=Path, help="draw it into this file as well")
    parser.add_argument("--json", action="store_true", help="as JSON")


def run(options: Mapping[str, Any], out: Output, err: Output) -> None:
    known = library()
    code = options["region"] or DEFAULT_REGION.value()
    region = region_named(known, code).region
    stated, tell = stated_kinds(options["variant"]), Progress("places at the most grown", MAX_NODES, err.write)
    try:
        tree = grow(known.pack, region, stated, options["complaint"], options["depth"], tell)
    except CannotGrow as reason:
        raise CommandError(str(reason), returncode=2) from reason
    labels = TreeLabels(known.pack, code, known.texts_for(code))
    if options["svg"]:
        write_whole(options["svg"], draw(tree, labels))
    out.write(as_json(tree, labels) if options["json"] else outline(tree, labels))


def stated_kinds(written: Sequence[str]) -> dict[str, str]:
    """`id=option` texts as a mapping. CommandError for anything else."""
    stated: dict[str, str] = {}
    for text in written:
        variant, mark, option = text.partition("=")
        if not mark or not variant or not option:
            raise CommandError(f"{text!r} is no kind of oven. Write --variant control=mechanical.", returncode=2)
        if stated.setdefault(variant, option) != option:
            raise CommandError(f"{variant} cannot be {stated[variant]} and {option} at once. Give one.", returncode=2)
    return stated


def as_json(tree: Tree, labels: TreeLabels) -> str:
    """Every place once, in the order of the outline."""
    places = [
        {
            "number": line.number,
            "complaint": line.start.option,
            "asked": line.asked,
            "answers": list(line.answers),
            "kind": line.node.kind,
            "name": line.node.name,
            "band": line.node.band,
            "flags": list(line.node.flags),
            "same_as": line.same_as,
        }
        for line in outline_rows(tree)
    ]
    head = {
        "pack": labels.pack.id,
        "version": labels.pack.version,
        "region": labels.region,
        "stated": dict(tree.stated),
    }
    counts = {"depth": tree.depth, "grown": tree.grown, "different": tree.different}
    return json.dumps({**head, **counts, "places": places}, ensure_ascii=False, indent=2)
