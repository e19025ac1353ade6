"""Any writing comes through; what would break a database or turn a line around does not."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.jobsheet.plain_text import many_lines, one_line


@pytest.mark.parametrize("text", ["مريم العلي", "שלום", "👩‍🔧 👨‍👩‍👧", "Žofie Nguyễn", "王小明", "O'Brien & <Sons>"])
def test_every_script_comes_through_unchanged(text):
    assert one_line(text) == many_lines(text) == text


def test_line_breaks_of_every_kind_become_one_kind():
    assert many_lines("a\r\nb\rc\u2028d\ne") == "a\nb\nc\nd\ne"


@given(st.text(st.characters(codec=None, exclude_categories=())))
def test_what_is_left_can_be_stored_and_is_stable(text):
    cleaned = many_lines(text)
    assert cleaned.encode("utf-8").decode("utf-8") == cleaned == many_lines(cleaned)
    assert not set(cleaned) & set("\x00\x1b\u202e\u2066")
    assert "\n" not in one_line(text)
