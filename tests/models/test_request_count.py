"""One row for a caller in a stretch of time."""

from datetime import UTC, datetime

import pytest
from django.db import IntegrityError

from triage.models import RequestCount


@pytest.mark.django_db
def test_a_caller_has_one_row_in_a_stretch():
    data = {"bucket": "a", "ends": datetime(2031, 5, 26, tzinfo=UTC), "count": 3}
    assert str(RequestCount.objects.create(**data)) == "3 until 2031-05-26 00:00:00"
    with pytest.raises(IntegrityError):
        RequestCount.objects.create(**data)
