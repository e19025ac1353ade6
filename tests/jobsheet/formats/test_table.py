"""A table that a spreadsheet opens as text, read back by Python's own csv module."""

import csv
from io import StringIO

import pytest

from triage.jobsheet.formats.table import as_csv, safe_cell


# The signs OWASP lists for CSV injection, and a formula behind a space.
@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", " =1", '=cmd|"/c calc"!A1'])
def test_no_text_is_taken_for_a_formula(text):
    assert safe_cell(text) == f"'{text}"


@pytest.mark.parametrize(
    ("value", "cell"), [("plain", "plain"), (-3, "-3"), (None, ""), ("a=b", "a=b"), (True, "True")]
)
def test_what_is_harmless_stays(value, cell):
    assert safe_cell(value) == cell


def test_it_is_read_back_as_it_was():
    rows = [{"a": 'quote " comma, line\nbreak', "b": "žluťoučký"}, {"a": "", "b": 7}]
    read = list(csv.DictReader(StringIO(as_csv(["a", "b"], rows), newline="")))
    assert read == [{"a": rows[0]["a"], "b": "žluťoučký"}, {"a": "", "b": "7"}]
