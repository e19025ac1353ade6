"""`pack unverified`: every fact that a person still has to confirm, and with whom."""

import json
from argparse import ArgumentParser
from collections.abc import Iterator, Mapping
from typing import Any

from triage.knowledge.library import Library, library
from triage.management.pack_commands import Output
from triage.management.pack_commands.regions import region_named

NAME = "unverified"
HELP = "facts from memory or of weak sources, with whom to ask"


def add_arguments(parser: ArgumentParser) -> None:
    parser.add_argument("--region", help="only this region, such as gb-eng")
    parser.add_argument("--json", action="store_true", help="as JSON")


def run(options: Mapping[str, Any], out: Output, err: Output) -> None:  # noqa: ARG001  (too quick for progress)
    facts = list(unverified_facts(library(), options["region"]))
    out.write(json.dumps(facts, ensure_ascii=False, indent=2) if options["json"] else as_lines(facts))


def unverified_facts(known: Library, region: str | None = None) -> Iterator[dict[str, str]]:
    """Region, fact and whom to ask, region by region. CommandError for a region that does not exist."""
    if region is not None:
        region_named(known, region)
    for code, profile in known.regions.items():
        if region in (None, code):
            for fact, check_with in profile.unverified:
                yield {"region": code, "fact": fact, "check_with": check_with}


def as_lines(facts: list[dict[str, str]]) -> str:
    """One paragraph per region, one line per fact, and how many there are."""
    lines: list[str] = []
    for number, fact in enumerate(facts):
        if number == 0 or fact["region"] != facts[number - 1]["region"]:
            lines += ["", fact["region"]]
        lines.append(f"  - {fact['fact']} Check with {fact['check_with']}.")
    return "\n".join([*lines, "", f"{len(facts)} facts to confirm."]).lstrip("\n")
