"""The structured job sheet: the frozen summary of the check, and whose oven it is as long as that is kept."""

from typing import cast

from triage.jobsheet.reference import spoken
from triage.jobsheet.shapes import FORMAT, Address, Consent, Contact, Firm, Plate, Sheet, Summary, Window
from triage.models import JobSheet, RatingPlatePhoto


def contents_of(sheet: JobSheet) -> Sheet:
    plate = Plate(**{name: str(told) for name, told in sheet.plate.items()})  # type: ignore[typeddict-item]
    plate["photo"] = RatingPlatePhoto.objects.filter(sheet=sheet).exists()
    return Sheet(
        format=FORMAT,
        reference=sheet.reference,
        spoken=spoken(sheet.reference),
        firm=Firm(slug=sheet.firm.slug, name=sheet.firm.name),
        created=sheet.created.isoformat(timespec="seconds"),
        erase_after=sheet.erase_after.isoformat(timespec="seconds"),
        status=sheet.status,
        contact=Contact(name=sheet.name, telephone=sheet.telephone, email=sheet.email),
        address=Address(street=sheet.street, postcode=sheet.postcode, access=sheet.access),
        rating_plate=plate,
        windows=[Window(start=window["start"], end=window["end"]) for window in sheet.windows],
        consent=Consent(words=sheet.consent, given=sheet.consented.isoformat(timespec="seconds")),
        check=cast(Summary, sheet.summary),
    )
