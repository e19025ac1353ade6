"""A job sheet as a repairer reads it: in ten seconds whether it is safe, what oven, what it probably is, what to bring,
where and when. Everything is as it was frozen when the sheet was written.
"""

from dataclasses import dataclass, replace
from datetime import datetime

from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy

from triage.desk.presenters.answer_weights import AnswerWeight, readings_with_pictures, weight_of
from triage.desk.presenters.bands import band_label
from triage.engine import Band
from triage.jobsheet.formats.qr import trail_qr
from triage.jobsheet.formats.text import window_words
from triage.jobsheet.shapes import FullSummary, SheetCause, SheetData, SheetFault, SheetKit
from triage.jobsheet.wording import short_chance, tenths
from triage.knowledge.library import library
from triage.models import JobSheet
from triage.models.audit_entry import Actor, AuditAction

MAX_AUDIT_LINES = 200
ACTION_LABELS = {
    AuditAction.HANDED_OVER: gettext_lazy("created it"),
    AuditAction.OPENED: gettext_lazy("opened it"),
    AuditAction.EXPORTED: gettext_lazy("exported it"),
    AuditAction.STATUS: gettext_lazy("changed the status"),
    AuditAction.NOTED: gettext_lazy("added a note"),
    AuditAction.OUTCOME: gettext_lazy("recorded the outcome"),
    AuditAction.ERASED: gettext_lazy("erased the personal data"),
}

TableRow = tuple[str, str]


@dataclass(frozen=True, slots=True)
class SafetySummary:
    """`urgent` where the advice was to leave it off. `instructions` is what the person was told, not what was done."""

    urgent: bool
    heading: str
    signs: tuple[str, ...]
    supply: str
    instructions: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CauseRow:
    name: str
    trade: str
    chance: str
    tenths: int
    measure: str
    bring: str


@dataclass(frozen=True, slots=True)
class KitList:
    """`parts` with how many visits in 100 would fail without each."""

    parts: tuple[TableRow, ...]
    chance: str
    tenths: int
    at_best: str


@dataclass(frozen=True, slots=True)
class DeskSheetPage:
    reference: str
    spoken: str
    complaint: str
    unfinished: bool
    created: datetime
    safety: SafetySummary
    part: str
    plate: tuple[TableRow, ...]
    has_photo: bool
    oven: tuple[TableRow, ...]
    causes: tuple[CauseRow, ...]
    alike: tuple[str, ...]
    also_check: tuple[str, ...]
    kit: KitList
    weights: tuple[AnswerWeight, ...]
    readings: tuple[AnswerWeight, ...]
    tried: tuple[TableRow, ...]
    contact: tuple[TableRow, ...]
    windows: tuple[str, ...]
    consent: str
    erase_after: str
    pack: str
    region: str
    local_rules: str
    check_again: str
    code: str


def sheet_page(sheet: SheetData) -> DeskSheetPage:
    check = sheet["check"]
    return DeskSheetPage(
        reference=sheet["reference"],
        spoken=sheet["spelled"],
        complaint=check["complaint"],
        unfinished=not check["finished"],
        created=datetime.fromisoformat(sheet["created"]),
        safety=_safety(check),
        part=_part(check),
        plate=_plate(sheet),
        has_photo=bool(sheet["rating_plate"].get("photo")),
        oven=tuple((answer["question"], answer["text"]) for answer in check["oven"]),
        causes=tuple(_cause(cause) for cause in check["causes"]),
        alike=_names([named for named in check["indistinguishable"] if named["fault"] != check["causes"][0]["fault"]]),
        also_check=_names(check["related"]),
        kit=_kit(check["kit"]),
        weights=tuple(weight_of(answer) for answer in check["answers"]),
        readings=tuple(replace(weight_of(answer), picture=drawn) for answer, drawn in readings_with_pictures(check)),
        tried=tuple((answer["question"], answer["text"]) for answer in check["attempted"]),
        contact=_contact(sheet),
        windows=tuple(window_words(window["start"], window["end"]) for window in sheet["windows"]),
        consent=sheet["consent"]["text"],
        erase_after=sheet["erase_after"][:10],
        pack=check["pack"]["version"],
        region=check["region"]["name"],
        local_rules=check["local_rules"],
        check_again=check["check_url"],
        code=trail_qr(check["check_url"]),
    )


