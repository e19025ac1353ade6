"""A job sheet made from a trail and a booking: once for each key, however often the request comes."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.utils import timezone
from django.utils.translation import gettext as _

from triage.api.callers import Caller, for_firm
from triage.api.cross_origin import from_firm_pages
from triage.api.endpoint import endpoint
from triage.api.job_sheet_request import MOST_BYTES, Wanted, field_of, read_wanted
from triage.api.presenters.made import told_made
from triage.api.safe_to_book import leave_first
from triage.api.showing import show_private
from triage.api.strict_json import read_json
from triage.jobsheet.actions import hand_over
from triage.jobsheet.errors import FieldProblem, IdempotencyConflict, Refused
from triage.models import JobSheet
from triage.web.json_errors import Kind, Trouble


@from_firm_pages("POST")
@endpoint("POST")
@for_firm(pages=True)
def job_sheets(request: HttpRequest, caller: Caller) -> HttpResponseBase:
    """201 for a sheet written since this request came, 200 for the one an earlier request with this key made."""
    key = request.headers.get("Idempotency-Key", "")
    if not key:
        sentence = _("Send a key of your own for each new request, as in: Idempotency-Key: 3f1c9a52-7d0e.")
        raise Trouble(Kind.NO_KEY, sentence, [FieldProblem("Idempotency-Key", sentence)])
    began, origin = timezone.now(), request.build_absolute_uri("/").rstrip("/")
    try:
        sheet = _write(caller, read_wanted(read_json(request, MOST_BYTES)), key, origin)
    except IdempotencyConflict as taken:
        raise _refused(Kind.KEY_TAKEN, taken) from taken
    except Refused as refused:
        raise _refused(Kind.REFUSED, refused) from refused
    told = told_made(sheet, origin)
    return show_private(told, 201 if sheet.created >= began else 200, {"Location": told["href"]})


def _write(caller: Caller, wanted: Wanted, key: str, origin: str) -> JobSheet:
    leave_first(wanted.trail)
    return hand_over(
        firm=caller.firm,
        trail=wanted.trail,
        region=wanted.region,
        booking=wanted.booking,
        idempotency_key=key,
        origin=origin,
    )


def _refused(kind: Kind, refused: Refused) -> Trouble:
    return Trouble(
        kind, _("Nothing was written. Put right what is named and send it again."), map(field_of, refused.problems)
    )
