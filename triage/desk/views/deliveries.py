"""What was sent to the firm's own system and mailbox, what waits, and what was given up."""

from django.contrib import messages
from django.core.paginator import Paginator
from django.http import Http404, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_POST, require_safe

from triage.desk.access import require_role
from triage.desk.layout import render_page
from triage.desk.request import MemberRequest
from triage.jobsheet.actions import queue_test, requeue
from triage.jobsheet.errors import Refused
from triage.models import Delivery
from triage.models.delivery import DeliveryState
from triage.models.firm import Role

PAGE_SIZE = 50


@require_safe
@require_role(Role.OWNER)
def deliveries(request: MemberRequest) -> HttpResponse:
    firm = request.member.firm
    log = Delivery.objects.filter(firm=firm).select_related("sheet").order_by("-created", "-pk")
    failed = log.filter(state=DeliveryState.FAILED)
    only_failed = request.GET.get("state") == DeliveryState.FAILED
    page = Paginator(failed if only_failed else log, PAGE_SIZE).get_page(request.GET.get("page"))
    context = {
        "page": page,
        "failed": failed.count(),
        "only_failed": only_failed,
        "has_webhook": bool(firm.webhook_url),
    }
    return render_page(request, "deliveries", context)


@require_POST
@require_role(Role.OWNER)
def send_test_delivery(request: MemberRequest) -> HttpResponse:
    try:
        queue_test(firm=request.member.firm)
        messages.success(request, _("Test queued. Reload this page to see it at the top of the log."))
    except Refused as refused:
        messages.error(request, str(refused))
    return HttpResponseRedirect(reverse("desk-deliveries"))


@require_POST
@require_role(Role.OWNER)
def retry_delivery(request: MemberRequest, number: int) -> HttpResponse:
    delivery = Delivery.objects.filter(firm=request.member.firm_id, pk=number).first()
    if delivery is None:
        raise Http404
    if requeue(delivery=delivery):
        messages.success(request, _("Queued for retry."))
    else:
        messages.error(request, _("Only a failed delivery can be retried."))
    return HttpResponseRedirect(reverse("desk-deliveries"))
