"""One attempt to send one message, by webhook or e-mail. What is said is built here from the sheet, each time."""

from collections.abc import Mapping
from datetime import datetime
from smtplib import SMTPException
from typing import cast

from django.conf import settings
from django.core.mail import EmailMessage
from django.utils.translation import gettext as _

from triage.jobsheet.contents import serialize_sheet
from triage.jobsheet.errors import Refused
from triage.jobsheet.formats.calendar import visit_request
from triage.jobsheet.formats.json import sheet_json
from triage.jobsheet.formats.text import sheet_text
from triage.jobsheet.formats.webhook import message_body, signed_headers
from triage.jobsheet.http_post import NotDelivered, post
from triage.models import Delivery, JobSheet
from triage.models.delivery import Channel, Event


def send(delivery: Delivery, now: datetime) -> None:
    """Return once the message is with the receiver or the mail server; raise NotDelivered otherwise."""
    if delivery.channel == Channel.EMAIL:
        _mail(delivery)
    else:
        _post(delivery, now)


def _post(delivery: Delivery, now: datetime) -> None:
    firm = delivery.firm
    if not firm.webhook_url:
        raise NotDelivered(_("The firm has no webhook any more."), permanent=True)
    body = message_body(delivery.event, delivery.created, payload(delivery))
    try:
        headers = signed_headers(firm.webhook_secret, delivery.message_id, now, body)
    except Refused as reason:
        raise NotDelivered(str(reason), permanent=True) from reason
    post(firm.webhook_url, headers, body.encode())


def payload(delivery: Delivery) -> Mapping[str, object]:
    """What the message is about. An erased sheet is named by its reference and nothing else."""
    sheet = delivery.sheet
    if sheet is None:
        return {"firm": delivery.firm.slug, "text": _("This is a test. Nothing has to be done.")}
    if delivery.event == Event.ERASED:
        return {"reference": sheet.reference, "erased": _when_erased(sheet)}
    return cast(Mapping[str, object], serialize_sheet(sheet))


def _when_erased(sheet: JobSheet) -> str:
    return sheet.erased.isoformat(timespec="seconds") if sheet.erased else ""


def _mail(delivery: Delivery) -> None:
    firm, sheet = delivery.firm, delivery.sheet
    if not firm.email or sheet is None:
        raise NotDelivered(_("The firm has no e-mail address any more."), permanent=True)
    contents = serialize_sheet(sheet)
    params = {"reference": sheet.reference, "complaint": contents["check"]["complaint"]}
    message = EmailMessage(
        subject=_("Job sheet %(reference)s: %(complaint)s") % params,
        body=sheet_text(contents),
        to=[firm.email],
        reply_to=[sheet.email] if sheet.email else None,
        # The same id each time, by which a mailbox can tell a repeat.
        headers={"Message-ID": f"<{delivery.message_id}@{settings.DEFAULT_FROM_EMAIL.rpartition('@')[2].strip('>')}>"},
    )
    message.attach(f"{sheet.reference}.json", sheet_json(contents).encode(), "application/json")
    message.attach(f"{sheet.reference}.ics", visit_request(contents, firm.email), "text/calendar")
    try:
        message.send()
    except (OSError, SMTPException) as problem:
        raise NotDelivered(
            _("The mail server did not take it (%(kind)s).") % {"kind": type(problem).__name__}
        ) from problem
