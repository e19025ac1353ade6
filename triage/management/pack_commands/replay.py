"""`pack replay FILE`: cases played against the engine, each beside what it should have come to."""

import json
from argparse import ArgumentParser
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from triage.authoring.case_result import CaseResult
from triage.authoring.cases import Case, read_cases
from triage.authoring.check_runner import CheckRunner
from triage.authoring.figures import figures
from triage.authoring.progress import Progress
from triage.authoring.replay import replay
from triage.conf import DEFAULT_REGION
from triage.knowledge.library import library
from triage.management.pack_commands import Output
from triage.management.pack_commands.regions import region_named

NAME = "replay"
HELP = "cases from a file played against the engine, each beside what it should have come to"
MAX_CAUSES = 5


def add_arguments(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", type=Path, help="a YAML list of cases (the pack README shows one)")
    parser.add_argument("--region", help="for cases that name none, such as gb-eng (the site's own)")
    parser.add_argument("--json", action="store_true", help="as JSON")


def run(options: Mapping[str, Any], out: Output, err: Output) -> None:
    known = library()
    region = options["region"] or DEFAULT_REGION.value()
    region_named(known, region)
    cases = read_cases(options["file"], known.pack, known.regions)
    walks = {code: CheckRunner(known.pack, profile.region) for code, profile in known.regions.items()}
    tell = Progress("cases replayed", len(cases), err.write)
    findings = []
    for number, case in enumerate(cases, 1):
        findings.append(replay(walks[case.region or region], case))
        tell(number)
    out.write(as_json(cases, findings, region) if options["json"] else as_lines(findings))


def as_json(cases: tuple[Case, ...], findings: list[CaseResult], region: str) -> str:
    entries = [case_as_json(finding, case.region or region) for case, finding in zip(cases, findings, strict=True)]
    return json.dumps({"cases": entries, "figures": figures(findings).as_json()}, ensure_ascii=False, indent=2)


def case_as_json(finding: CaseResult, region: str) -> dict[str, Any]:
    return {
        "id": finding.case,
        "region": region,
        "asked": finding.asked,
        "answered": finding.answered,
        "band": finding.band.value,
        "right_band": finding.right_band,
        "causes": [{"cause": cause, "chance": chance} for cause, chance in finding.causes],
        "rank": finding.rank,
        "expected": {
            "causes": finding.expected.causes,
            "band": [band.value for band in finding.expected.bands],
        },
    }


def as_lines(findings: list[CaseResult]) -> str:
    """A paragraph per case, then the figures of all."""
    lines: list[str] = []
    for finding in findings:
        lines += [*_paragraph(finding), ""]
    wide = max(len(name) for name, _ in figures(findings).as_rows()) + 2
    lines.append(f"{len(findings)} cases; in brackets the 95 % interval (Wilson)")
    return "\n".join([*lines, *(f"  {name:<{wide}}{said}" for name, said in figures(findings).as_rows())])


def _paragraph(finding: CaseResult) -> list[str]:
    wanted = " or ".join(band.value for band in finding.expected.bands)
    band = finding.band.value if finding.right_band else f"{finding.band.value}, expected {wanted}"
    causes = ", ".join(f"{cause} {100 * chance:.0f} %" for cause, chance in finding.causes[:MAX_CAUSES])
    rank = "not among the pack's causes" if finding.rank is None else f"place {finding.rank}"
    return [
        finding.case,
        f"  band      {band}",
        f"  causes    {causes}",
        f"  expected  {' or '.join(finding.expected.causes)}: {rank}",
        f"  asked     {len(finding.asked)}, answered {finding.answered}: {', '.join(finding.asked) or 'nothing'}",
    ]
