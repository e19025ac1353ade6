"""The words for the phone: whole, in the pack's order, with nothing that no page shows."""

import json

import pytest

from triage.knowledge.library import library
from triage.offline.page_texts import page_regions, page_texts


@pytest.fixture
def told():
    return page_texts(library().texts["en"], library().pack)


def test_rows_stand_in_the_packs_order_with_their_fields_named_once(told):
    known, texts = library().pack, library().texts["en"]
    for table, ids, shapes in (
        (told["questions"], known.observations, texts.questions),
        (told["faults"], known.faults, texts.faults),
        (told["flags"], known.red_flags, texts.flags),
        (told["tasks"], known.tasks, texts.tasks),
    ):
        for each, row in zip(ids, table["rows"], strict=True):
            assert (row is None) == (each not in shapes)
            for name, told_field in zip(table["of"], row or (), strict=bool(row)):
                own = getattr(shapes[each], name)
                assert name in ("options", "cautions") or told_field == (list(own) if isinstance(own, tuple) else own)


def test_words_of_options_stand_in_the_order_of_the_options(told):
    at = told["questions"]["of"].index("options")
    for observation, row in zip(library().pack.observations.values(), told["questions"]["rows"], strict=True):
        if row:
            own = library().texts["en"].questions[observation.id].options
            assert row[at] == [own[option] for option in observation.options]


def test_a_repairers_words_and_an_agents_stay_away(told):
    texts, whole = library().texts["en"], json.dumps(told, ensure_ascii=False)
    assert not any(fault.repairer in whole for fault in texts.faults.values())
    said = [question.say for question in texts.questions.values() if question.say != question.ask]
    assert said
    assert not any(json.dumps(words, ensure_ascii=False)[1:-1] in whole for words in said)


def test_placeholders_stay_open_because_one_copy_serves_every_region(told):
    assert "{board}" in json.dumps(told)


def test_every_region_is_there_in_the_order_the_first_page_lists_them():
    told = page_regions(library().regions)
    assert list(told) == list(library().regions)
    assert told["gb-eng"]["emergency"] == library().regions["gb-eng"].emergency
    assert all("unsure" not in place for place in told.values())
