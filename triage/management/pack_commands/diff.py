"""`pack diff OLD NEW`: what changed between two packs, and whose check ends differently because of it."""

import json
from argparse import ArgumentParser
from collections.abc import Iterator, Mapping, Sequence
from contextlib import ExitStack
from pathlib import Path
from typing import Any

from django.core.management import CommandError

from triage.authoring.endings import Ending
from triage.authoring.figures import share
from triage.authoring.pack_changes import Change, text_changes
from triage.authoring.pack_diff import Difference, PackDiff, compare
from triage.authoring.progress import Progress
from triage.authoring.revisions import NoSuchPack, pack_folder
from triage.conf import DEFAULT_REGION
from triage.engine.pack import Pack
from triage.knowledge.library import ELECTRIC_OVEN, library
from triage.knowledge.pack_builder import build_pack, build_written
from triage.knowledge.problems import PackProblems
from triage.management.pack_commands import Output
from triage.management.pack_commands.regions import region_named
from triage.query import check_query

NAME = "diff"
HELP = "what changed between two packs, and which of many simulated checks end differently because of it"
WRITTEN = "written"
MAX_CHECKS = 1_000_000
MAX_TEXTS = 20
MAX_EXAMPLES = 3


def add_arguments(parser: ArgumentParser) -> None:
    parser.add_argument(
        "old", metavar="OLD", help="folder of a pack, git revision, or `written`: the pack without what was learnt"
    )
    parser.add_argument("new", metavar="NEW", nargs="?", help="folder or revision (the pack as it is now)")
    parser.add_argument("--samples", type=int, default=10_000, help="how many checks (10000)")
    parser.add_argument("--seed", type=int, default=1, help="the same number gives the same people (1)")
    parser.add_argument("--region", help="such as gb-eng (the site's own)")
    parser.add_argument("--json", action="store_true", help="as JSON")


def run(options: Mapping[str, Any], out: Output, err: Output) -> None:
    checks, code = options["samples"], options["region"] or DEFAULT_REGION.value()
    if not 1 <= checks <= MAX_CHECKS:
        raise CommandError(f"--samples must be from 1 to {MAX_CHECKS}, not {checks}.", returncode=2)
    region = region_named(library(), code).region
    with ExitStack() as unpacked:
        old, old_folder = _pack(options["old"], unpacked)
        new, new_folder = _pack(options["new"] or str(ELECTRIC_OVEN), unpacked)
        texts = text_changes(old_folder, new_folder)
    found = compare(old, new, region, checks, options["seed"], Progress("checks compared", checks, err.write))
    asked = {"old": old.version, "new": new.version, "region": code, "samples": checks, "seed": options["seed"]}
    out.write(as_json(asked, found, texts) if options["json"] else "\n".join(as_lines(asked, found, texts)))


def _pack(named: str, unpacked: ExitStack) -> tuple[Pack, Path]:
    """The pack that was named, and its folder for as long as `unpacked` is open."""
    if named == WRITTEN:
        return build_written(ELECTRIC_OVEN), ELECTRIC_OVEN
    try:
        folder = unpacked.enter_context(pack_folder(named, ELECTRIC_OVEN))
        return build_pack(folder), folder
    except NoSuchPack as wrong:
        raise CommandError(str(wrong), returncode=2) from wrong
    except PackProblems as refused:
        first, more = refused.problems[0], len(refused.problems) - 1
        others = f" ({more} more)" if more else ""
        raise CommandError(f"{named} holds no pack that this program loads. {first}{others}", returncode=2) from refused


def as_json(asked: Mapping[str, Any], found: PackDiff, texts: Sequence[Change]) -> str:
    groups = [
        {"because": name, "count": len(group), "examples": [_example(d, asked["region"]) for d in group[:MAX_EXAMPLES]]}
        for name, group in found.groups().items()
    ]
    content = {
        **asked,
        "changes": [_change(change) for change in found.changes],
        "texts": [_change(change) for change in texts],
        "different": len(found.differences),
        "kinds": kinds(found.differences),
        "traced": found.traced,
        "groups": groups,
    }
    return json.dumps(content, ensure_ascii=False, indent=2)


def kinds(differences: Sequence[Difference]) -> dict[str, int]:
    """How many checks differ in what; one may differ in several ways."""
    counts: dict[str, int] = {}
    for difference in differences:
        for kind in difference.kinds:
            counts[kind] = counts.get(kind, 0) + 1
    return dict(sorted(counts.items(), key=lambda item: -item[1]))


def _change(change: Change) -> dict[str, Any]:
    return {"what": change.what, "name": change.name, "how": change.how, "details": list(change.details)}


def _example(difference: Difference, region: str) -> dict[str, Any]:
    return {
        "person": difference.person,
        "differs": list(difference.kinds),
        "old": {"ending": _ending(difference.old.ending), "query": check_query(region, difference.old.trail)},
        "new": {"ending": _ending(difference.new.ending), "query": check_query(region, difference.new.trail)},
    }


def as_lines(asked: Mapping[str, Any], found: PackDiff, texts: Sequence[Change]) -> Iterator[str]:
    """What changed, how many checks end differently, and the groups with examples to open."""
    yield f"{asked['old']} -> {asked['new']}, region {asked['region']}"
    yield ""
    yield from (f"  {change}" for change in found.changes)
    yield from (f"  {change}" for change in texts[:MAX_TEXTS])
    if len(texts) > MAX_TEXTS:
        yield f"  and {len(texts) - MAX_TEXTS} more texts"
    if not found.changes:
        yield f"  Nothing a check could notice. {'Texts change no ending.' if texts else 'No text changed either.'}"
        return
    differ = len(found.differences)
    yield ""
    yield f"Checks that end differently (seed {asked['seed']}): {share(n < differ for n in range(found.checks))}"
    yield from (f"  in {kind:<8} {count}" for kind, count in kinds(found.differences).items())
    if differ > found.traced:
        yield f"The first {found.traced} of them, traced to the change that alone brings them about:"
    for name, group in found.groups().items():
        yield ""
        yield f"{len(group)} by {name}"
        for difference in group[:MAX_EXAMPLES]:
            example = _example(difference, asked["region"])
            yield f"  {example['old']['ending']} -> {example['new']['ending']}"
            yield f"    ?{example['new']['query']}"


def _ending(ending: Ending) -> str:
    if ending.exit:
        return f"another appliance ({ending.exit})"
    flags = f", danger {' '.join(ending.flags)}" if ending.flags else ""
    tasks = f", tasks {' '.join(sorted(ending.tasks))}" if ending.tasks else ", no tasks"
    return f"{ending.band}, {ending.family}{flags}{tasks}"
