"""The pack for a telephone menu is whole, as described, and small."""

import gzip
import json

from tests.api.presenters.steps import check_request, validator
from triage.api.presenters.pack import pack_json
from triage.engine import CANT_TELL, parse_answers
from triage.knowledge.library import library

MOST_BYTES = 16_000  # as it travels


def test_it_is_as_described_and_every_answer_in_it_is_known():
    result, pack = pack_json(check_request()), library().pack
    validator("pack").validate(result)
    pairs = [pair for complaint in result["complaints"] for pair in complaint["answers"]]
    pairs += [(o["observation"], option["answer"]) for o in result["observations"] for option in o["options"]]
    problems = [parse_answers(pack, [tuple(pair)]).problems for pair in pairs]
    assert not [p for found in problems for p in found if p.kind != "out-of-place"]
    assert {place["id"] for place in result["regions"]} == set(library().regions)


def test_every_question_has_the_way_out_of_not_knowing():
    assert all(o["options"][-1]["answer"] == CANT_TELL for o in pack_json(check_request())["observations"])


def test_it_is_small():
    assert len(gzip.compress(json.dumps(pack_json(check_request()), ensure_ascii=False).encode())) < MOST_BYTES
