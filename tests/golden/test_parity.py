"""One engine, two homes: the phone's says what Python's says, on at least twenty thousand trails."""

from collections import Counter
from dataclasses import replace

from tests.golden.node import records_in_node
from tests.golden.phone_engine import all_regions, phone_engine, records_on_phone
from tests.golden.recording import differences, recorded
from tests.golden.trails import chunk_of
from tests.safety.forging import with_retired_questions
from tests.safety.parallel import in_parallel
from triage.engine import run_check
from triage.engine.pack import Limits
from triage.knowledge.library import library

TRAILS = 20_000
FORGED = 4_000
EAGER = 600
SEED = 41
MAX_SHOWN = 10
IN_NODE_ALONE = 10  # of so many trails one is tried in a browser too


def record_chunk(region_id, number, forged):
    """One region's trails, and what Python makes of each; runs in a process of its own."""
    pack, region = with_retired_questions(), library().regions[region_id].region
    trails = chunk_of(pack, region, SEED, number, forged)
    return [pairs for pairs, _ in trails], [
        recorded(check or run_check(pack, region, pairs)) for pairs, check in trails
    ]


def test_both_engines_say_the_same(page, record_property):
    """All of it in Node, and every tenth trail in a browser too, which is another machine for the same script."""
    pack, regions = with_retired_questions(), all_regions()
    each, forged = -(-TRAILS // len(regions)), -(-FORGED // len(regions))
    recorded_chunks = list(in_parallel(record_chunk, [(region.id, each, forged) for region in regions]))
    chunks = [
        [(region.id, pairs) for pairs in trails] for region, (trails, _) in zip(regions, recorded_chunks, strict=True)
    ]
    expected = [records for _, records in recorded_chunks]
    assert_the_same(chunks, expected, records_in_node(pack, regions, chunks))
    some, some_expected = every_tenth(chunks), every_tenth(expected)
    with phone_engine(page, pack, regions) as desk:
        assert_the_same(some, some_expected, records_on_phone(page, desk, some))
    record_property("states", sum(map(len, chunks)) + sum(map(len, some)))
    assert_all_was_tried(pack, [record for records in expected for record in records])


def every_tenth(chunks):
    return [chunk[::IN_NODE_ALONE] for chunk in chunks]


def assert_the_same(chunks, expected, found):
    apart = []
    for trails, records, answered in zip(chunks, expected, found, strict=True):
        for trail, one, other in zip(trails, records, answered, strict=True):
            apart += [f"{sentence}\n  after {trail}" for sentence in differences(one, other)]
    assert "\n".join(apart[:MAX_SHOWN]) == ""


def test_they_agree_on_a_pack_that_asks_on_and_thinks_readings_cheap():
    """Other limits reach what the pack people use hardly ever reaches: a reading named beside a question."""
    pack, region = with_retired_questions(), library().regions["gb-eng"].region
    cheap = {o.id: replace(o, effort_seconds=1.0) if o.measurement else o for o in pack.observations.values()}
    limits = Limits(
        max_questions=40, stop_probability=1.0, min_bits=0.0, plausible_probability=0.2, relevant_probability=0.0
    )
    eager = replace(pack, observations=cheap, limits=limits)
    lines = chunk_of(eager, region, SEED, EAGER, EAGER // 4)
    expected = [recorded(check or run_check(eager, region, pairs)) for pairs, check in lines]
    chunk = [(region.id, pairs) for pairs, _ in lines]
    assert_the_same([chunk], [expected], records_in_node(eager, [region], [chunk]))
    assert any(record["better"] for record in expected)


def assert_all_was_tried(pack, records):
    """Every kind of step, band, mistake, task, and answer was among the trails."""
    assert len(records) >= TRAILS
    kinds = Counter(record["kind"] for record in records)
    assert set(kinds) == {"Question", "Emergency", "Result", "OutOfScope"}
    assert min(kinds.values()) >= len(library().regions)
    assert {record["band"] for record in records} == {None, "normal", "self-check", "qualified", "make-safe"}
    mistakes = {problem[0] for record in records for problem in record["problems"]}
    assert mistakes == {
        "unknown-question",
        "unknown-answer",
        "unreadable-reading",
        "contradiction",
        "retired",
        "out-of-place",
        "too-many",
    }
    given = {tuple(answer) for record in records for answer in record["answers"]}
    assert given >= {(o.id, option) for o in pack.observations.values() for option in o.options}
    assert {flag for record in records for flag in record["flags"]} == set(pack.red_flags)
