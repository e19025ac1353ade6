"""One attempt: what goes out by webhook and by e-mail, and what is said when it cannot."""

import email
import json
from datetime import UTC, datetime
from email import policy

import jsonschema
import pytest
from django.core import mail
from standardwebhooks.webhooks import Webhook

from tests.firm_builders import make_booking, make_delivery, make_firm, make_job_sheet, make_member
from tests.jobsheet.formats.calendar_reader import read_calendar
from tests.jobsheet.receivers import receiver
from triage.jobsheet.actions import erase, set_status
from triage.jobsheet.formats.json import schema
from triage.jobsheet.http_post import NotDelivered
from triage.jobsheet.sending import send
from triage.models import Delivery

pytestmark = pytest.mark.django_db


@pytest.fixture
def box(settings):
    settings.TRIAGE_WEBHOOK_NETWORKS = "any"
    with receiver() as box:
        yield box


def now():
    return datetime.now(UTC)


def verified(box, firm):
    """The message as a receiver reads it that uses the Standard Webhooks project's own library."""
    headers, body = box.requests[-1]
    return Webhook(firm.webhook_secret).verify(body, headers)


def test_a_webhook_brings_the_whole_sheet_signed(box):
    sheet = make_job_sheet(make_firm(webhook_url=box.url))
    delivery = sheet.deliveries.get(channel="webhook")
    send(delivery, now())
    result = verified(box, sheet.firm)
    assert result["type"] == "job_sheet.created"
    assert box.requests[-1][0]["webhook-id"] == delivery.message_id
    jsonschema.validate(result["data"], schema(), jsonschema.Draft202012Validator)
    assert result["data"]["contact"]["name"] == "Alex Grey"


def test_a_repeat_has_the_same_id_and_the_same_bytes(box):
    sheet = make_job_sheet(make_firm(webhook_url=box.url))
    for _ in range(2):
        send(Delivery.objects.get(sheet=sheet, channel="webhook"), now())
    (first, body), (second, again) = box.requests
    assert (first["webhook-id"], body) == (second["webhook-id"], again)
    assert len(box.kept) == 1


def test_a_repeat_after_a_change_has_the_same_id_and_the_sheet_as_it_is_now(box):
    """What the contract says of it in triage/jobsheet/README.md: by the id alone a repeat is told."""
    sheet = make_job_sheet(make_firm(webhook_url=box.url))
    items = []
    for status in ("new", "booked"):
        set_status(sheet=sheet, status=status, member=make_member(sheet.firm))
        send(Delivery.objects.get(sheet=sheet, channel="webhook"), now())
        items.append(verified(box, sheet.firm))
    assert len({headers["webhook-id"] for headers, _body in box.requests}) == 1
    assert [one["data"].pop("status") for one in items] == ["new", "booked"]
    assert items[0] == items[1]


def test_the_news_of_an_erasure_names_the_reference_and_nobody(box):
    sheet = make_job_sheet(make_firm(webhook_url=box.url))
    sheet.deliveries.update(attempts=1)
    erase(sheet=sheet, actor="sender")
    send(sheet.deliveries.get(event="job_sheet.erased"), now())
    result = verified(box, sheet.firm)
    assert result["type"] == "job_sheet.erased"
    assert set(result["data"]) == {"reference", "erased"}
    assert result["data"]["reference"] == sheet.reference


def test_a_test_message_says_that_it_is_one(box):
    firm = make_firm(webhook_url=box.url)
    send(make_delivery(firm), now())
    result = verified(box, firm)
    assert result["data"] == {"firm": firm.slug, "text": "This is a test. Nothing has to be done."}


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"webhook_url": ""}, "The firm has no webhook any more."),
        ({"webhook_secret": "short"}, "The webhook's secret has to be whsec_ and 24 to 64 bytes in base64."),
        ({"webhook_url": "https://127.0.0.1/"}, "This address leads into a private network."),
    ],
)
def test_settings_that_cannot_work_are_not_tried_for_ever(changes, sentence):
    with pytest.raises(NotDelivered) as failed:
        send(make_delivery(make_firm(**changes)), now())
    assert str(failed.value).startswith(sentence)
    assert failed.value.permanent


def mailed(sheet):
    send(sheet.deliveries.get(channel="email"), now())
    (message,) = mail.outbox
    return email.message_from_bytes(message.message().as_bytes(), policy=policy.default)


def test_an_e_mail_holds_the_sheet_as_text_json_and_calendar():
    sheet = make_job_sheet()
    message = mailed(sheet)
    assert message["To"] == sheet.firm.email
    assert message["Reply-To"] == "alex@home.example"
    assert message["Subject"] == f"Job sheet {sheet.reference}: No heat at all"
    assert message["Message-ID"].startswith(f"<{sheet.deliveries.get(channel='email').message_id}@")
    assert "- Name: Alex Grey" in message.get_body().get_content()
    attached = {part.get_filename(): part for part in message.iter_attachments()}
    payload = json.loads(attached[f"{sheet.reference}.json"].get_content())
    jsonschema.validate(payload, schema(), jsonschema.Draft202012Validator)
    file = attached[f"{sheet.reference}.ics"].get_content()
    calendar = read_calendar(file.replace("\n", "\r\n"))  # as SMTP ends every line
    assert [component.kind for component in calendar.inside] == ["VEVENT"]


def test_a_name_with_a_line_break_makes_no_header():
    sheet = make_job_sheet(booking=make_booking(name="Alex\r\nBcc: all@example.org", email=""))
    message = mailed(sheet)
    assert message["Bcc"] is None
    assert message["Reply-To"] is None


def test_an_e_mail_to_nowhere_is_given_up():
    sheet = make_job_sheet()
    sheet.firm.email = ""
    sheet.firm.save()
    with pytest.raises(NotDelivered, match="The firm has no e-mail address any more") as failed:
        send(sheet.deliveries.get(channel="email"), now())
    assert failed.value.permanent


def test_a_mail_server_that_is_not_there_is_tried_again(settings):
    settings.EMAIL_BACKEND = "django.core.mail.backends.smtp.EmailBackend"
    settings.EMAIL_HOST, settings.EMAIL_PORT = "127.0.0.1", 1
    with pytest.raises(NotDelivered) as failed:
        send(make_job_sheet().deliveries.get(channel="email"), now())
    assert str(failed.value) == "The mail server did not take it (ConnectionRefusedError)."
    assert not failed.value.permanent
