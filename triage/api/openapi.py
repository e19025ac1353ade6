"""The description of the API: `openapi.json` beside this file, with the published schema of the job sheet put in.

OpenAPI 3.1 speaks JSON Schema, but has one place for named schemas; so the job sheet's own go there too.
"""

import json
from functools import cache
from pathlib import Path
from typing import Any

from triage.jobsheet.formats.json import schema

FILE = Path(__file__).with_name("openapi.json")
OWN, HERE = "#/$defs/", "#/components/schemas/sheet_"


@cache
def document() -> dict[str, Any]:
    told: dict[str, Any] = json.loads(FILE.read_text("utf-8"))
    sheet = json.loads(json.dumps(schema()).replace(OWN, HERE))
    for address in ("$schema", "$id"):
        del sheet[address]
    parts = {f"sheet_{name}": part for name, part in sheet.pop("$defs").items()}
    told["components"]["schemas"] |= {"sheet": sheet, **parts}
    return told
