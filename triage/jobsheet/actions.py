"""The only writer of job sheets and what hangs on them; outcomes have `outcomes`. Each action is whole or not at all,
and leaves an audit line.

`create_job_sheet` books nothing that `booking_rule` refuses, and writes the sheet, its photo and its deliveries in one
transaction, so that no sheet is without its deliveries and no delivery without its sheet.
"""

import logging
import uuid
from collections.abc import Iterable
from datetime import datetime, timedelta

from django.db import IntegrityError, transaction
from django.utils import timezone
from django.utils.translation import gettext as _

from triage.engine import Check
from triage.jobsheet.booking import Booking, check_booking
from triage.jobsheet.booking_rule import booking_refusal
from triage.jobsheet.errors import FieldProblem, IdempotencyConflict, NotBookable, Refused
from triage.jobsheet.photo import Photo, read_photo
from triage.jobsheet.plain_text import clean_text
from triage.jobsheet.reference import new_reference
from triage.jobsheet.request_fingerprint import check_key, request_fingerprint
from triage.jobsheet.sender_token import hash_of, new_token
from triage.jobsheet.summary import check_url, summarise_with_kit
from triage.models import ApiKey, AuditEntry, Delivery, Firm, JobSheet, Member, Note, RatingPlatePhoto
from triage.models.audit_entry import Actor, AuditAction
from triage.models.delivery import Channel, DeliveryState, Event
from triage.models.job_sheet import MAX_NOTE_LENGTH, SheetStatus

log = logging.getLogger(__name__)

MAX_WRITE_ATTEMPTS = 3
PERSONAL = ("name", "telephone", "email", "street", "postcode", "access", "consent")


def create_job_sheet(
    *,
    firm: Firm,
    check: Check,
    booking: Booking,
    idempotency_key: str,
    origin: str,
    taken_by: Member | None = None,
) -> JobSheet:
    """The job sheet for this booking: a new one, or the one an earlier request with this key already made.

    `origin` is the site's own address, without a slash. Raises NotBookable where no visit may be booked with this
    check, Refused where the booking cannot be taken as it is, IdempotencyConflict where the key belongs to another
    request; nothing is written then.
    """
    check_key(idempotency_key)
    wanted = request_fingerprint(check, booking)
    key = (idempotency_key, wanted)
    earlier = _earlier(firm, idempotency_key, wanted)
    if earlier:
        return earlier
    reason = booking_refusal(check)
    if reason:
        raise NotBookable(reason)
    checked = check_booking(booking)
    photo = read_photo(checked.photo) if checked.photo else None
    for _attempt in range(MAX_WRITE_ATTEMPTS):
        try:
            with transaction.atomic():
                sheet = _write(firm, check, origin, checked, photo, taken_by, key)
        except IntegrityError:  # the same key came in twice at once, or the reference was taken: look, then try again
            earlier = _earlier(firm, idempotency_key, wanted)
            if earlier:
                return earlier
        else:
            log.info("job sheet %s written for firm %s", sheet.pk, firm.pk)
            return sheet
    raise RuntimeError(f"No job sheet could be written for firm {firm.pk} in {MAX_WRITE_ATTEMPTS} attempts.")


def _earlier(firm: Firm, key: str, wanted: str) -> JobSheet | None:
    sheet = JobSheet.objects.filter(firm=firm, idempotency_key=key).first()
    if sheet and sheet.request_hash != wanted:
        # Who knows another person's key must not get that person's sheet.
        raise IdempotencyConflict(
            [FieldProblem("idempotency_key", _("This was sent before with other details. Start a new request."))]
        )
    return sheet


def _write(
    firm: Firm,
    check: Check,
    origin: str,
    booking: Booking,
    photo: Photo | None,
    taken_by: Member | None,
    key: tuple[str, str],
) -> JobSheet:
    now, reference, summary = timezone.now(), new_reference(), summarise_with_kit(check, check_url(check, origin))
    plate = {name: getattr(booking, name) for name in ("maker", "model", "serial", "power", "year")}
    sheet = JobSheet.objects.create(
        reference=reference,
        firm=firm,
        idempotency_key=key[0],
        request_hash=key[1],
        token_hash=hash_of(new_token(reference)),
        region=check.region.id,
        answers=[list(pair) for pair in check.answers.items()],
        pack_version=check.pack.version,
        summary=summary,
        band=summary["band"],
        leading_fault=summary["causes"][0]["fault"],
        **{name: getattr(booking, name) for name in PERSONAL},
        plate={name: value for name, value in plate.items() if value},
        windows=[{"start": w.start.isoformat(), "end": w.end.isoformat()} for w in booking.windows],
        consented=now,
        taken_by=taken_by,
        created=now,
        erase_after=now + timedelta(days=firm.retention_days),
    )
    if photo:
        RatingPlatePhoto.objects.create(sheet=sheet, jpeg=photo.jpeg, width=photo.width, height=photo.height)
    _queue(sheet, Event.CREATED, now)
    note_access(sheet, AuditAction.HANDED_OVER, taken_by, Actor.MEMBER if taken_by else Actor.SENDER)
    return sheet


