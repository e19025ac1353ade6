"""The QR code that opens this check on the caller's telephone where the call left it."""

from io import BytesIO

import segno
from django.http import HttpResponse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_safe
from segno.encoder import DataOverflowError

from triage.desk.access import ALL_ROLES, require_role
from triage.desk.call.open_call import open_call
from triage.desk.request import MemberRequest


@require_safe
@require_role(*ALL_ROLES)
def phone_code(request: MemberRequest) -> HttpResponse:
    """An SVG; 413 with a sentence where the check is too long for a code."""
    drawn = BytesIO()
    try:
        code = segno.make_qr(open_call(request).phone_href, error="l")
    except DataOverflowError:
        return HttpResponse(_("This check is too long for a code. Send the link as text."), status=413)
    code.save(drawn, kind="svg", border=4, dark="#000", light="#fff")
    return HttpResponse(drawn.getvalue(), content_type="image/svg+xml")
