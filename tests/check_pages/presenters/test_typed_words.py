"""The search box finds exactly what it found by all the words as their author wrote them."""

import re

from hypothesis import given
from hypothesis import strategies as st

from triage.check_pages.presenters.typed_words import typed_words

FEW_LETTERS = st.text(alphabet="ab'é, 1", max_size=40)


def found_by(typed, phrases):
    """As the page's script looks: words are runs of letters and digits, found by how they begin."""
    return any(word.startswith(typed) for word in re.findall(r"[^\W_]+", phrases.lower()))


@given(FEW_LETTERS, st.text(alphabet="abé1", min_size=1, max_size=4))
def test_what_was_typed_finds_the_same_with_fewer_words(phrases, typed):
    assert found_by(typed, typed_words(phrases)) == found_by(typed, phrases)


@given(FEW_LETTERS)
def test_doing_it_twice_changes_nothing(phrases):
    assert typed_words(typed_words(phrases)) == typed_words(phrases)


def test_a_word_stands_once_and_not_before_one_that_begins_with_it():
    assert typed_words("Trip, tripped, trips the RCD, trip switch, rcd") == "tripped trips the rcd switch"


def test_no_words_stay_none():
    assert typed_words("") == typed_words(" , ") == ""
