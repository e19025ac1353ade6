"""The golden file: some hundred trails, each with the step it led to when a person last looked at the change.

One trail a line. `write` works the steps of given trails out again, so the difference shows what a change does to
people; `choose` throws new trails, for when the questions themselves have changed.
"""

import json
from pathlib import Path
from random import Random

from tests.golden.phone_engine import all_regions
from tests.golden.recording import recorded
from tests.golden.trails import chunk_of
from tests.safety.forging import with_retired_questions
from triage.engine import run_check
from triage.knowledge.library import library

FILE = Path(__file__).with_name("steps.json")
QUOTAS = {"Question": 100, "Emergency": 70, "Result": 70, "OutOfScope": 10}
SEED = 7
EACH, FORGED = 300, 40
RANKED = 8
CHANCE_DIGITS, WEIGHT_DIGITS = 12, 9


def brief(record):
    """What the golden file keeps of a record: the likeliest faults only, numbers without their last digits."""
    leading = record["ranking"][:RANKED]
    place = {fault: number for number, fault in enumerate(with_retired_questions().faults)}
    return record | {
        "ranking": leading,
        "families": record["families"][:RANKED],
        "chances": [round(record["chances"][place[fault]], CHANCE_DIGITS) for fault in leading],
        "weights": [round(weight, WEIGHT_DIGITS) for weight in record["weights"]],
    }


def choose():
    """New trails, region after region, until each kind of step has its number."""
    pack, dice, regions = with_retired_questions(), Random(SEED), all_regions()
    wanted, chosen = dict(QUOTAS), []
    while any(wanted.values()):
        region = dice.choice(regions)
        for pairs, check in dice.sample(chunk_of(pack, region, dice.random(), EACH, FORGED), EACH):
            kind = recorded(check or run_check(pack, region, pairs))["kind"]
            if wanted[kind]:
                wanted[kind] -= 1
                chosen.append((kind, region.id, [list(pair) for pair in pairs]))
    return [(region, trail) for _, region, trail in sorted(chosen, key=lambda line: list(QUOTAS).index(line[0]))]


def kept():
    """The trails of the golden file, each `(region, pairs)`."""
    return [(line["region"], line["trail"]) for line in read()]


def write(trails):
    """Each trail with the step of today."""
    pack, regions = with_retired_questions(), library().regions
    steps = [brief(recorded(run_check(pack, regions[region].region, trail))) for region, trail in trails]
    lines = [
        {"region": region, "trail": trail, "step": step} for (region, trail), step in zip(trails, steps, strict=True)
    ]
    body = ",\n".join(json.dumps(line, ensure_ascii=False, separators=(",", ":")) for line in lines)
    FILE.write_text(f"[\n{body}\n]\n", "utf-8")


def read():
    """Every golden line."""
    return json.loads(FILE.read_text("utf-8"))
