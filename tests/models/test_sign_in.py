"""Tries and invitations: the database holds the rules too."""

from datetime import timedelta

import pytest
from django.db import IntegrityError
from django.utils import timezone

from tests.firm_builders import make_firm
from triage.models import Invitation, SignInTry

pytestmark = pytest.mark.django_db


def make_invitation(**changes):
    now = timezone.now()
    data = {"name": "Kim", "role": "agent", "token_hash": "h", "created": now, "expires": now + timedelta(days=1)}
    return Invitation.objects.create(firm=make_firm(slug="hearth"), **(data | changes))


@pytest.mark.parametrize(
    ("changes", "rule"),
    [({"role": "king"}, "invitation_role_is_known"), ({"expires": timezone.now() - timedelta(1)}, "invitation_ends")],
)
def test_the_database_refuses(changes, rule):
    with pytest.raises(IntegrityError, match=rule):
        make_invitation(**changes)


def test_they_say_what_they_are():
    assert str(make_invitation()) == "Kim (agent, hearth)"
    assert str(SignInTry(at=timezone.now().replace(2030, 1, 2, 3, 4))) == "try at 2030-01-02 03:04"
