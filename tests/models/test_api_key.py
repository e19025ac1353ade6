"""A key belongs to a firm and is named."""

import pytest
from django.db import IntegrityError, transaction
from django.utils import timezone

from tests.firm_builders import make_firm
from triage.models import ApiKey


@pytest.mark.django_db
def test_the_database_refuses_a_key_without_a_name_and_the_same_key_twice():
    firm, now = make_firm(slug="hearth"), timezone.now()
    with pytest.raises(IntegrityError), transaction.atomic():
        ApiKey.objects.create(firm=firm, name="", key_hash="a", created=now)
    key = ApiKey.objects.create(firm=firm, name="menu", key_hash="a", created=now)
    assert (str(key), key.prefix) == ("menu (hearth)", "")
    with pytest.raises(IntegrityError):
        ApiKey.objects.create(firm=firm, name="other", key_hash="a", created=now)
