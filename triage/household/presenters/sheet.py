"""What was sent, as its sender sees it: the reference to say, what happens next, what is kept, how to erase it."""

from base64 import b64encode
from dataclasses import dataclass

from triage.household.sheet_address import erase_address
from triage.jobsheet.formats.text import window_words
from triage.jobsheet.reference import spelled_out
from triage.models import JobSheet, RatingPlatePhoto


@dataclass(frozen=True)
class SheetPage:
    """`own_address` is the whole link to this page, to be kept; `new` right after sending. Once it is erased, nothing
    personal is left to show."""

    sheet: JobSheet
    spelled: str
    new: bool
    erased: bool
    windows: list[str]
    photo: str
    own_address: str
    erase_href: str
    check_href: str


def sheet_page(sheet: JobSheet, token: str, origin: str, path: str, new: bool) -> SheetPage:
    erased = sheet.erased is not None
    return SheetPage(
        sheet=sheet,
        spelled=spelled_out(sheet.reference),
        new=new and not erased,
        erased=erased,
        windows=[window_words(window["start"], window["end"]) for window in sheet.windows],
        photo="" if erased else _photo(sheet),
        own_address=f"{origin}{path}",
        erase_href="" if erased else erase_address(sheet, token),
        check_href=str(sheet.summary["check_url"]),
    )


def _photo(sheet: JobSheet) -> str:
    """The photo inside the page itself, so that no second address opens it."""
    photo = RatingPlatePhoto.objects.filter(sheet=sheet).first()
    return f"data:image/jpeg;base64,{b64encode(photo.jpeg).decode()}" if photo else ""
