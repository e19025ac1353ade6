"""The firm's staff: who is in, invitations by a link that works once, roles, leaving, a lost second factor."""

from typing import cast

from django.http import Http404, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods, require_POST

from triage.desk.access import may
from triage.desk.forms import InvitationForm, RoleForm
from triage.desk.showing import DeskRequest, say_next, show
from triage.desk.staff import INVITATION_LASTS, change_role, invite, remove, reset_second_factor, withdraw
from triage.jobsheet.errors import Refused
from triage.models import Invitation, Member
from triage.models.firm import Role

ONCE = "desk_invitation"


@require_http_methods(["GET", "HEAD", "POST"])
@may(Role.OWNER)
def staff(request: DeskRequest) -> HttpResponse:
    firm = cast(Member, request.member).firm
    form, status = InvitationForm(), 200
    if request.method == "POST":
        form, status = InvitationForm(request.POST), 400
        if form.is_valid():
            token = invite(firm=firm, **form.cleaned_data)
            request.session[ONCE] = request.build_absolute_uri(reverse("desk-invitation", args=[token]))
            return HttpResponseRedirect(reverse("desk-staff"))
    context = {
        "form": form,
        "members": firm.members.select_related("user").order_by("role", "user__username"),
        "invitations": Invitation.objects.filter(firm=firm, used__isnull=True, expires__gt=timezone.now()).order_by(
            "expires"
        ),
        "roles": Role.choices,
        "link": request.session.pop(ONCE, "") if status == 200 else "",
        "days": INVITATION_LASTS.days,
    }
    return show(request, "staff", context, status=status)


@require_POST
@may(Role.OWNER)
def staff_deed(request: DeskRequest, number: int, deed: str) -> HttpResponse:
    """One deed to one member of the firm."""
    member = Member.objects.filter(firm=cast(Member, request.member).firm_id, pk=number).select_related("user").first()
    if member is None:
        raise Http404
    try:
        sentence = _do(member, deed, request)
    except Refused as refused:
        sentence = str(refused)
    say_next(request, sentence)
    return HttpResponseRedirect(reverse("desk-staff"))


def _do(member: Member, deed: str, request: DeskRequest) -> str:
    who = {"who": member.user.get_username()}
    if deed == "role":
        form = RoleForm(request.POST)
        if not form.is_valid():
            return _("Choose a role from the list.")
        change_role(member=member, role=form.cleaned_data["role"])
        return _("The role of %(who)s is changed.") % who
    if deed == "remove":
        remove(member=member)
        return _("%(who)s is out, from this moment on.") % who
    reset_second_factor(member=member)
    return _("%(who)s signs in without a second factor now, and can set up a new one.") % who


@require_POST
@may(Role.OWNER)
def withdraw_invitation(request: DeskRequest, number: int) -> HttpResponse:
    found = Invitation.objects.filter(firm=cast(Member, request.member).firm_id, pk=number).first()
    if found is None:
        raise Http404
    withdraw(invitation=found)
    say_next(request, _("The link is withdrawn."))
    return HttpResponseRedirect(reverse("desk-staff"))
