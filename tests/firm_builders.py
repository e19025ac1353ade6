"""An invented firm, its people and its job sheets. Each builder changes one thing by name, as `make_firm(slug=...)`."""

from datetime import datetime, timedelta
from itertools import count

from django.contrib.auth.models import User
from django.utils import timezone

from triage.engine import run_check
from triage.jobsheet.actions import create_job_sheet
from triage.jobsheet.booking import Booking, Window
from triage.jobsheet.formats.webhook import new_secret
from triage.knowledge.library import library
from triage.models import Delivery, Firm, Member
from triage.models.firm import Role

ORIGIN = "https://check.example"
ANSWERS = (
    ("complaint", "no-heat"),
    ("danger", "none"),
    ("heating-system", "fan-only"),
    ("supply-off", "yes"),
)
NUMBERS = count(1)


def check_after(pairs, region="gb-eng"):
    """The check that these answers make with the pack people use."""
    return run_check(library().pack, library().regions[region].region, pairs)


def make_firm(**changes):
    data = {
        "slug": f"hearth-{next(NUMBERS)}",
        "name": "Hearth & Hob Repairs",
        "region": "gb-eng",
        "email": "desk@hearth.example",
        "webhook_url": "https://hearth.example/job-sheets",
        "webhook_secret": new_secret(),
    }
    return Firm.objects.create(**(data | changes))


def make_member(firm, role=Role.REPAIRER, **changes):
    user = User.objects.create(username=changes.pop("username", f"person-{next(NUMBERS)}"))
    return Member.objects.create(user=user, firm=firm, role=role, **changes)


def make_booking(**changes):
    data = {
        "name": "Alex Grey",
        "telephone": "020 7946 0000",
        "email": "alex@home.example",
        "street": "3 Mill Lane",
        "postcode": "AB1 2CD",
        "access": "Ring twice; the dog is friendly.",
        "maker": "Ovenworks",
        "model": "OW-60",
        "serial": "S-17",
        "power": "2.9 kW",
        "year": "2015",
        "windows": (Window(datetime(2030, 5, 6, 9), datetime(2030, 5, 6, 12)),),  # noqa: DTZ001  (the clock on the wall)
        "consent": "Hearth & Hob Repairs may have my answers and call me about this repair.",
    }
    return Booking(**(data | changes))


def make_job_sheet(firm=None, **changes):
    """Written by the real action, so that it is what a site would hold."""
    check = check_after(changes.pop("answers", ANSWERS), changes.pop("region", "gb-eng"))
    data = {
        "firm": firm or make_firm(),
        "check": check,
        "booking": make_booking(),
        "idempotency_key": f"key-number-{next(NUMBERS)}",
        "origin": ORIGIN,
    }
    return create_job_sheet(**(data | changes))


def make_delivery(firm=None, **changes):
    now = timezone.now()
    data = {
        "firm": firm or make_firm(),
        "channel": "webhook",
        "event": "test",
        "message_id": f"msg_{next(NUMBERS)}",
        "next_attempt": now - timedelta(seconds=1),
        "created": now,
    }
    return Delivery.objects.create(**(data | changes))
