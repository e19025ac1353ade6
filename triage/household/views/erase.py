"""The sender takes back what was sent: asked once more, then erased for good."""

from django.http import HttpRequest, HttpResponseRedirect
from django.http.response import HttpResponseBase
from django.views.decorators.csrf import csrf_exempt
from django.views.decorators.http import require_http_methods

from triage.household.presenters.sheet import sheet_page
from triage.household.private_page import keep_private, show_private
from triage.household.sheet_address import check_request_for_sheet, query_params, sheet_address
from triage.household.views.mishap import not_found
from triage.household.views.showing import context_of
from triage.jobsheet.access import NotFound, open_as_sender
from triage.jobsheet.actions import erase as take_away
from triage.jobsheet.sender_link import TOKEN
from triage.models.audit_entry import Actor


@csrf_exempt  # the token in the address is the whole right to do this, and no cookie adds to it
@require_http_methods(["GET", "HEAD", "POST"])
def erase(request: HttpRequest, reference: str) -> HttpResponseBase:
    token = query_params(request).get(TOKEN, "")
    try:
        found = open_as_sender(reference, token)
    except NotFound as missing:
        return keep_private(not_found(request, missing), None)
    if request.method == "POST" or found.erased:
        take_away(sheet=found, actor=Actor.SENDER)
        return keep_private(HttpResponseRedirect(sheet_address(found)), found.firm)
    check_request = check_request_for_sheet(request, found)
    page = sheet_page(found, token, check_request.origin, sheet_address(found), new=False)
    return show_private(request, "triage/erase.html", context_of(check_request, page), found.firm)
