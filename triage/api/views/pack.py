"""What can be asked and answered, for a telephone menu: ids and words."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase

from triage.api.endpoint import open_read
from triage.api.presenters.pack import told_pack
from triage.api.showing import show_open
from triage.check_pages.request import read_check_request


@open_read
def pack(request: HttpRequest) -> HttpResponseBase:
    check_request = read_check_request(request)
    return show_open(request, told_pack(check_request), check_request)
