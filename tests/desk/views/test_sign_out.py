"""Signing out ends the session, and a link cannot do it."""

import pytest
from django.urls import reverse

from tests.desk.clients import client_as


@pytest.mark.django_db
def test_a_session_ends():
    client = client_as()
    key = client.session.session_key
    assert client.get(reverse("desk-sign-out")).status_code == 405
    assert client.post(reverse("desk-sign-out")).url == reverse("desk-sign-in")
    client.cookies["sessionid"] = key
    assert client.get(reverse("desk-inbox")).url.startswith(reverse("desk-sign-in"))
