"""What a knowledge author asks of the packs: one word after `pack` for each question."""

import json
from argparse import ArgumentParser
from collections.abc import Iterator

from django.core.management import BaseCommand, CommandError

from triage.knowledge.library import Library, load_library
from triage.knowledge.problems import PackProblems


class Command(BaseCommand):
    help = "Shows what the packs and regions know. `unsure` lists every fact that a person still has to confirm."

    def add_arguments(self, parser: ArgumentParser) -> None:
        questions = parser.add_subparsers(dest="question", required=True, metavar="question")
        unsure = questions.add_parser("unsure", help="facts from memory or of weak sources, with whom to ask")
        unsure.add_argument("--region", help="only this region, such as gb-eng")
        unsure.add_argument("--json", action="store_true", help="as JSON")

    def handle(self, *_args: object, region: str | None, json: bool, **_options: object) -> None:
        facts = list(unsure_facts(self._library(), region))
        self.stdout.write(as_json(facts) if json else as_lines(facts))

    def _library(self) -> Library:
        try:
            return load_library()
        except PackProblems as found:
            raise CommandError(str(found), returncode=2) from found


def unsure_facts(library: Library, region: str | None = None) -> Iterator[dict[str, str]]:
    """Region, fact and whom to ask, region by region. CommandError for a region that does not exist."""
    if region is not None and region not in library.regions:
        known = ", ".join(library.regions)
        raise CommandError(f"There is no region {region}. Known: {known}.", returncode=2)
    for code, profile in library.regions.items():
        if region in (None, code):
            for fact, check_with in profile.unsure:
                yield {"region": code, "fact": fact, "check_with": check_with}


def as_json(facts: list[dict[str, str]]) -> str:
    return json.dumps(facts, ensure_ascii=False, indent=2)


def as_lines(facts: list[dict[str, str]]) -> str:
    """One paragraph per region, one line per fact, and how many there are."""
    lines: list[str] = []
    for number, fact in enumerate(facts):
        if number == 0 or fact["region"] != facts[number - 1]["region"]:
            lines += ["", fact["region"]]
        lines.append(f"  - {fact['fact']} Check with {fact['check_with']}.")
    return "\n".join([*lines, "", f"{len(facts)} facts to confirm."]).lstrip("\n")
