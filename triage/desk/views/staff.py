"""The firm's staff: who is in, invitations by a link that works once, roles, leaving, a lost second factor."""

from django.contrib import messages
from django.http import Http404, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods, require_POST

from triage.desk.access import require_role
from triage.desk.forms import InvitationForm, RoleForm
from triage.desk.layout import render_page
from triage.desk.request import MemberRequest
from triage.desk.staff import INVITATION_LIFETIME, change_role, invite, remove, reset_second_factor, withdraw
from triage.jobsheet.errors import Refused
from triage.models import Invitation, Member
from triage.models.firm import Role

SHOW_ONCE = "desk_invitation"


@require_http_methods(["GET", "HEAD", "POST"])
@require_role(Role.OWNER)
def staff(request: MemberRequest) -> HttpResponse:
    firm = request.member.firm
    form, status = InvitationForm(), 200
    if request.method == "POST":
        form, status = InvitationForm(request.POST), 400
        if form.is_valid():
            token = invite(firm=firm, **form.cleaned_data)
            request.session[SHOW_ONCE] = request.build_absolute_uri(reverse("desk-invitation", args=[token]))
            return HttpResponseRedirect(reverse("desk-staff"))
    context = {
        "form": form,
        "members": firm.members.select_related("user").order_by("role", "user__username"),
        "invitations": Invitation.objects.filter(firm=firm, used__isnull=True, expires__gt=timezone.now()).order_by(
            "expires"
        ),
        "roles": Role.choices,
        "link": request.session.pop(SHOW_ONCE, "") if status == 200 else "",
        "days": INVITATION_LIFETIME.days,
    }
    return render_page(request, "staff", context, status=status)


@require_POST
@require_role(Role.OWNER)
def staff_action(request: MemberRequest, number: int, action: str) -> HttpResponse:
    """One deed to one member of the firm."""
    member = Member.objects.filter(firm=request.member.firm_id, pk=number).select_related("user").first()
    if member is None:
        raise Http404
    try:
        messages.success(request, _apply(member, action, request))
    except Refused as refused:
        messages.error(request, str(refused))
    return HttpResponseRedirect(reverse("desk-staff"))


def _apply(member: Member, action: str, request: MemberRequest) -> str:
    names = {"who": member.user.get_username()}
    if action == "role":
        form = RoleForm(request.POST)
        if not form.is_valid():
            return _("Choose a role from the list.")
        change_role(member=member, role=form.cleaned_data["role"])
        return _("Role of %(who)s changed.") % names
    if action == "remove":
        remove(member=member)
        return _("%(who)s was removed.") % names
    reset_second_factor(member=member)
    return _("Two-factor authentication of %(who)s was reset. They can set it up again.") % names


@require_POST
@require_role(Role.OWNER)
def withdraw_invitation(request: MemberRequest, number: int) -> HttpResponse:
    found = Invitation.objects.filter(firm=request.member.firm_id, pk=number).first()
    if found is None:
        raise Http404
    withdraw(invitation=found)
    messages.success(request, _("Invitation withdrawn."))
    return HttpResponseRedirect(reverse("desk-staff"))