def _safety(check: FullSummary) -> SafetySummary:
    signs = [flag["heading"] for flag in check["red_flags"]]
    if check["danger_signs"] == "none-seen":
        signs = [_("No danger sign was seen.")]
    elif check["danger_signs"] == "not-asked":
        signs = [_("Danger signs were not asked about.")]
    return SafetySummary(
        urgent=check["band"] == Band.MAKE_SAFE.value,
        heading=band_label(check["band"]),
        signs=tuple(signs),
        supply=_supply(check),
        instructions=tuple(line.rstrip(":") for flag in check["red_flags"] for line in flag["instructed"]),
    )


def _supply(check: FullSummary) -> str:
    """Every sheet says that nobody proved the oven dead, whatever was said about the switch."""
    answer = check["supply"]["text"]
    return answer if check["supply"]["said"] == "off" else f"{answer} {_('Not proved dead.')}"


def _part(check: FullSummary) -> str:
    """The part of the drawing that the likeliest cause is about; none where the pack does not know it any more."""
    text = library().texts["en"].faults.get(check["causes"][0]["fault"])
    return text.picture if text else ""


def _plate(sheet: SheetData) -> tuple[TableRow, ...]:
    plate = sheet["rating_plate"]
    rows = (
        (_("Maker"), plate.get("maker", "")),
        (_("Model"), plate.get("model", "")),
        (_("Serial"), plate.get("serial", "")),
        (_("Power"), plate.get("power", "")),
        (_("Year"), plate.get("year", "")),
    )
    return tuple((name, words or "–") for name, words in rows)


def _cause(cause: SheetCause) -> CauseRow:
    return CauseRow(
        name=cause["name"],
        trade=cause["trade"],
        chance=cause["probability_text"],
        tenths=tenths(cause["probability"]),
        measure=cause["technician_notes"],
        bring=", ".join(cause["parts_to_bring"]),
    )


def _kit(kit: SheetKit) -> KitList:
    return KitList(
        parts=tuple((part["name"], str(max(1, round(100 * part["gain"])))) for part in kit["parts"]),
        chance=kit["first_visit_text"],
        tenths=tenths(kit["first_visit_probability"]),
        at_best=short_chance(kit["max_probability"]),
    )


def _names(named: list[SheetFault]) -> tuple[str, ...]:
    return tuple(fault["name"] for fault in named)


def _contact(sheet: SheetData) -> tuple[TableRow, ...]:
    contact, address = sheet["contact"], sheet["address"]
    rows = (
        (_("Name"), contact["name"]),
        (_("Telephone"), contact["telephone"]),
        (_("E-mail"), contact["email"]),
        (_("Address"), ", ".join(part for part in (address["street"], address["postcode"]) if part)),
        (_("Getting in"), address["access"]),
    )
    return tuple((name, words) for name, words in rows if words)


@dataclass(frozen=True, slots=True)
class AuditLine:
    at: datetime
    text: str


def audit_lines(sheet: JobSheet) -> list[AuditLine]:
    """Who opened or changed the sheet, the newest first, for the owner."""
    names = {Actor.SENDER: _("the sender"), Actor.SYSTEM: _("the firm’s own system"), Actor.SITE: _("this site")}
    lines = []
    for entry in sheet.audit_entries.select_related("member__user").order_by("-at", "-pk")[:MAX_AUDIT_LINES]:
        member = entry.member.user.get_username() if entry.member else _("a former member")
        actor = names.get(Actor(entry.actor), member)
        lines.append(AuditLine(entry.at, f"{actor} {ACTION_LABELS[AuditAction(entry.action)]}"))
    return lines
