"""`pack export`: the pack in one region as a Bayesian network that other libraries read."""

import json
from argparse import ArgumentParser
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from triage.conf import DEFAULT_REGION
from triage.engine.model import compile_model
from triage.knowledge.exports import to_xmlbif
from triage.knowledge.library import library
from triage.management.pack_commands import Output
from triage.management.pack_commands.files import write_whole
from triage.management.pack_commands.regions import region_named

NAME = "export"
HELP = "the pack in one region as a Bayesian network in the open interchange format XMLBIF 0.3"
FORMATS = {"xmlbif": to_xmlbif}


def add_arguments(parser: ArgumentParser) -> None:
    parser.add_argument("--region", help="such as gb-eng (the site's own)")
    parser.add_argument("--format", choices=FORMATS, default="xmlbif", help="the only one there is (xmlbif)")
    parser.add_argument("--out", metavar="FILE", type=Path, help="where to write it (to standard output)")
    parser.add_argument("--json", action="store_true", help="say what was written as JSON, the network inside it")


def run(options: Mapping[str, Any], out: Output, err: Output) -> None:  # noqa: ARG001  (too quick for progress)
    known = library()
    code = options["region"] or DEFAULT_REGION.value()
    text = FORMATS[options["format"]](compile_model(known.pack, region_named(known, code).region))
    if options["out"]:
        write_whole(options["out"], text)
    content = {"pack": known.pack.id, "version": known.pack.version, "region": code, "format": options["format"]}
    if options["json"]:
        where = {"file": str(options["out"])} if options["out"] else {"network": text}
        out.write(json.dumps({**content, **where}, ensure_ascii=False, indent=2))
    elif options["out"]:
        out.write(f"{known.pack.id} {known.pack.version} in {code} is in {options['out']}: {len(text):,} signs.")
    else:
        out.write(text)
