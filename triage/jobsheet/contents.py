"""The structured job sheet: the frozen summary of the check, and whose oven it is as long as that is kept."""

from typing import cast

from triage.jobsheet.reference import spelled_out
from triage.jobsheet.shapes import (
    FORMAT,
    FullSummary,
    SheetAddress,
    SheetConsent,
    SheetContact,
    SheetData,
    SheetFirm,
    SheetPlate,
    SheetWindow,
)
from triage.models import JobSheet, RatingPlatePhoto


def serialize_sheet(sheet: JobSheet) -> SheetData:
    plate = SheetPlate(**{name: str(value) for name, value in sheet.plate.items()})  # type: ignore[typeddict-item]
    plate["photo"] = RatingPlatePhoto.objects.filter(sheet=sheet).exists()
    return SheetData(
        format=FORMAT,
        reference=sheet.reference,
        spelled=spelled_out(sheet.reference),
        firm=SheetFirm(slug=sheet.firm.slug, name=sheet.firm.name),
        created=sheet.created.isoformat(timespec="seconds"),
        erase_after=sheet.erase_after.isoformat(timespec="seconds"),
        status=sheet.status,
        contact=SheetContact(name=sheet.name, telephone=sheet.telephone, email=sheet.email),
        address=SheetAddress(street=sheet.street, postcode=sheet.postcode, access=sheet.access),
        rating_plate=plate,
        windows=[SheetWindow(start=window["start"], end=window["end"]) for window in sheet.windows],
        consent=SheetConsent(text=sheet.consent, given=sheet.consented.isoformat(timespec="seconds")),
        check=cast(FullSummary, sheet.summary),
    )
