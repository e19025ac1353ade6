"""What was sent to the firm's own system and mailbox, what waits, and what was given up."""

from typing import cast

from django.core.paginator import Paginator
from django.http import Http404, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_POST, require_safe

from triage.desk.access import may
from triage.desk.showing import DeskRequest, say_next, show
from triage.jobsheet.actions import send_test, try_again
from triage.jobsheet.errors import Refused
from triage.models import Delivery, Member
from triage.models.delivery import State
from triage.models.firm import Role

ON_A_PAGE = 50


@require_safe
@may(Role.OWNER)
def deliveries(request: DeskRequest) -> HttpResponse:
    firm = cast(Member, request.member).firm
    log = Delivery.objects.filter(firm=firm).select_related("sheet").order_by("-created", "-pk")
    dead = log.filter(state=State.DEAD)
    only_dead = request.GET.get("state") == State.DEAD
    page = Paginator(dead if only_dead else log, ON_A_PAGE).get_page(request.GET.get("page"))
    context = {"page": page, "dead": dead.count(), "only_dead": only_dead, "has_webhook": bool(firm.webhook_url)}
    return show(request, "deliveries", context)


@require_POST
@may(Role.OWNER)
def test_delivery(request: DeskRequest) -> HttpResponse:
    try:
        send_test(firm=cast(Member, request.member).firm)
        say_next(request, _("A test is on its way. It stands at the top of the log; load this page again to see it."))
    except Refused as refused:
        say_next(request, str(refused))
    return HttpResponseRedirect(reverse("desk-deliveries"))


@require_POST
@may(Role.OWNER)
def delivery_again(request: DeskRequest, number: int) -> HttpResponse:
    delivery = Delivery.objects.filter(firm=cast(Member, request.member).firm_id, pk=number).first()
    if delivery is None:
        raise Http404
    if try_again(delivery=delivery):
        say_next(request, _("It is back in line and will be tried in a moment."))
    else:
        say_next(request, _("Only what was given up can be tried again. This one was not."))
    return HttpResponseRedirect(reverse("desk-deliveries"))
