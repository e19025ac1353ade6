"""The firm's job sheets, newest first, and how to narrow them down."""

from typing import cast

from django.http import HttpResponse
from django.views.decorators.http import require_safe

from triage.desk.access import EVERYBODY_OF_THE_FIRM, may
from triage.desk.presenters.inbox import inbox_page, read_wanted
from triage.desk.showing import DeskRequest, show
from triage.models import Member


@require_safe
@may(*EVERYBODY_OF_THE_FIRM)
def inbox(request: DeskRequest) -> HttpResponse:
    wanted = read_wanted(request.GET)
    page = inbox_page(cast(Member, request.member), wanted, request.GET.get("page", "1"))
    return show(request, "inbox", {"inbox": page})
