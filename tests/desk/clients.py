"""Who comes to the desk, each with a browser of their own."""

from django.contrib.auth.models import User
from django.test import Client

from tests.firm_builders import make_firm, make_member
from triage.desk.authentication import MEMBER_KEY
from triage.models.firm import Role

PASSWORD = "a kettle of warm words"


def client_of(member):
    """A browser in which this member is in the firm."""
    client = Client()
    client.force_login(member.user)
    session = client.session
    session[MEMBER_KEY] = member.pk
    session.save()
    return client


def client_as(role=Role.OWNER, firm=None):
    return client_of(make_member(firm or make_firm(), role))


def make_account(name="robin", password=PASSWORD, **changes):
    return User.objects.create_user(name, password=password, **changes)
