"""Words for questions, answers and chances, and never a question that is hidden."""

import pytest

from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN
from triage.jobsheet.wording import answer_label, question_label, short_chance, tenths
from triage.knowledge.library import library


@pytest.fixture
def texts():
    return library().texts_for("gb-eng")


def test_every_question_and_option_of_the_pack_has_words(texts):
    for observation in library().pack.observations.values():
        assert question_label(texts, observation.id) != observation.id
        for option in observation.options:
            assert answer_label(texts, observation.id, option) != option


def test_what_has_no_text_is_shown_by_its_id(texts):
    assert question_label(texts, "from-another-pack") == "from-another-pack"
    assert answer_label(texts, "from-another-pack", "purple") == "purple"


def test_the_danger_page_and_not_knowing_have_words(texts):
    assert question_label(texts, SCREEN) == "Danger signs"
    assert answer_label(texts, SCREEN, NONE_OF_THESE) == texts.start.danger.none
    assert answer_label(texts, "complaint", CANT_TELL) == "I can’t tell"


@pytest.mark.parametrize(
    ("chance", "text", "dots"),
    [
        (0.0, "Fewer than 1 in 10", 0),
        (0.099, "Fewer than 1 in 10", 0),
        (0.1, "About 1 in 10", 1),
        (0.45, "About 5 in 10", 5),
        (0.949, "About 9 in 10", 9),
        (0.95, "More than 9 in 10", 9),
        (1.0, "More than 9 in 10", 9),
    ],
)
def test_a_chance_is_never_nothing_and_never_certain(chance, text, dots):
    assert (short_chance(chance), tenths(chance)) == (text, dots)


def test_no_chance_is_told_by_a_word_that_two_scales_read_differently():
    """60 % is "likely" by ICD 203 (55 to 80 %) and not by the IPCC (66 to 90 %), tables seen: so it is a number."""
    assert short_chance(0.6) == "About 6 in 10"
    result = " ".join(short_chance(hundredth / 100) for hundredth in range(101)).lower()
    assert not any(word in result for word in ("likely", "certain", "chance", "probable", "doubt"))
