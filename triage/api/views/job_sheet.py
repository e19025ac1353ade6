"""A job sheet read back by its firm's own system. Each reading leaves an audit line with the key that was used."""

from typing import cast

from django.http import HttpRequest
from django.http.response import HttpResponseBase

from triage.api.callers import Caller, for_firm, not_here
from triage.api.endpoint import endpoint
from triage.api.showing import show_private
from triage.jobsheet.access import NotFound, open_as_system
from triage.jobsheet.contents import serialize_sheet
from triage.models import ApiKey


@endpoint("GET", "HEAD")
@for_firm(pages=False)
def job_sheet(_request: HttpRequest, caller: Caller, reference: str) -> HttpResponseBase:
    try:
        sheet = open_as_system(cast(ApiKey, caller.key), reference)
    except NotFound:
        raise not_here() from None
    return show_private(serialize_sheet(sheet))
