"""Job sheets as plain values, of every kind there is, without a database."""

from datetime import UTC, datetime
from functools import cache

from tests.firm_builders import ANSWERS, ORIGIN, check_after
from tests.household.checks_done import answers_of
from triage.jobsheet.summary import check_url, summarise_with_kit
from triage.knowledge.library import library

NIGHT = datetime(2026, 8, 1, 23, 30, tzinfo=UTC)


@cache
def summary(kind="finished", region="gb-eng"):
    pack = library().pack
    trails = {
        "finished": tuple(answers_of("fan-element-open", "no-heat").items()),
        "unfinished": ANSWERS,
        "danger": tuple(
            (question, answer)
            for question, asked in pack.observations.items()
            for answer, flag in asked.flags.items()
            if pack.red_flags[flag].level.ends_check
        )[:2],
    }
    check = check_after(trails[kind], region)
    return summarise_with_kit(check, check_url(check, ORIGIN))


def make_sheet(kind="finished", region="gb-eng", **changes):
    data = {
        "format": 1,
        "reference": "KD7MX-4QPTR",
        "spelled": "Kilo Delta Seven Mike X-ray, Four Quebec Papa Tango Romeo",
        "firm": {"slug": "hearth", "name": "Hearth & Hob Repairs"},
        "created": NIGHT.isoformat(),
        "erase_after": "2027-01-28T23:30:00+00:00",
        "status": "new",
        "contact": {"name": "Alex Grey", "telephone": "020 7946 0000", "email": "alex@home.example"},
        "address": {"street": "3 Mill Lane", "postcode": "AB1 2CD", "access": "Ring twice; the dog, Rex, is friendly."},
        "rating_plate": {"maker": "Ovenworks", "model": "OW-60", "photo": False},
        "windows": [
            {"start": "2030-05-06T09:00:00", "end": "2030-05-06T12:00:00"},
            {"start": "2030-05-07T18:00:00", "end": "2030-05-08T08:00:00"},
        ],
        "consent": {"text": "The firm may call me.", "given": NIGHT.isoformat()},
        "check": summary(kind, region),
    }
    return data | changes
