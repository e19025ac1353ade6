"""What a person sent to a firm, for who holds its link."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.household.presenters.sheet import sheet_page
from triage.household.private_page import keep_private, show_private
from triage.household.sheet_address import SENT, check_request_for_sheet, query_params, sheet_address
from triage.household.views.mishap import not_found
from triage.household.views.showing import context_of
from triage.jobsheet.access import NotFound, open_as_sender
from triage.jobsheet.sender_link import TOKEN


@require_safe
def sheet(request: HttpRequest, reference: str) -> HttpResponseBase:
    told = query_params(request)
    try:
        found = open_as_sender(reference, told.get(TOKEN, ""))
    except NotFound as missing:
        return keep_private(not_found(request, missing), None)
    check_request = check_request_for_sheet(request, found)
    page = sheet_page(found, told[TOKEN], check_request.origin, sheet_address(found), SENT in told)
    return show_private(request, "triage/sheet.html", context_of(check_request, page), found.firm)
