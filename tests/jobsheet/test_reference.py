"""References that nobody guesses and nobody mishears."""

import re
from collections import Counter

import pytest

from triage.jobsheet.reference import ALPHABET, WORDS, new_reference, read_reference, spelled_out


def test_it_has_fifty_bits_and_looks_the_same_every_time():
    assert len(ALPHABET) == 32
    references = {new_reference() for _ in range(2000)}
    assert len(references) == 2000
    assert all(re.fullmatch(r"[A-HJ-NP-Z2-9]{5}-[A-HJ-NP-Z2-9]{5}", reference) for reference in references)
    assert len(Counter(sign for reference in references for sign in reference)) == 33


# SERA.14020 of Regulation (EU) No 923/2012, as printed: Alfa, Juliett and X-ray are its spellings.
def test_it_is_said_with_the_words_of_the_spelling_alphabet():
    assert spelled_out("AJX2Z-KLM9Q") == "Alfa Juliett X-ray Two Zulu, Kilo Lima Mike Nine Quebec"
    letters = "Alfa Bravo Charlie Delta Echo Foxtrot Golf Hotel India Juliett Kilo Lima Mike November Oscar Papa"
    rest = "Quebec Romeo Sierra Tango Uniform Victor Whiskey X-ray Yankee Zulu"
    assert [WORDS[letter] for letter in "ABCDEFGHIJKLMNOPQRSTUVWXYZ"] == f"{letters} {rest}".split()


@pytest.mark.parametrize("typed", ["kd7mx-4qptr", " KD7MX 4QPTR ", "k d 7 m x 4 q p t r", "KD7MX4QPTR"])
def test_it_is_read_however_it_is_typed(typed):
    assert read_reference(typed) == "KD7MX-4QPTR"


@pytest.mark.parametrize("reference", ["KD7MX-4QPTR", "AJX2Z-KLM9Q", "DELTA-XRAY2", "ABCDX-RAY23"])
def test_it_is_read_as_it_is_said_and_as_it_is_written(reference):
    assert read_reference(spelled_out(reference)) == reference
    assert read_reference(spelled_out(reference).lower().replace("x-ray", "x ray").replace(",", "")) == reference
    assert read_reference(spelled_out(reference).replace("Alfa", "Alpha").replace("Juliett", "juliet")) == reference
    assert read_reference(reference) == reference


@pytest.mark.parametrize("typed", ["", "KD7MX-4QPT", "KD7MX-4QPT0", "KD7MX-4QPTRR", "x" * 10_000, "\ud800"])
def test_what_cannot_be_one_is_none(typed):
    assert read_reference(typed) is None
