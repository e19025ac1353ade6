"""`pack explain`: one check taken apart, answer by answer."""

import json
from argparse import ArgumentParser
from collections.abc import Iterator, Mapping
from typing import Any

from django.core.management import CommandError

from triage.authoring.answers_text import InvalidAnswersText, known_check, read_text
from triage.authoring.explanation import Explanation, Next, Stage, explain
from triage.conf import DEFAULT_REGION
from triage.knowledge.library import library
from triage.management.pack_commands import Output
from triage.management.pack_commands.regions import region_named

NAME = "explain"
HELP = "a check taken apart: belief and weights after each answer, why this question next, what others would tell"


def add_arguments(parser: ArgumentParser) -> None:
    parser.add_argument(
        "trail", help='the query string or address of a check, or JSON such as {"complaint": "no-heat"}'
    )
    parser.add_argument("--region", help="such as gb-eng (the one in the trail, else the site's own)")
    parser.add_argument("--json", action="store_true", help="as JSON")


def run(options: Mapping[str, Any], out: Output, err: Output) -> None:  # noqa: ARG001  (too quick for progress)
    known = library()
    try:
        parsed = read_text(options["trail"])
        region = region_named(known, options["region"] or parsed.region or DEFAULT_REGION.value()).region
        check = known_check(known.pack, region, parsed.pairs)
    except InvalidAnswersText as wrong:
        raise CommandError(str(wrong), returncode=2) from wrong
    explained = explain(check)
    out.write(
        json.dumps(explained.as_json(), ensure_ascii=False, indent=2)
        if options["json"]
        else "\n".join(as_lines(explained))
    )


def as_lines(explained: Explanation) -> Iterator[str]:
    """A paragraph per answer; the weights are for the causes that lead at the end."""
    yield f"{explained.pack} {explained.version}, region {explained.region}"
    for stage in explained.stages:
        yield ""
        yield from _stage(stage)
    for problem in explained.unused:
        yield f"Not used ({problem.kind}): {problem.observation}={problem.answer}"
    yield ""
    yield f"In the end {explained.ending}."


def _stage(stage: Stage) -> Iterator[str]:
    yield f"{stage.question}={stage.answer}" if stage.question else "Before any answer"
    if stage.weights:
        yield f"  weighs    {', '.join(f'{fault} {decibans:+.1f} dB' for fault, decibans in stage.weights.items())}"
    yield f"  causes    {_chances(stage.causes)}"
    yield f"  families  {_chances(stage.families)}"
    yield from _next(stage.next)


def _next(then: Next) -> Iterator[str]:
    if then.question is None:
        yield f"  then      {then.reason}"
        return
    yield f"  then asks {then.question}: {then.reason}"
    for rival in then.candidates:
        mark = ">" if rival.question == then.question else " "
        worth = f"{rival.bits:6.3f} bits {rival.seconds:6.0f} s {1000 * rival.bits_per_second:7.2f} bits per 1000 s"
        yield f"          {mark} {rival.question:<24}{worth}"


def _chances(chances: Mapping[str, float]) -> str:
    return ", ".join(f"{name} {100 * chance:.1f} %" for name, chance in chances.items())
