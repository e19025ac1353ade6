"""Rows written in words come back to their last digit, and those no word gives back are written in full."""

from hypothesis import given, strategies

from triage.engine.frequency import FREQUENCIES, distribution, mix_with_baseline
from triage.knowledge.phone_rows import LETTERS, short_row, short_table

NAMES = ("low", "middle", "high")
WORD = strategies.sampled_from(list(FREQUENCIES))
ROW = strategies.tuples(WORD, WORD, WORD).filter(lambda words: words.count("never") < 3)


def row_of(words, never=FREQUENCIES["never"]):
    return distribution(dict(zip(NAMES, words, strict=True)), NAMES, never)


def as_the_phone_reads(letters, never):
    """What the phone does, in three lines of its own: numbers of the letters over their sum."""
    numbers = {"a": 0.93, "b": 0.75, "c": 0.45, "d": 0.2, "e": 0.05, "-": never}
    raw = [numbers[letter] for letter in letters]
    return tuple(number / sum(raw) for number in raw)


def test_every_word_has_a_letter_of_its_own():
    assert LETTERS == {
        "almost-always": "a",
        "usually": "b",
        "often": "c",
        "sometimes": "d",
        "rarely": "e",
        "never": "-",
    }


@given(ROW, strategies.sampled_from([0.01, 0.001, 0.002]))
def test_a_row_of_words_is_written_in_letters_and_comes_back_whole(words, never):
    row = row_of(words, never)
    letters = short_row(row, never)
    assert isinstance(letters, str)
    assert as_the_phone_reads(letters, never) == row


def test_any_other_row_is_written_in_full():
    assert short_row((0.6, 0.3, 0.1), 0.01) == [0.6, 0.3, 0.1]


@given(ROW, ROW, strategies.integers(30, 100), strategies.sampled_from([0.01, 0.001]))
def test_a_table_of_answers_comes_back_whole_with_its_trust(one, other, percent, never):
    sound, trust = (0.9, 0.1), percent / 100
    says = mix_with_baseline([row_of(one, never), row_of(other, never)], sound, trust)
    table = short_table(says, sound)
    if table is not None:
        told_trust, told_never, letters = table
        assert mix_with_baseline([as_the_phone_reads(row, told_never) for row in letters], sound, told_trust) == says


def test_a_table_no_words_give_back_is_not_written_in_words():
    assert short_table(((0.6, 0.4), (0.3, 0.7)), (0.9, 0.1)) is None


def test_a_usual_table_is_found():
    says = mix_with_baseline(
        [distribution({"low": "usually"}, NAMES), distribution({"high": "almost-always"}, NAMES)], (0.8, 0.2), 0.85
    )
    assert short_table(says, (0.8, 0.2)) == [0.85, 0.01, ["b--", "--a"]]
