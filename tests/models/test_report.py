"""Reckonings: one of each topic for a firm, and one for the pack."""

import pytest
from django.db import IntegrityError, transaction
from django.utils import timezone

from tests.firm_builders import make_firm
from triage.models import Report


@pytest.mark.django_db
def test_there_is_one_of_each_topic():
    firm, now = make_firm(), timezone.now().replace(2030, 1, 2)
    data = {"topic": "calibration", "contents": {}, "pack_version": "1", "computed": now}
    kept = [Report.objects.create(firm=whose, **data) for whose in (firm, make_firm(), None)]
    assert str(kept[0]) == "calibration, 2030-01-02"
    for whose in (firm, None):
        with pytest.raises(IntegrityError), transaction.atomic():
            Report.objects.create(firm=whose, **data)
