"""Outcomes as rows of the Open Repair Data Standard, version 0.3 (openrepair/datastandard, standard.rst).

The rows are made to be published, so nothing on them says whose oven it was: no name, place or reference. The
standard's forty categories have no oven; its nearest is 17, "Large home electrical".
"""

from collections.abc import Iterable

from triage.jobsheet.formats.table import as_csv
from triage.knowledge.library import library
from triage.models import Outcome
from triage.models.outcome import Barrier, RepairResult

COLUMNS = (
    "id",
    "data_provider",
    "country",
    "partner_product_category",
    "product_category",
    "product_category_id",
    "brand",
    "year_of_manufacture",
    "product_age_estimate",
    "repair_status",
    "repair_barrier_if_end_of_life",
    "group_identifier",
    "event_date",
    "problem",
    "record_date",
)
CATEGORY, CATEGORY_ID = "Large home electrical", 17
# ISO 3166-1 alpha-3 of the territories the regions lie in.
COUNTRIES = {
    "AU": "AUS",
    "CA": "CAN",
    "DE": "DEU",
    "ES": "ESP",
    "FR": "FRA",
    "GB": "GBR",
    "IE": "IRL",
    "IN": "IND",
    "IT": "ITA",
    "NL": "NLD",
    "NZ": "NZL",
    "PL": "POL",
    "SE": "SWE",
    "US": "USA",
    "ZA": "ZAF",
}
STATUS = {
    RepairResult.UNKNOWN: "Unknown",
    RepairResult.FIXED: "Fixed",
    RepairResult.REPAIRABLE: "Repairable",
    RepairResult.END_OF_LIFE: "End of life",
}
BARRIERS = {
    Barrier.NONE: "",
    Barrier.NO_PARTS: "Spare parts not available",
    Barrier.TOO_DEAR: "Spare parts too expensive",
    Barrier.NO_WAY_IN: "No way to open the product",
    Barrier.NO_INSTRUCTIONS: "Repair information not available",
    Barrier.NO_TOOLS: "Lack of equipment",
    Barrier.WORN_OUT: "Item too worn out",
}


def outcome_rows(outcomes: Iterable[Outcome]) -> list[dict[str, object]]:
    """One row for each outcome; `sheet` and its firm are read from each."""
    return [_row(outcome) for outcome in outcomes]


def outcomes_csv(outcomes: Iterable[Outcome]) -> str:
    return as_csv(COLUMNS, outcome_rows(outcomes))


def _row(outcome: Outcome) -> dict[str, object]:
    sheet = outcome.sheet
    year = str(sheet.plate.get("year", ""))
    return {
        "id": f"{_provider(sheet.firm.slug)}-{outcome.pk}",
        "data_provider": sheet.firm.name,
        "country": COUNTRIES.get(sheet.summary["region"]["territory"], ""),
        "partner_product_category": "Electric oven",
        "product_category": CATEGORY,
        "product_category_id": CATEGORY_ID,
        "brand": sheet.plate.get("maker", "") or "Unknown",
        "year_of_manufacture": year if year.isascii() and year.isdigit() and len(year) == 4 else "",
        "product_age_estimate": "",
        "repair_status": STATUS[RepairResult(outcome.result)],
        "repair_barrier_if_end_of_life": BARRIERS[Barrier(outcome.barrier)],
        "group_identifier": sheet.firm.slug,
        "event_date": f"{outcome.recorded:%Y-%m-%d}",
        "problem": _problem(outcome),
        "record_date": f"{outcome.recorded:%Y-%m-%d}",
    }


def _provider(slug: str) -> str:
    """The letters alone: the published table schema wants ids like `firm-17`."""
    return "".join(sign for sign in slug.lower() if "a" <= sign <= "z") or "firm"


def _problem(outcome: Outcome) -> str:
    """What was wrong, in the pack's own words alone: the repairer's may name somebody."""
    known = library().texts_for(outcome.sheet.region).faults
    found = [known[fault].trade for fault in outcome.found if fault in known]
    return f"{outcome.sheet.summary['complaint']}. Found: {'; '.join(found) or 'not in the list'}"
