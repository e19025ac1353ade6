"""A job sheet as JSON, described by `job_sheet.schema.json` (JSON Schema, draft 2020-12)."""

import json
from functools import cache
from pathlib import Path
from typing import Any

from triage.jobsheet.shapes import SheetData

SCHEMA = Path(__file__).parent / "job_sheet.schema.json"


def sheet_json(sheet: SheetData) -> str:
    return json.dumps(sheet, ensure_ascii=False, indent=2) + "\n"


@cache
def schema() -> dict[str, Any]:
    """The published schema."""
    loaded: dict[str, Any] = json.loads(SCHEMA.read_text("utf-8"))
    return loaded
