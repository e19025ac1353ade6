"""The next step of a check, from the same address a page has: `?region=...&complaint=no-heat&danger=none&...`."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase

from triage.api.endpoint import open_read
from triage.api.presenters.step import told_step
from triage.api.showing import show_open
from triage.check_pages.request import read_check_request
from triage.web.step_header import STEP

OK = 200
# The kinds of step, as the pages' own answers are counted.
COUNTED = {
    "danger-signs": "danger",
    "question": "question",
    "make-safe": "make_safe",
    "advice": "advice",
    "not-this": "exit",
}


@open_read
def step(request: HttpRequest) -> HttpResponseBase:
    check_request = read_check_request(request)
    told = told_step(check_request)
    response = show_open(request, told, check_request)
    if response.status_code == OK:
        response.headers[STEP] = COUNTED[str(told["kind"])]
    return response
