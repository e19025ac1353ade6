"""What the people behind the site put into files: a pack, a region, outcomes, cases, an overlay."""

from pathlib import Path

from tests.attack.parser import Parser, on_file
from tests.builders import ELECTRIC_OVEN, electric_oven
from tests.knowledge.small_packs import SMALL_PACK
from triage.authoring.cases import read_cases
from triage.knowledge.library import FIRST_LANGUAGE, REGIONS
from triage.knowledge.overlay_file import read_overlay
from triage.knowledge.pack_builder import FILES, build_written, rules_hash
from triage.knowledge.problems import PackProblems
from triage.knowledge.region_builder import MESSAGES, build_regions
from triage.knowledge.yaml_reader import read_yaml
from triage.learning.outcome_file import read_outcomes

BETWEEN = b"\n# next file\n"
PLACE = "gb-eng.yaml"
CASE = """- id: cold
  region: gb-eng
  answers: {complaint: no-heat, danger: none}
  expect: {causes: [fan-element-open], band: [qualified]}
"""
OVERLAY = """pack: {pack}
rules: {rules}
accepted_by: Ada Example
accepted_on: '2026-03-01'
outcomes: 40
log_score: {{before: 1.5, after: 1.25}}
calls: {{fan-element-open: 75.0}}
"""
OUTCOME = """outcomes:
  - reference: visit-1
    firm: north-street
    region: gb-eng
    day: '2026-02-03'
    answers: {complaint: no-heat, danger: none, preheat-time: m22~c156.79}
    found: [fan-element-open]
    fitted: []
    first_visit: true
"""


def small_pack_in(folder):
    """A whole pack out of one text: its files one after the other, as many as there are."""
    pack = Path(folder) / SMALL_PACK.name
    pack.mkdir()

    def build(item):
        files = item.split(BETWEEN)
        for number, name in enumerate(FILES):
            (pack / f"{name}.yaml").write_bytes(files[number] if number < len(files) else b"")
        return build_written(pack)

    return build


def region_in(folder, pack):
    """One region beside the sentences all of them choose from."""
    regions = Path(folder) / "regions"
    regions.mkdir()
    sentences = f"{MESSAGES}.{FIRST_LANGUAGE}.yaml"
    (regions / sentences).write_bytes((REGIONS / sentences).read_bytes())

    def build(item):
        problems = []
        (regions / PLACE).write_bytes(item)
        build_regions(regions, FIRST_LANGUAGE, pack, problems)
        if problems:
            raise PackProblems(problems)

    return build


def author_parsers(folder):
    """Each by its name; files are written into `folder`."""
    pack, rules, problems = electric_oven(), rules_hash(ELECTRIC_OVEN), []
    overlay = OVERLAY.format(pack=pack.id, rules=rules).encode()
    texts = [path.read_bytes() for path in sorted(ELECTRIC_OVEN.glob("*.yaml")) if path.stat().st_size < 3000]
    small = BETWEEN.join((SMALL_PACK / f"{name}.yaml").read_bytes() for name in FILES)
    read = {
        "YAML": (lambda path: read_yaml(path, "a.yaml", problems), [*texts, CASE.encode()]),
        "case file": (lambda path: read_cases(path, pack, ("gb-eng",)), [CASE.encode(), CASE.encode() * 2]),
        "overlay": (lambda path: read_overlay(path, "a.yaml", pack, rules), [overlay]),
        "outcomes": (lambda path: read_outcomes([path], pack, ("gb-eng",)), [OUTCOME.encode()]),
    }
    return {
        **{
            name: Parser(on_file(one, folder), good, () if name == "YAML" else (PackProblems,))
            for name, (one, good) in read.items()
        },
        "pack": Parser(small_pack_in(folder), [small], (PackProblems,)),
        "region": Parser(region_in(folder, pack), [(REGIONS / PLACE).read_bytes()], (PackProblems,)),
    }