def _queue(sheet: JobSheet, event: Event, now: datetime) -> None:
    """A row for each channel the firm listens on."""
    firm = sheet.firm
    channels = {Channel.WEBHOOK: firm.webhook_url, Channel.EMAIL: firm.email if event is Event.CREATED else ""}
    for channel, address in channels.items():
        if address:
            _new_delivery(firm, sheet, channel, event, now)


def _new_delivery(firm: Firm, sheet: JobSheet | None, channel: Channel, event: Event, now: datetime) -> Delivery:
    message_id = f"msg_{uuid.uuid4().hex}"
    return Delivery.objects.create(
        firm=firm, sheet=sheet, channel=channel, event=event, message_id=message_id, next_attempt=now, created=now
    )


def queue_test(*, firm: Firm) -> Delivery:
    """A test message to the firm's webhook, delivered like any other."""
    if not firm.webhook_url:
        raise Refused([FieldProblem("webhook_url", _("Give the webhook's address first."))])
    return _new_delivery(firm, None, Channel.WEBHOOK, Event.TEST, timezone.now())


def requeue(*, delivery: Delivery) -> bool:
    """Put a dead delivery back in line; whether it was one."""
    fresh = {"state": DeliveryState.WAITING, "attempts": 0, "next_attempt": timezone.now(), "settled": None}
    return Delivery.objects.filter(pk=delivery.pk, state=DeliveryState.FAILED).update(**fresh) == 1


def note_access(
    sheet: JobSheet, action: AuditAction, member: Member | None, actor: Actor, key: ApiKey | None = None
) -> None:
    """One audit line; `member` where the actor is staff, `key` where it is the firm's own system."""
    AuditEntry.objects.create(sheet=sheet, actor=actor, member=member, key=key, action=action, at=timezone.now())


@transaction.atomic
def set_status(*, sheet: JobSheet, status: str, member: Member) -> None:
    if status not in SheetStatus.values:
        known = ", ".join(SheetStatus.values)
        raise Refused([FieldProblem("status", _("There is no such status. Use one of: %(known)s.") % {"known": known})])
    sheet.status = status
    sheet.save(update_fields=["status"])
    note_access(sheet, AuditAction.STATUS, member, Actor.MEMBER)


@transaction.atomic
def add_note(*, sheet: JobSheet, text: str, member: Member) -> Note:
    cleaned = clean_text(text)
    if not cleaned:
        raise Refused([FieldProblem("text", _("Write something, or leave the note out."))])
    if len(cleaned) > MAX_NOTE_LENGTH:
        params = {"length": len(cleaned), "most": MAX_NOTE_LENGTH}
        sentence = _("This note has %(length)s characters, and %(most)s are the most. Shorten it or write two.")
        raise Refused([FieldProblem("text", sentence % params)])
    _lock_unless_erased(sheet)
    note = Note.objects.create(sheet=sheet, author=member, text=cleaned, created=timezone.now())
    note_access(sheet, AuditAction.NOTED, member, Actor.MEMBER)
    return note


def _lock_unless_erased(sheet: JobSheet) -> None:
    """Holds the sheet to the end of the transaction, so that nothing personal is written while it is being erased."""
    if JobSheet.objects.select_for_update().get(pk=sheet.pk).erased:
        raise Refused([FieldProblem("text", _("This job sheet was erased. Nothing more can be written on it."))])


@transaction.atomic
def erase(*, sheet: JobSheet, actor: Actor, member: Member | None = None) -> None:
    """Takes away whose oven it was, for good. The answers about the oven stay, and so does the outcome.

    Where the sender or a member asks for it, the firm's own system is told to erase its copy too.
    """
    locked = JobSheet.objects.select_for_update().get(pk=sheet.pk)
    if locked.erased:
        return
    now = timezone.now()
    sheet.notes.all().delete()
    RatingPlatePhoto.objects.filter(sheet=sheet).delete()
    attempted = Delivery.objects.filter(sheet=sheet, channel=Channel.WEBHOOK, attempts__gt=0)
    receiver_has_it = attempted.exists()  # an attempt that failed may have arrived all the same
    Delivery.objects.filter(sheet=sheet, state__in=(DeliveryState.WAITING, DeliveryState.FAILED)).update(
        state=DeliveryState.CANCELLED, leased_by="", lease_until=None, settled=now, last_error=""
    )
    for holder in (locked, sheet):
        _blank(holder, now)
    locked.save()
    note_access(sheet, AuditAction.ERASED, member, actor)
    if receiver_has_it and actor is not Actor.SITE:
        _queue(locked, Event.ERASED, now)
    log.info("job sheet %s erased by %s", sheet.pk, actor)


def _blank(sheet: JobSheet, now: datetime) -> None:
    for name in PERSONAL:
        setattr(sheet, name, "")
    sheet.plate = {name: value for name, value in sheet.plate.items() if name != "serial"}
    sheet.windows = []
    sheet.erased = now


def erase_expired(*, now: datetime | None = None) -> int:
    """Erases every sheet whose time is over; how many there were."""
    due: Iterable[JobSheet] = JobSheet.objects.filter(erased__isnull=True, erase_after__lte=now or timezone.now())
    count = 0
    for sheet in due:
        erase(sheet=sheet, actor=Actor.SITE)
        count += 1
    return count
