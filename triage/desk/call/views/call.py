"""The call page: a person's story is on it, so no cache keeps it."""

from django.http import HttpResponse
from django.views.decorators.http import require_safe

from triage.desk.access import ALL_ROLES, require_role
from triage.desk.call.open_call import open_call
from triage.desk.call.presenters.page import call_page
from triage.desk.call.showing import around
from triage.desk.request import MemberRequest
from triage.models.job_sheet import MAX_NOTE_LENGTH
from triage.web.rendering import render_step

LONGEST_STORY = 20_000  # letters of what a caller says, or of a letter that is read to them


@require_safe
@require_role(*ALL_ROLES)
def call(request: MemberRequest) -> HttpResponse:
    opened = open_call(request)
    context = {
        **around(opened),
        "page": call_page(opened),
        "notices": opened.check_request.notices,
        "longest_story": LONGEST_STORY,
        "longest_note": MAX_NOTE_LENGTH,
    }
    return render_step(request, "triage/call/call.html", "triage/call/_call.html", context)
