"""The check handed to a firm. The form needs no session and no cookie, because in a frame on another site none arrives;
so nothing here acts in the name of somebody signed in, and a forged post is no more than a form anybody may fill in."""

from collections.abc import Sequence

from django.http import HttpRequest, HttpResponseRedirect
from django.http.response import HttpResponseBase
from django.views.decorators.csrf import csrf_exempt
from django.views.decorators.http import require_http_methods

from triage.check_pages.form_state import key_in, new_state, stale_problem
from triage.check_pages.hand_over_form import STATE, Sent, read_sent
from triage.check_pages.request import CheckRequest, read_check_request
from triage.household.hand_over_limit import TOO_MANY, count_hand_over, wait_problem
from triage.household.presenters.hand_over import hand_over_page
from triage.household.private_page import keep_private, show_private
from triage.household.sheet_address import sheet_address
from triage.household.views.showing import context_of, show
from triage.household.views.step import page_of
from triage.jobsheet.actions import create_job_sheet
from triage.jobsheet.booking_rule import booking_refusal
from triage.jobsheet.consent import consent_words
from triage.jobsheet.errors import FieldProblem, IdempotencyConflict, Refused
from triage.models import Firm

REFUSED = 422


@csrf_exempt
@require_http_methods(["GET", "HEAD", "POST"])
def hand_over(request: HttpRequest) -> HttpResponseBase:
    check_request = read_check_request(request)
    if check_request.firm is None or booking_refusal(check_request.check):
        return show(request, check_request, page_of(check_request))
    if request.method == "POST":
        return _send(request, check_request, check_request.firm)
    return _form(request, check_request, check_request.firm, Sent({}), new_state(check_request.firm.slug))


def _send(request: HttpRequest, check_request: CheckRequest, firm: Firm) -> HttpResponseBase:
    allowance = count_hand_over(request)
    sent = read_sent(request)
    state = sent.typed.get(STATE, "")
    key = key_in(state, firm.slug)
    if allowance.exceeded:
        response = _form(request, check_request, firm, sent, state, [wait_problem(allowance)], TOO_MANY)
        response.headers["Retry-After"] = str(allowance.reset_after)
        return response
    if sent.problems or key is None:
        problems = sent.problems or [stale_problem()]
        return _form(request, check_request, firm, sent, new_state(firm.slug), problems)
    try:
        sheet = create_job_sheet(
            firm=firm,
            check=check_request.check,
            booking=sent.booking(consent_words(firm)),
            idempotency_key=key,
            origin=check_request.origin,
        )
    except IdempotencyConflict as taken:
        return _form(request, check_request, firm, sent, new_state(firm.slug), taken.problems)
    except Refused as refused:
        return _form(request, check_request, firm, sent, state, refused.problems)
    return keep_private(HttpResponseRedirect(sheet_address(sheet, sent="yes")), firm)


def _form(
    request: HttpRequest,
    check_request: CheckRequest,
    firm: Firm,
    sent: Sent,
    state: str,
    problems: Sequence[FieldProblem] = (),
    status: int = REFUSED,
) -> HttpResponseBase:
    context = context_of(check_request, hand_over_page(check_request, firm, sent, state, problems))
    return show_private(request, "triage/hand_over.html", context, firm, status if problems else 200)
