"""The call page, the phrases it matches what callers say against, and the QR code for the caller's telephone."""

from io import BytesIO

import segno
from django.http import HttpResponse, JsonResponse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_safe
from segno.encoder import DataOverflowError

from triage.desk.access import ALL_ROLES, require_role
from triage.desk.call.open_call import base_context, open_call
from triage.desk.call.presenters.page import call_page
from triage.desk.call.presenters.phrase_index import build_phrase_index
from triage.desk.request import MemberRequest
from triage.models.job_sheet import MAX_NOTE_LENGTH
from triage.web.rendering import render_step

MAX_STORY_LENGTH = 20_000  # letters of what a caller says, or of a letter that is read to them


@require_safe
@require_role(*ALL_ROLES)
def call(request: MemberRequest) -> HttpResponse:
    opened = open_call(request)
    context = {
        **base_context(opened),
        "page": call_page(opened),
        "notices": opened.check_request.notices,
        "max_story_length": MAX_STORY_LENGTH,
        "max_note_length": MAX_NOTE_LENGTH,
    }
    return render_step(request, "triage/call/call.html", "triage/call/_call.html", context)


@require_safe
@require_role(*ALL_ROLES)
def phrase_index(request: MemberRequest) -> HttpResponse:
    """In the region's words; fetched once by each open page."""
    return JsonResponse(build_phrase_index(open_call(request).check_request))


@require_safe
@require_role(*ALL_ROLES)
def phone_code(request: MemberRequest) -> HttpResponse:
    """An SVG that opens this check on the caller's telephone; 413 with a sentence where it is too long for a code."""
    drawn = BytesIO()
    try:
        code = segno.make_qr(open_call(request).phone_href, error="l")
    except DataOverflowError:
        return HttpResponse(_("This check is too long for a code. Send the link as text."), status=413)
    code.save(drawn, kind="svg", border=4, dark="#000", light="#fff")
    return HttpResponse(drawn.getvalue(), content_type="image/svg+xml")
