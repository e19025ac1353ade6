"""A key is shown once and works until it is revoked; the database holds nothing that opens anything."""

from datetime import timedelta

import pytest
from django.forms.models import model_to_dict
from django.utils import timezone

from tests.firm_builders import make_firm
from triage.jobsheet.errors import Refused
from triage.models import ApiKey
from triage.web.api_keys import authenticate_key, make_key, revoke_key

pytestmark = pytest.mark.django_db


def test_a_key_works_and_is_kept_as_a_hash():
    key, secret = make_key(firm=make_firm(), name="  telephone   menu ")
    assert secret.startswith("ofc_")
    assert len(secret) == 47
    assert authenticate_key(secret) == key
    assert key.name == "telephone menu"
    assert secret not in str(model_to_dict(key))
    assert key.prefix == secret[:8]


def test_two_keys_differ():
    firm = make_firm()
    assert make_key(firm=firm, name="a")[1] != make_key(firm=firm, name="a")[1]


@pytest.mark.parametrize("name", ["", " \x00 ", "n" * 81])
def test_a_key_needs_a_name(name):
    with pytest.raises(Refused, match="Give the key a name of 1 to 80 characters that says what uses it"):
        make_key(firm=make_firm(), name=name)
    assert not ApiKey.objects.exists()


def test_a_revoked_key_opens_nothing_and_stays_in_the_list():
    key, secret = make_key(firm=make_firm(), name="old")
    assert revoke_key(key=key)
    assert not revoke_key(key=key)
    assert authenticate_key(secret) is None
    assert ApiKey.objects.get().revoked


def test_what_is_no_key_opens_nothing():
    make_key(firm=make_firm(), name="one")
    assert authenticate_key("") is None
    assert authenticate_key("ofc_\ud800") is None


def test_use_is_noted_to_the_minute():
    key, secret = make_key(firm=make_firm(), name="one")
    authenticate_key(secret)
    first = ApiKey.objects.get(pk=key.pk).last_used
    authenticate_key(secret)
    assert ApiKey.objects.get(pk=key.pk).last_used == first
    ApiKey.objects.update(last_used=timezone.now() - timedelta(minutes=2))
    authenticate_key(secret)
    assert ApiKey.objects.get(pk=key.pk).last_used >= first
