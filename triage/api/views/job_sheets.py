"""Job sheets: made from answers and a booking, once for each key however often the request comes, and read back by the
firm's own system, which leaves an audit entry with its key."""

from typing import TypedDict, cast

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.urls import reverse
from django.utils import timezone
from django.utils.translation import gettext as _

from triage.api.callers import Caller, for_firm, not_found_error
from triage.api.cross_origin import from_firm_pages
from triage.api.endpoint import endpoint
from triage.api.job_sheet_request import ANSWERS, MAX_BYTES, REGION, JobSheetRequest, field_of, parse_job_sheet_request
from triage.api.responses import private_response
from triage.api.strict_json import read_json
from triage.engine import Check, run_check
from triage.jobsheet.access import NotFound, open_as_system
from triage.jobsheet.actions import create_job_sheet
from triage.jobsheet.booking_rule import BookingRefusal
from triage.jobsheet.contents import serialize_sheet
from triage.jobsheet.errors import FieldProblem, IdempotencyConflict, NotBookable, Refused
from triage.jobsheet.reference import spelled_out
from triage.jobsheet.sender_link import sender_link
from triage.knowledge.library import library
from triage.models import ApiKey, JobSheet
from triage.web.json_errors import ApiError, ErrorKind


class Receipt(TypedDict):
    """For whoever handed the check over: nothing that only a repairer should read. `sender_link` opens the sheet for
    who sent it and lets them erase it; it is empty once the site's key of that time is forgotten."""

    reference: str
    spelled: str
    band: str
    status: str
    erase_after: str
    href: str
    sender_link: str


@from_firm_pages("POST")
@endpoint("POST")
@for_firm(pages=True)
def job_sheets(request: HttpRequest, caller: Caller) -> HttpResponseBase:
    """201 for a sheet written since this request came, 200 for the one an earlier request with this key made."""
    key = request.headers.get("Idempotency-Key", "")
    if not key:
        detail = _("Send a key of your own for each new request, as in: Idempotency-Key: 3f1c9a52-7d0e.")
        raise ApiError(ErrorKind.MISSING_IDEMPOTENCY_KEY, detail, [FieldProblem("Idempotency-Key", detail)])
    began, origin = timezone.now(), request.build_absolute_uri("/").rstrip("/")
    try:
        sheet = _write(caller, parse_job_sheet_request(read_json(request, MAX_BYTES)), key, origin)
    except IdempotencyConflict as conflict:
        raise _refused(ErrorKind.IDEMPOTENCY_CONFLICT, conflict) from conflict
    except NotBookable as refused:
        raise _not_bookable(refused.reason) from refused
    except Refused as refused:
        raise _refused(ErrorKind.INVALID_REQUEST, refused) from refused
    receipt = receipt_for(sheet, origin)
    return private_response(receipt, 201 if sheet.created >= began else 200, {"Location": receipt["href"]})


@endpoint("GET", "HEAD")
@for_firm(pages=False)
def job_sheet(_request: HttpRequest, caller: Caller, reference: str) -> HttpResponseBase:
    try:
        sheet = open_as_system(cast(ApiKey, caller.key), reference)
    except NotFound:
        raise not_found_error() from None
    return private_response(serialize_sheet(sheet))


def receipt_for(sheet: JobSheet, origin: str) -> Receipt:
    return Receipt(
        reference=sheet.reference,
        spelled=spelled_out(sheet.reference),
        band=sheet.band,
        status=sheet.status,
        erase_after=sheet.erase_after.isoformat(timespec="seconds"),
        href=origin + reverse("api-job-sheet", args=[sheet.firm.slug, sheet.reference]),
        sender_link=sender_link(sheet, origin),
    )


def _write(caller: Caller, wanted: JobSheetRequest, key: str, origin: str) -> JobSheet:
    return create_job_sheet(
        firm=caller.firm,
        check=_check(wanted),
        booking=wanted.booking,
        idempotency_key=key,
        origin=origin,
    )


def _refused(kind: ErrorKind, refused: Refused) -> ApiError:
    detail = _("Nothing was written. Put right what is named and send it again.")
    return ApiError(kind, detail, map(field_of, refused.problems))


def _check(wanted: JobSheetRequest) -> Check:
    known = library()
    if wanted.region not in known.regions:
        raise Refused([FieldProblem(REGION, _("We do not know this place. Choose one from the list."))])
    return run_check(known.pack, known.regions[wanted.region].region, wanted.answers)


def _not_bookable(reason: BookingRefusal) -> ApiError:
    detail = {
        BookingRefusal.EVACUATE_FIRST: _(
            "By these answers people have to get out now and call for help from outside. Tell them that, and whom to"
            " call; both are in the step of these answers. No repair can be booked with them."
        ),
        BookingRefusal.NOTHING_ANSWERED: _("Nothing was answered yet. Answer at least what is wrong."),
        BookingRefusal.OUT_OF_SCOPE: _(
            "By these answers this is not an electric oven, and the firm cannot take it as one."
        ),
        BookingRefusal.DANGER_SIGNS_OPEN: _(
            "Nobody was asked about danger signs with these answers. Ask what their step asks, then send that too."
        ),
        BookingRefusal.SOLVED: _("By these answers something that was tried put it right, so no visit is needed."),
        BookingRefusal.NORMAL: _("By these answers the oven works as it should, so no visit is needed."),
        BookingRefusal.NETWORK_OPERATOR: _(
            "By these answers this is for the electricity network to put right, and not for the firm. Whom to call is"
            " in the step of these answers."
        ),
    }[reason]
    return ApiError(ErrorKind.NOT_BOOKABLE, detail, [FieldProblem(ANSWERS, detail)], more={"reason": reason.value})
