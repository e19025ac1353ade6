"""What the database itself refuses about deliveries."""

import pytest
from django.db import IntegrityError, transaction
from django.utils import timezone

from tests.firm_builders import make_delivery, make_job_sheet
from triage.models import Delivery

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(
    ("constraint", "changes"),
    [
        ("delivery_state_is_known", {"state": "lost"}),
        ("delivery_channel_is_known", {"channel": "pigeon"}),
        ("delivery_event_is_known", {"event": "party"}),
        ("delivery_is_about_a_sheet", {"event": "job_sheet.created"}),
        ("delivery_lease_is_whole", {"leased_by": "me"}),
        ("delivery_lease_is_of_one_waiting", {"leased_by": "me", "lease_until": timezone.now(), "state": "sent"}),
    ],
)
def test_the_database_refuses(constraint, changes):
    with pytest.raises(IntegrityError, match=constraint), transaction.atomic():
        make_delivery(**changes)


def test_a_sheet_goes_out_once_on_a_channel():
    sheet = make_job_sheet()
    with pytest.raises(IntegrityError), transaction.atomic():
        make_delivery(sheet.firm, sheet=sheet, event="job_sheet.created")


def test_two_messages_never_share_an_id():
    make_delivery(message_id="msg_same")
    with pytest.raises(IntegrityError), transaction.atomic():
        make_delivery(message_id="msg_same")


def test_it_has_a_name_to_be_listed_by():
    assert str(Delivery(event="test", channel="webhook", state="dead")) == "test by webhook: dead"
