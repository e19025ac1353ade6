"""`manage.py firm`: a firm and its owner's link, and a sentence for every mistake."""

import re
from io import StringIO

import pytest
from django.core.management import CommandError, call_command

from triage.models import Firm, Invitation

pytestmark = pytest.mark.django_db


def run(*data):
    out = StringIO()
    call_command("firm", *data, stdout=out)
    return out.getvalue()


def test_a_firm_and_a_link_that_opens(client):
    made = "Firm hearth is made. Next: manage.py firm invite-owner hearth NAME\n"
    assert run("add", "hearth", "Hearth & Hob") == made
    assert Firm.objects.get().region == "gb-eng"
    link = re.search(r"/desk/invitation/\S+", run("invite-owner", "hearth", "Kim"))[0]
    assert client.get(link).status_code == 200
    assert Invitation.objects.get().role == "owner"


@pytest.mark.parametrize(
    ("data", "text"),
    [
        (("add", "hearth two", "Hearth"), "valid “slug”"),
        (("add", "hearth", "Hearth", "--region", "atlantis"), "There is no region atlantis. Use one of: au,"),
        (("add", "hearth", ""), "cannot be blank"),
        (("invite-owner", "nobody", "Kim"), "There is no firm nobody. Make it first: manage.py firm add nobody NAME"),
    ],
)
def test_a_mistake_is_told(data, text):
    with pytest.raises(CommandError, match=re.escape(text)) as refused:
        run(*data)
    assert refused.value.returncode == 2
    assert not Firm.objects.exists()


def test_a_name_is_taken_once():
    run("add", "hearth", "Hearth")
    with pytest.raises(CommandError, match="already exists"):
        run("add", "hearth", "Another")
