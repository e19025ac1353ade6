"""A firm's staff: a link works once, and a firm never loses its last owner."""

from datetime import timedelta

import pytest
from django.contrib.auth.models import User
from django.utils import timezone

from tests.desk.clients import PASSWORD, make_account
from tests.firm_builders import make_firm, make_member
from triage.desk import staff
from triage.jobsheet.errors import Refused
from triage.models import Invitation, Member
from triage.models.firm import Role

pytestmark = pytest.mark.django_db


def test_a_link_opens_its_invitation_and_its_token_is_not_kept():
    token = staff.invite(firm=make_firm(), name=" Kim\n", role="agent")
    kept = Invitation.objects.get()
    assert staff.open_invitation(token) == kept
    assert (kept.name, kept.role) == ("Kim", "agent")
    assert token not in str(vars(kept))
    assert staff.open_invitation(token[:-1]) is None
    assert staff.open_invitation("") is None


def test_a_link_ends():
    token = staff.invite(firm=make_firm(), name="Kim", role="agent")
    past = timezone.now() - timedelta(days=8)
    Invitation.objects.update(created=past, expires=past + staff.INVITATION_LIFETIME)
    assert staff.open_invitation(token) is None


def test_a_link_lets_one_person_in():
    firm = make_firm()
    token = staff.invite(firm=firm, name="Kim", role="agent")
    invitation = staff.open_invitation(token)
    member = staff.join_with_new_account(invitation=invitation, username="kim", password=PASSWORD)
    assert (member.firm, member.role, member.user.check_password(PASSWORD)) == (firm, "agent", True)
    assert staff.open_invitation(token) is None
    assert staff.join(invitation=invitation, user=make_account("second")) is None
    assert staff.join_with_new_account(invitation=invitation, username="third", password=PASSWORD) is None
    assert not User.objects.filter(username="third").exists()


def test_a_name_taken_meanwhile_leaves_the_link_whole():
    token = staff.invite(firm=make_firm(), name="Kim", role="agent")
    make_account("kim")
    invitation = staff.open_invitation(token)
    assert staff.join_with_new_account(invitation=invitation, username="kim", password=PASSWORD) is None
    assert staff.open_invitation(token) == invitation


def test_who_is_in_the_firm_already_does_not_use_the_link_up():
    firm = make_firm()
    member = make_member(firm)
    token = staff.invite(firm=firm, name="Kim", role="owner")
    assert staff.join(invitation=staff.open_invitation(token), user=member.user) is None
    assert staff.open_invitation(token) is not None
    member.refresh_from_db()
    assert member.role == Role.REPAIRER


def test_a_withdrawn_link_opens_nothing():
    token = staff.invite(firm=make_firm(), name="Kim", role="agent")
    staff.withdraw(invitation=Invitation.objects.get())
    assert staff.open_invitation(token) is None


def test_the_last_owner_neither_goes_nor_steps_down():
    firm = make_firm()
    owner = make_member(firm, Role.OWNER)
    make_member(make_firm(), Role.OWNER)
    for deed in (lambda: staff.remove(member=owner), lambda: staff.change_role(member=owner, role="agent")):
        with pytest.raises(Refused, match="The firm would have no owner left"):
            deed()
    second = make_member(firm, Role.REPAIRER)
    staff.change_role(member=second, role="owner")
    staff.remove(member=owner)
    assert [member.role for member in Member.objects.filter(firm=firm)] == ["owner"]
    assert User.objects.filter(pk=owner.user_id).exists()


def test_a_lost_second_factor_is_reset():
    member = make_member(make_firm(), totp_secret="AAAA", totp_last=5)
    staff.reset_second_factor(member=member)
    member.refresh_from_db()
    assert (member.totp_secret, member.totp_last) == ("", 0)
