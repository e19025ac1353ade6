"""What the database itself refuses about firms and members, whoever writes."""

import pytest
from django.core.exceptions import ValidationError
from django.db import IntegrityError, transaction

from tests.firm_builders import make_firm, make_member
from triage.models import Member

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(
    ("constraint", "changes"),
    [
        ("firm_keeps_for_days", {"retention_days": 0}),
        ("firm_keeps_for_days", {"retention_days": 3651}),
        ("firm_webhook_is_signed", {"webhook_secret": ""}),
        ("firm_has_a_name", {"name": ""}),
    ],
)
def test_the_database_refuses(constraint, changes):
    with pytest.raises(IntegrityError, match=constraint), transaction.atomic():
        make_firm(**changes)


@pytest.mark.parametrize("colour", ["#ABCDEF", "a83c12", "#a83c12\n", "red", "#a83c1"])
def test_a_colour_is_six_signs(colour):
    firm = make_firm(accent=colour[:7])
    firm.accent = colour
    with pytest.raises(ValidationError, match="Write the colour as # and six of 0-9 and a-f"):
        firm.full_clean()


def test_a_person_has_one_place_in_a_firm_and_may_have_one_in_another():
    member = make_member(make_firm())
    Member.objects.create(user=member.user, firm=make_firm(), role="agent")
    with pytest.raises(IntegrityError), transaction.atomic():
        Member.objects.create(user=member.user, firm=member.firm, role="owner")


def test_there_is_no_other_role():
    with pytest.raises(IntegrityError, match="member_role_is_known"), transaction.atomic():
        make_member(make_firm(), role="king")


def test_each_has_a_name_to_be_listed_by():
    firm = make_firm(slug="hearth")
    assert (str(firm), str(make_member(firm, username="kim"))) == (firm.name, "kim (repairer, hearth)")
