"""Takes a hand-over that waited on a phone until it was online again, and any that a script of ours sends.

The key was made on the phone, because the form may never have seen the site; it comes again with every try, and one
key makes one job sheet. No cookie is read. A request counts only from a page of this site, so that no other site can
fill in the form for somebody.
"""

import re

from django.http import HttpRequest, JsonResponse
from django.http.response import HttpResponseBase
from django.utils.translation import gettext as _
from django.views.decorators.csrf import csrf_exempt

from triage.check_pages.hand_over_form import Sent, read_sent
from triage.check_pages.request import CheckRequest, read_check_request
from triage.household.hand_over_limit import count_hand_over, wait_problem
from triage.household.sheet_address import sheet_address
from triage.jobsheet.actions import create_job_sheet
from triage.jobsheet.booking_rule import BookingRefusal
from triage.jobsheet.consent import consent_words
from triage.jobsheet.errors import IdempotencyConflict, NotBookable, Refused
from triage.models import Firm, JobSheet
from triage.web.json_errors import ApiError, ErrorKind, problem_response

KEY = re.compile(r"[0-9a-f]{32}")  # 128 random bits, as outbox.js makes them
PREFIX = "phone-"


@csrf_exempt
def hand_over_kept(request: HttpRequest) -> HttpResponseBase:
    try:
        sheet = _taken(request)
    except ApiError as trouble:
        return problem_response(trouble)
    told = {"reference": sheet.reference, "address": sheet_address(sheet, sent="yes")}
    return JsonResponse(told, headers={"Cache-Control": "no-store, private"})


def _taken(request: HttpRequest) -> JobSheet:
    if request.method != "POST":
        raise ApiError(ErrorKind.METHOD_NOT_ALLOWED, _("A hand-over is sent by POST."), headers={"Allow": "POST"})
    if request.headers.get("Origin") != f"{request.scheme}://{request.get_host()}":
        raise ApiError(ErrorKind.ORIGIN_NOT_ALLOWED, _("A hand-over is taken only from a page of this site."))
    key = request.headers.get("Idempotency-Key", "")
    if not KEY.fullmatch(key):
        raise ApiError(
            ErrorKind.MISSING_IDEMPOTENCY_KEY, _("A hand-over needs its own key: 32 digits from 0 to 9 and a to f.")
        )
    allowance = count_hand_over(request)
    if allowance.exceeded:
        problem = wait_problem(allowance)
        raise ApiError(
            ErrorKind.TOO_MANY_REQUESTS, problem.message, headers={"Retry-After": str(allowance.reset_after)}
        )
    check_request = read_check_request(request)
    if check_request.firm is None:
        raise ApiError(ErrorKind.NOT_FOUND, _("We do not know this repair firm any more. Nothing was sent."))
    return _write(check_request, check_request.firm, PREFIX + key, read_sent(request))


def _write(check_request: CheckRequest, firm: Firm, key: str, sent: Sent) -> JobSheet:
    told = _("The firm’s form could not be taken as it is.")
    if sent.problems:
        raise ApiError(ErrorKind.INVALID_REQUEST, told, sent.problems)
    try:
        return create_job_sheet(
            firm=firm,
            check=check_request.check,
            booking=sent.booking(consent_words(firm)),
            idempotency_key=key,
            origin=check_request.origin,
        )
    except NotBookable as refused:
        raise ApiError(
            ErrorKind.NOT_BOOKABLE, _why_not(refused.reason), more={"reason": refused.reason.value}
        ) from None
    except IdempotencyConflict as taken:
        raise ApiError(ErrorKind.IDEMPOTENCY_CONFLICT, told, taken.problems) from None
    except Refused as refused:
        raise ApiError(ErrorKind.INVALID_REQUEST, told, refused.problems) from None


def _why_not(reason: BookingRefusal) -> str:
    match reason:
        case BookingRefusal.EVACUATE_FIRST:
            return _(
                "With these answers people have to get out now and call for help. Open the advice again: it says what"
                " to do first."
            )
        case BookingRefusal.NOTHING_ANSWERED | BookingRefusal.DANGER_SIGNS_OPEN:
            return _("The questions are not over yet. Open the check again and answer the rest.")
        case _:
            return _("With these answers no visit is needed now. Open the advice again to see why.")
