"""What was sent, as its sender sees it: the reference to say, what happens next, what is kept, how to erase it."""

from base64 import b64encode
from dataclasses import dataclass

from django.utils.formats import date_format
from django.utils.translation import gettext as _

from triage.household.sheet_address import erase_address
from triage.jobsheet.formats.text import window_words
from triage.jobsheet.reference import spelled_out
from triage.models import JobSheet, RatingPlatePhoto


@dataclass(frozen=True)
class Kept:
    """One thing that is kept, by its name."""

    name: str
    words: str


@dataclass(frozen=True)
class SheetPage:
    """`own_address` is the whole link to this page, to be kept; `new` right after sending."""

    heading: str
    lead: str
    reference: str
    spoken: str
    new: bool
    erased: bool
    next: list[str]
    kept: list[Kept]
    photo: str
    own_address: str
    erase_href: str
    check_href: str


def sheet_page(sheet: JobSheet, token: str, origin: str, path: str, new: bool) -> SheetPage:
    words = {"firm": sheet.firm.name, "day": date_format(sheet.erased or sheet.erase_after)}
    erased = sheet.erased is not None
    if erased:
        heading, lead = _("This was erased"), _("%(day)s: your name, your address and all you wrote are gone.") % words
    elif new:
        heading, lead = _("Sent to %(firm)s") % words, _("Your visit is asked for. Nothing is booked until they call.")
    else:
        heading, lead = _("What you sent to %(firm)s") % words, _("It is kept until %(day)s, then erased.") % words
    return SheetPage(
        heading=heading,
        lead=lead,
        reference=sheet.reference,
        spoken=spelled_out(sheet.reference),
        new=new and not erased,
        erased=erased,
        next=_erased_lines(sheet) if erased else _next(sheet),
        kept=[] if erased else _kept(sheet),
        photo="" if erased else _photo(sheet),
        own_address=f"{origin}{path}",
        erase_href="" if erased else erase_address(sheet.reference, token),
        check_href=str(sheet.summary["check_url"]),
    )


def _next(sheet: JobSheet) -> list[str]:
    words = {"firm": sheet.firm.name, "telephone": sheet.firm.telephone}
    how = _("by telephone") if sheet.telephone else _("by e-mail")
    lines = [
        _("%(firm)s reads your answers and gets in touch %(how)s to agree a time.") % {**words, "how": how},
        _("Until then do what the advice says. If it says to leave the oven off, leave it off."),
        _("A danger sign that comes later cannot wait for the visit: follow it at once."),
    ]
    if sheet.firm.telephone:
        lines.append(_("To reach them: %(telephone)s. Say the reference.") % words)
    return lines


def _erased_lines(sheet: JobSheet) -> list[str]:
    words = {"firm": sheet.firm.name}
    lines = [_("The answers about the oven stay, without your name, so that the advice can get better.")]
    lines.append(_("If you still want the visit, or want no more of it, call %(firm)s.") % words)
    if sheet.firm.email:
        lines.append(_("A copy that %(firm)s got by e-mail is not erased by this. Ask them to delete it.") % words)
    return lines


def _kept(sheet: JobSheet) -> list[Kept]:
    plate = {name: str(told) for name, told in sheet.plate.items()}
    told = {
        _("Name"): sheet.name,
        _("Telephone"): sheet.telephone,
        _("E-mail"): sheet.email,
        _("House and street"): sheet.street,
        _("Postcode"): sheet.postcode,
        _("Getting in"): sheet.access,
        _("Maker"): plate.get("maker", ""),
        _("Model"): plate.get("model", ""),
        _("Serial number"): plate.get("serial", ""),
        _("Rated power"): plate.get("power", ""),
        _("Year bought"): plate.get("year", ""),
        _("At home"): "; ".join(window_words(window["start"], window["end"]) for window in sheet.windows),
        _("What is wrong"): str(sheet.summary["complaint"]),
        _("You agreed to"): sheet.consent,
    }
    return [Kept(name, words) for name, words in told.items() if words]


def _photo(sheet: JobSheet) -> str:
    """The photo inside the page itself, so that no second address opens it."""
    photo = RatingPlatePhoto.objects.filter(sheet=sheet).first()
    return f"data:image/jpeg;base64,{b64encode(photo.jpeg).decode()}" if photo else ""
