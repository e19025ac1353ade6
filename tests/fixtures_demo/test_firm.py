"""The invented firm is loaded whole, once, and by the same actions as a real one."""

import pytest
from django.contrib.auth import authenticate

from fixtures_demo.firm import PEOPLE, VISITS, load
from triage.models import Delivery, Firm, JobSheet, Member, Outcome
from triage.web.accent import contrast_error
from triage.web.framing import good_origins

pytestmark = pytest.mark.django_db
SHOP, SITE = "http://localhost:8000", "http://127.0.0.1:8000"


def test_everybody_can_sign_in_and_every_sheet_is_there():
    passwords = load(SHOP, SITE)
    assert [name for name, _password in passwords] == [name for name, _person, _role in PEOPLE]
    assert all(authenticate(username=name, password=password) for name, password in passwords)
    assert {member.role for member in Member.objects.all()} == {"owner", "repairer", "agent"}
    assert JobSheet.objects.count() == len(VISITS)
    assert Outcome.objects.count() == sum(visit.findings is not None for visit in VISITS)
    assert not Delivery.objects.exists()


def test_no_answer_of_it_is_one_the_knowledge_no_longer_has():
    load(SHOP, SITE)
    kept = {sheet.name: dict(sheet.answers) for sheet in JobSheet.objects.all()}
    assert kept == {visit.name: visit.answers for visit in VISITS}


def test_its_colour_and_its_origin_are_such_as_a_firm_may_have():
    load(SHOP, SITE)
    firm = Firm.objects.get()
    assert contrast_error(firm.accent) is None
    assert good_origins(firm.origins) == [SHOP]


def test_a_database_that_has_it_keeps_it():
    load(SHOP, SITE)
    assert load(SHOP, SITE) == []
    assert JobSheet.objects.count() == len(VISITS)
