"""Job sheets as rows of a table: one line each, for a spreadsheet."""

from collections.abc import Iterable

from triage.jobsheet.formats.table import as_csv
from triage.models import JobSheet

COLUMNS = (
    "reference",
    "created",
    "status",
    "band",
    "complaint",
    "likeliest_cause",
    "probability",
    "name",
    "telephone",
    "email",
    "street",
    "postcode",
    "maker",
    "model",
    "serial",
    "found",
    "fitted",
    "fixed_first_visit",
    "minutes",
    "pack_version",
)


def sheets_csv(sheets: Iterable[JobSheet]) -> str:
    return as_csv(COLUMNS, map(_row, sheets))


def _row(sheet: JobSheet) -> dict[str, object]:
    outcome = getattr(sheet, "outcome", None)
    first, plate = sheet.summary["causes"][0], sheet.plate
    return {
        "reference": sheet.reference,
        "created": sheet.created.isoformat(timespec="seconds"),
        "status": sheet.status,
        "band": sheet.band,
        "complaint": sheet.summary["complaint"],
        "likeliest_cause": first["fault"],
        "probability": round(first["probability"], 4),
        **{name: getattr(sheet, name) for name in ("name", "telephone", "email", "street", "postcode")},
        **{name: str(plate.get(name, "")) for name in ("maker", "model", "serial")},
        "found": "; ".join(outcome.found) if outcome else "",
        "fitted": "; ".join(outcome.fitted) if outcome else "",
        "fixed_first_visit": {True: "yes", False: "no"}[outcome.fixed_first_visit] if outcome else "",
        "minutes": outcome.minutes if outcome else "",
        "pack_version": sheet.pack_version,
    }
