"""A visit is for whom it helps: the one rule, and the one writer who holds to it whoever calls it."""

import pytest

from tests.firm_builders import ANSWERS, ORIGIN, check_after, make_booking, make_firm, make_job_sheet
from tests.household.checks_done import answers_of
from triage.engine import Band, Result
from triage.jobsheet.actions import create_job_sheet
from triage.jobsheet.booking_rule import BookingRefusal, booking_refusal
from triage.jobsheet.errors import NotBookable
from triage.knowledge.library import library
from triage.models import JobSheet

PACK = library().pack
SEAL = answers_of("door-seal-worn", "door")
REFUSED = {
    "evacuate-first": {"complaint": "smell", "smell-type": "gas"},
    "nothing-answered": {},
    "out-of-scope": {"complaint": "will-not-light", "danger": "none", "oven-fuel": "gas"},
    "danger-signs-open": {"complaint": "no-heat", "heating-system": "fan-only"},
    "solved": {**SEAL, "did-hook-seal-back": "fixed"},
    "normal": answers_of("normal-fan-run-on", "fan-after"),
    "network-operator": answers_of("neutral-fault", "house"),
}
BOOKABLE = {
    "a job for a technician": answers_of("fan-element-open", "no-heat"),
    "something to try oneself": SEAL,
    "questions left open": dict(ANSWERS),
    "a caution": answers_of("hinge-worn", "door", door_fit="snaps-or-drops"),
    "a danger that keeps nobody in the house": {"complaint": "smell", "smell-type": "plastic-or-fishy"},
}
EVACUATE = [
    (name, answer)
    for name, asked in PACK.observations.items()
    for answer, flag in asked.flags.items()
    if flag in ("gas-smell", "co-alarm")
]


def check_of(answers):
    return check_after(answers.items())


def test_every_reason_is_tried():
    assert set(REFUSED) == set(BookingRefusal)


@pytest.mark.parametrize("reason", REFUSED)
def test_each_reason_has_checks(reason):
    assert booking_refusal(check_of(REFUSED[reason])) == reason


@pytest.mark.parametrize("name", BOOKABLE)
def test_every_other_check_may_be_booked(name):
    assert booking_refusal(check_of(BOOKABLE[name])) is None


@pytest.mark.parametrize("sign", EVACUATE)
@pytest.mark.parametrize("name", BOOKABLE)
def test_nothing_that_was_answered_besides_brings_a_repairer_where_people_have_to_get_out(name, sign):
    assert booking_refusal(check_after([*BOOKABLE[name].items(), sign])) == "evacuate-first"


def test_what_fixed_it_does_not_count_while_a_caution_stands():
    answers = {**SEAL, "did-hook-seal-back": "fixed", "door-fit": "snaps-or-drops"}
    check = check_of(answers)
    assert isinstance(check.step, Result)
    assert check.flags
    assert booking_refusal(check) is None


def test_the_band_alone_says_whether_it_works_as_it_should():
    check = check_of(REFUSED["normal"])
    assert check.step.verdict.band is Band.NORMAL


@pytest.mark.django_db
@pytest.mark.parametrize("reason", REFUSED)
def test_the_writer_books_nothing_that_the_rule_refuses(reason):
    with pytest.raises(NotBookable) as refused:
        create_job_sheet(
            firm=make_firm(),
            check=check_of(REFUSED[reason]),
            booking=make_booking(),
            idempotency_key="a-key-of-its-own",
            origin=ORIGIN,
        )
    assert refused.value.reason is BookingRefusal(reason)
    assert not JobSheet.objects.exists()


@pytest.mark.django_db
@pytest.mark.parametrize("name", BOOKABLE)
def test_the_writer_books_the_others(name):
    assert make_job_sheet(check=check_of(BOOKABLE[name])).summary["finished"] == (name != "questions left open")


@pytest.mark.django_db
def test_what_was_booked_already_is_found_by_its_key_whatever_the_rule_says_since(monkeypatch):
    first = make_job_sheet(idempotency_key="again-and-again")
    monkeypatch.setattr("triage.jobsheet.actions.booking_refusal", lambda _check: BookingRefusal.NORMAL)
    assert make_job_sheet(first.firm, idempotency_key="again-and-again") == first
