"""A line break anywhere in an address, a form or a header adds no header to any answer and no line to any message."""

from urllib.parse import quote

import pytest
from django.core import mail

from tests.attack.whole_site import ROUTES, World
from tests.firm_builders import make_booking, make_firm, make_job_sheet
from tests.household.hand_overs import form_address, send
from triage.jobsheet.delivery import deliver_due
from triage.models import JobSheet

pytestmark = pytest.mark.django_db

BREAKS = ("\r\nX-Evil: 1", "\nX-Evil: 1", "\r\n\r\n<script>", "\u2028X-Evil: 1", "%0d%0aX-Evil: 1")
NAMES = ("region", "firm", "complaint", "next", "token", "sent", "danger", "call-id", "x")


def is_whole(answer):
    broken = [value for _name, value in answer.items() if "\r" in value or "\n" in value]
    return "X-Evil" not in answer.headers and broken == []


@pytest.mark.parametrize("sign", BREAKS)
def test_no_parameter_of_any_address_adds_a_header(sign):
    world = World()
    result = "&".join(f"{name}={quote(sign)}" for name in NAMES)
    for name in ROUTES:
        answer = world.clients["owner"].get(f"{world.address(name)}?{result}")
        assert answer.status_code < 500, name
        assert is_whole(answer), name


@pytest.mark.parametrize("sign", BREAKS[:3])
def test_no_part_of_a_path_adds_a_header(client, sign):
    broken = quote(sign, safe="")
    for path in (f"/sheet/{broken}/", f"/desk/sheets/{broken}/", f"/desk/invitation/{broken}/", f"/embed/{broken}/"):
        answer = client.get(path)
        assert answer.status_code < 500
        assert is_whole(answer)


@pytest.mark.parametrize("header", ["Accept-Language", "User-Agent", "If-None-Match", "HX-Current-URL", "Origin"])
def test_no_header_is_handed_back_broken(client, header):
    answer = client.get("/check/?complaint=no-heat", headers={header: "de\r\nX-Evil: 1", "HX-Request": "true"})
    assert answer.status_code < 500
    assert is_whole(answer)


@pytest.mark.parametrize("field", ["name", "email", "street", "maker"])
def test_no_field_of_a_form_adds_a_line_to_a_mail(client, field, settings):
    settings.TRIAGE_WEBHOOK_NETWORKS = "public"
    firm = make_firm(webhook_url="", email="desk@hearth.example")
    result = "alex@home.example\r\nBcc: all@evil.example" if field == "email" else "Alex\r\nBcc: all@evil.example"
    send(client, form_address(firm), **{field: result})
    deliver_due("worker")
    if field == "email":
        assert JobSheet.objects.count() == 0  # no address at all, and said so
        return
    (message,) = mail.outbox
    sent = message.message()
    assert sent["Bcc"] is None
    assert sent.get_all("To") == ["desk@hearth.example"]


def test_what_a_mail_server_is_given_holds_one_subject_and_one_reply_address(mailoutbox):
    firm = make_firm(webhook_url="", email="desk@hearth.example", name="A\r\nBcc: x@evil.example")
    make_job_sheet(firm, booking=make_booking(name="A\r\nSubject: other"))
    deliver_due("worker")
    (message,) = mailoutbox
    sent = message.message()
    assert len(sent.get_all("Subject")) == len(sent.get_all("Reply-To")) == 1
    assert sent["Bcc"] is None


def test_a_file_name_holds_nothing_of_what_was_typed():
    world = World()
    answer = world.clients["owner"].get(world.address("desk-json"))
    assert answer.headers["Content-Disposition"] == f'attachment; filename="{world.sheet.reference}.json"'
