"""The invented firm and what it has in its desk on the first day. Names, streets and numbers belong to nobody: the
telephone numbers are among those the British regulator keeps for drama."""

import secrets
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, time, timedelta

from django.contrib.auth.models import User
from django.db import transaction
from django.utils import timezone

from triage.engine import run_check
from triage.jobsheet.actions import add_note, create_job_sheet
from triage.jobsheet.booking import Booking, Window
from triage.jobsheet.consent import consent_words
from triage.jobsheet.outcomes import OutcomeData, record_outcome
from triage.knowledge.library import library
from triage.models import Firm, JobSheet, Member
from triage.models.firm import Role

SLUG = "kettlewick"
PEOPLE = (
    ("owner", "Mara Venn", Role.OWNER),
    ("repairer", "Ivo Tarrant", Role.REPAIRER),
    ("agent", "Suri Calloway", Role.AGENT),
)


@dataclass(frozen=True)
class Visit:
    """A job sheet, so many days old; `findings` once somebody was there."""

    days_ago: int
    name: str
    telephone: str
    street: str
    answers: dict[str, str]
    model: str = ""
    access: str = ""
    note: str = ""
    findings: OutcomeData | None = None


VISITS = (
    Visit(
        0,
        "Wren Abelard",
        "01632 960114",
        "4 Bellfounder Row",
        {
            "complaint": "no-heat",
            "danger": "none",
            "display-state": "time-normal",
            "function-pattern": "fan-fails",
            "when-it-happens": "always",
            "supply-off": "yes",
        },
        model="HK-62 E",
        access="Second floor, no lift. The bell is broken: please knock.",
    ),
    Visit(
        0,
        "Joss Penhallow",
        "01632 960127",
        "19 Tallow Steps",
        {"complaint": "smell", "heat-main": "heat-normal", "smell-type": "plastic-or-fishy", "supply-off": "yes"},
    ),
    Visit(
        1,
        "Leontyne Marsh",
        "01632 960135",
        "2a Quill Court",
        {
            "complaint": "nothing-on",
            "danger": "none",
            "heat-main": "no-heat",
            "lamp-state": "lamp-dead",
            "reset-effect": "not-tried",
            "display-state": "blank",
            "key-response": "cant-tell",
            "what-else": "hob-too",
        },
        note="Will ring back after six about the parking space.",
    ),
    Visit(
        6,
        "Osric Vane",
        "01632 960142",
        "31 Cooper’s Yard",
        {
            "complaint": "no-heat",
            "danger": "none",
            "display-state": "time-normal",
            "function-pattern": "fan-fails",
            "when-it-happens": "always",
        },
        model="HK-60 B",
        findings=OutcomeData(("fan-element-open",), True, 40, fitted=("Fan oven element",)),
    ),
    Visit(
        12,
        "Thea Lindqvist-Moor",
        "01632 960158",
        "7 Saltpan Lane",
        {
            "complaint": "too-hot",
            "danger": "none",
            "heat-main": "bit-hot",
            "heating-light": "light-cycles",
            "onset": "gradual",
            "recent-event": "nothing-new",
            "fan-run-on": "as-always",
        },
        findings=OutcomeData(("thermostat-drifted",), False, 65, fitted=("Thermostat",)),
    ),
    Visit(
        20,
        "Bas Okonjo",
        "01632 960163",
        "88 Hearthstone Road",
        {
            "complaint": "door",
            "danger": "none",
            "door-fit": "shuts-flush",
            "onset": "gradual",
            "recent-event": "nothing-new",
            "seal-look": "seal-torn-flat",
        },
        findings=OutcomeData(("door-seal-worn",), True, 15, fitted=("Door seal",)),
    ),
)


@transaction.atomic
def load(booking_origin: str, site: str) -> list[tuple[str, str]]:
    """The firm, its staff and its job sheets; names and fresh passwords of the staff come back.

    A database that was there before and has the firm keeps it, and nobody gets a new password.
    """
    if Firm.objects.filter(slug=SLUG).exists():
        return []
    firm = Firm.objects.create(
        slug=SLUG,
        name="Kettlewick Oven Repairs",
        region="gb-eng",
        accent="#5b3f8c",
        origins=[booking_origin],
        address="12 Bellfounder Row, Kettlewick",
        telephone="01632 960101",
        prices={"Call-out, with the first half hour": "£68", "Each further quarter of an hour": "£17"},
        hours={"Monday to Friday": "8 to 18", "Saturday": "9 to 13"},
        areas=["Kettlewick", "Saltpan", "Upper Tallow"],
    )
    passwords = [(name, secrets.token_urlsafe(9)) for name, _person, _role in PEOPLE]
    staff = [_member(firm, *entry) for entry in zip(PEOPLE, passwords, strict=True)]
    for visit in VISITS:
        _sheet(firm, staff[1], visit, site)
    return passwords


def _member(firm: Firm, person: tuple[str, str, Role], login: tuple[str, str]) -> Member:
    name, full_name, role = person
    first, _space, last = full_name.partition(" ")
    user = User.objects.create_user(name, password=login[1], first_name=first, last_name=last)
    return Member.objects.create(user=user, firm=firm, role=role)


def _sheet(firm: Firm, repairer: Member, visit: Visit, site: str) -> JobSheet:
    then, known = timezone.now() - timedelta(days=visit.days_ago), library()
    sheet = create_job_sheet(
        firm=firm,
        check=run_check(known.pack, known.regions[firm.region].region, visit.answers.items()),
        booking=Booking(
            name=visit.name,
            telephone=visit.telephone,
            street=visit.street,
            postcode="KW1 0AA",
            access=visit.access,
            model=visit.model,
            windows=tuple(_windows(then)),
            consent=consent_words(firm),
        ),
        idempotency_key=f"demo-{secrets.token_hex(8)}",
        origin=site,
    )
    kept = {"created": then, "consented": then, "erase_after": then + timedelta(days=firm.retention_days)}
    JobSheet.objects.filter(pk=sheet.pk).update(**kept)
    if visit.note:
        add_note(sheet=sheet, text=visit.note, member=repairer)
    if visit.findings:
        record_outcome(sheet=sheet, data=visit.findings, member=repairer)
    return sheet


def _windows(then: datetime) -> Iterable[Window]:
    for days, (start, end) in ((2, (time(8), time(12))), (3, (time(17), time(20)))):
        day = (then + timedelta(days=days)).date()
        yield Window(datetime.combine(day, start), datetime.combine(day, end))
