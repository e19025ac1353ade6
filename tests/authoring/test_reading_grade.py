"""The counter that judges our texts is judged first."""

import pytest

from triage.authoring.reading_grade import count, grade, syllables


def test_a_published_example_has_its_published_counts_and_grade():
    """From the tests of textstat 0.7.13."""
    counts = count("Cool dogs wear da sunglasses.")
    assert (counts.words, counts.sentences, counts.syllables) == (5, 1, 7)
    assert counts.grade == pytest.approx(2.88, abs=0.005)


@pytest.mark.parametrize(
    ("number", "words"),
    [
        (1, "door heat heats switched dies browned fuse plates fan glass grill wire through bulb tripped rings"),
        (2, "oven heater setting panel cooling switches pieces table middle power cooker broken seconds many"),
        (3, "element radio video visible electric condition"),
        (4, "temperature electronic"),
    ],
)
def test_syllables_are_counted_as_a_reader_speaks_them(number, words):
    assert {word: syllables(word) for word in words.split()} == dict.fromkeys(words.split(), number)


def test_short_words_in_short_sentences_are_easy_and_long_ones_are_not():
    assert grade("Is it hot? Shut the door.") < 1
    assert grade("Regulatory documentation necessitates comprehensive interdisciplinary consideration.") > 12


def test_a_text_without_a_full_stop_is_one_sentence_and_braces_do_not_count():
    assert count("Does the {leakage_switch} trip").sentences == 1
    assert count("Does the {leakage_switch} trip").words == 5


def test_a_text_without_a_word_has_no_grade():
    assert grade("…") == 0.0
