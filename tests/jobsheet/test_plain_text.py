"""Any writing comes through; what would break a database or turn a line around does not."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.jobsheet.plain_text import clean_line, clean_text


@pytest.mark.parametrize("text", ["مريم العلي", "שלום", "👩‍🔧 👨‍👩‍👧", "Žofie Nguyễn", "王小明", "O'Brien & <Sons>"])
def test_every_script_comes_through_unchanged(text):
    assert clean_line(text) == clean_text(text) == text


def test_line_breaks_of_every_kind_become_one_kind():
    assert clean_text("a\r\nb\rc\u2028d\ne") == "a\nb\nc\nd\ne"


@given(st.text(st.characters(codec=None, exclude_categories=())))
def test_what_is_left_can_be_stored_and_is_stable(text):
    cleaned = clean_text(text)
    assert cleaned.encode("utf-8").decode("utf-8") == cleaned == clean_text(cleaned)
    assert not set(cleaned) & set("\x00\x1b\u202e\u2066")
    assert "\n" not in clean_line(text)
