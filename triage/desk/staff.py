"""The only writer of a firm's staff: invitations, roles, leaving, a lost second factor.

A firm never loses its last owner: whoever would be the last to go or to step down is refused.
"""

import logging
import secrets
from datetime import timedelta

from django.contrib.auth.models import User
from django.db import IntegrityError, transaction
from django.utils import timezone
from django.utils.translation import gettext as _

from triage.desk.second_factor import disable_second_factor
from triage.jobsheet.errors import FieldProblem, Refused
from triage.jobsheet.plain_text import clean_line
from triage.jobsheet.sender_token import hash_of
from triage.models import Firm, Invitation, Member
from triage.models.firm import Role

log = logging.getLogger(__name__)

INVITATION_LIFETIME = timedelta(days=7)


def invite(*, firm: Firm, name: str, role: str) -> str:
    """The token of a link that lets one person in, once. Only its hash is kept."""
    token, now = secrets.token_urlsafe(32), timezone.now()
    invitation = Invitation.objects.create(
        firm=firm,
        name=clean_line(name),
        role=Role(role),
        token_hash=hash_of(token),
        created=now,
        expires=now + INVITATION_LIFETIME,
    )
    log.info("invitation %s made for firm %s", invitation.pk, firm.pk)
    return token


def open_invitation(token: str) -> Invitation | None:
    """The invitation this token opens, while it may still be used."""
    waiting = Invitation.objects.filter(token_hash=hash_of(token), used__isnull=True, expires__gt=timezone.now())
    return waiting.select_related("firm").first()


def join(*, invitation: Invitation, user: User) -> Member | None:
    """The person's place in the firm; None where the link was used meanwhile, or they are in it already."""
    try:
        with transaction.atomic():
            unused = Invitation.objects.filter(pk=invitation.pk, used__isnull=True)
            if unused.update(used=timezone.now()) != 1:
                return None
            return Member.objects.create(user=user, firm=invitation.firm, role=invitation.role)
    except IntegrityError:
        return None


def join_with_new_account(*, invitation: Invitation, username: str, password: str) -> Member | None:
    """As `join`, for who has no account yet; where the link or the name was taken meanwhile, there is none after."""
    try:
        with transaction.atomic():
            user = User.objects.create_user(username, password=password)
            member = join(invitation=invitation, user=user)
            if member is None:
                transaction.set_rollback(True)
            return member
    except IntegrityError:
        return None


def withdraw(*, invitation: Invitation) -> None:
    Invitation.objects.filter(pk=invitation.pk, used__isnull=True).delete()


@transaction.atomic
def change_role(*, member: Member, role: str) -> None:
    if role != Role.OWNER:
        _require_another_owner(member)
    Member.objects.filter(pk=member.pk).update(role=Role(role))
    log.info("member %s of firm %s is %s now", member.pk, member.firm_id, role)


@transaction.atomic
def remove(*, member: Member) -> None:
    """Takes the place away at once; the person's account stays, because it may serve another firm."""
    _require_another_owner(member)
    log.info("member %s removed from firm %s", member.pk, member.firm_id)
    member.delete()


def reset_second_factor(*, member: Member) -> None:
    disable_second_factor(member)
    log.info("second factor of member %s reset", member.pk)


def _require_another_owner(member: Member) -> None:
    owners = list(Member.objects.select_for_update().filter(firm=member.firm_id, role=Role.OWNER))
    if [owner.pk for owner in owners] == [member.pk]:
        raise Refused(
            [FieldProblem("role", _("The firm would have no owner left. Make somebody else an owner first."))]
        )
