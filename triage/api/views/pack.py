"""What can be asked and answered, for a telephone menu: ids and words."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase

from triage.api.endpoint import open_read
from triage.api.presenters.pack import told_pack
from triage.api.showing import show_open
from triage.check_pages.visit import open_visit


@open_read
def pack(request: HttpRequest) -> HttpResponseBase:
    visit = open_visit(request)
    return show_open(request, told_pack(visit), visit)
