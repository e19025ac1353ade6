"""Every answer a caller can give is in the index, with its danger and what it depends on."""

from triage.desk.call.presenters.phrase_index import build_phrase_index
from triage.knowledge.library import library

PACK = library().pack


def rows(call, region="gb-eng"):
    return build_phrase_index(call(region=region).check_request)["answers"]


def test_every_question_that_is_ever_asked_is_there_with_every_answer(call):
    found = {pair for row in rows(call) for pair in row["pairs"].items()}
    texts = library().texts_for("gb-eng")
    asked = [PACK.observations[name] for name in texts.questions if PACK.observations[name].method != "trial"]
    assert {(o.id, option) for o in asked for option in o.options if o.id != "complaint"} <= found
    named = {complaint.option for complaint in PACK.complaints}
    assert {("complaint", option) for option in named} <= found


def test_danger_is_marked_by_what_it_does(call):
    danger = {pair: row["danger"] for row in rows(call) if len(row["pairs"]) == 1 for pair in row["pairs"].items()}
    assert danger["smoke-source", "flames"] == 2
    assert danger["trip-device", "rcd"] == 1
    assert danger["lamp-state", "lamp-dead"] == 0


def test_a_line_of_the_first_page_records_all_it_states(call):
    row = next(row for row in rows(call) if row["answer"] == "It does not get hot at all")
    assert row["pairs"] == {"complaint": "no-heat", "heat-main": "no-heat"}
    assert "stone cold" in row["heard"]


def test_what_depends_on_another_answer_says_so(call):
    row = next(row for row in rows(call) if "trip-timing" in row["pairs"])
    assert "rcd" in row["after"]["trip-device"]


def test_words_are_those_of_the_region(call):
    assert any("broiler" in row["answer"] for row in rows(call, "us"))
    assert not any("{" in str(row).replace("{'", "") for row in [r["heard"] for r in rows(call, "us")])


def test_what_only_an_instrument_answers_is_left_out(call):
    texts = library().texts_for("gb-eng").questions
    by_trial = {name for name in texts if PACK.observations[name].method == "trial"}
    assert by_trial == {"meter-power", "meter-grill", "thermometer-mean", "thermometer-swing", "thermometer-duty"}
    assert {name for row in rows(call) for name in row["pairs"]} & by_trial == set()
