"""Rows as CSV (RFC 4180) that a spreadsheet opens as text, never as a formula."""

import csv
from collections.abc import Iterable, Mapping, Sequence
from io import StringIO

STARTS_A_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n")


def as_csv(columns: Sequence[str], rows: Iterable[Mapping[str, object]]) -> str:
    out = StringIO()
    table = csv.writer(out, lineterminator="\r\n")
    table.writerow(columns)
    for row in rows:
        table.writerow([safe_cell(row[column]) for column in columns])
    return out.getvalue()


def safe_cell(value: object) -> str:
    """The value as text. What a spreadsheet would take for a formula gets an apostrophe before it; numbers stay."""
    text = "" if value is None else str(value)
    if isinstance(value, str) and text.lstrip(" ").startswith(STARTS_A_FORMULA):
        return f"'{text}"
    return text
