"""The firm's job sheets, newest first, and how to narrow them down."""

from typing import cast

from django.http import HttpResponse
from django.views.decorators.http import require_safe

from triage.desk.access import ALL_ROLES, require_role
from triage.desk.layout import DeskRequest, render_page
from triage.desk.presenters.inbox import inbox_page, parse_filter
from triage.models import Member


@require_safe
@require_role(*ALL_ROLES)
def inbox(request: DeskRequest) -> HttpResponse:
    wanted = parse_filter(request.GET)
    page = inbox_page(cast(Member, request.member), wanted, request.GET.get("page", "1"))
    return render_page(request, "inbox", {"inbox": page})
