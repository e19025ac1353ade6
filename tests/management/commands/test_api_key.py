"""`manage.py api_key`: a key is made and shown once, listed without its words, and revoked."""

from io import StringIO

import pytest
from django.core.management import CommandError, call_command

from tests.firm_builders import make_firm
from triage.models import ApiKey
from triage.web.api_keys import authenticate_key

pytestmark = pytest.mark.django_db


def run(*text):
    out = StringIO()
    call_command("api_key", *text, stdout=out)
    return out.getvalue()


def test_a_key_is_made_listed_and_revoked():
    make_firm(slug="hearth")
    result, shown = run("make", "hearth", "telephone menu").splitlines()
    key = ApiKey.objects.get()
    assert result == f"Key {key.pk}, telephone menu. It is shown this once, so keep it where no browser reads it:"
    assert authenticate_key(shown) == key
    listed = run("list", "hearth")
    assert listed.startswith(f"{key.pk}  telephone menu: made ")
    assert "last used" in listed
    assert listed.endswith("in use\n")
    assert shown not in listed
    assert run("revoke", "hearth", str(key.pk)) == f"Key {key.pk} is revoked.\n"
    assert run("revoke", "hearth", str(key.pk)) == f"Key {key.pk} was revoked before.\n"
    assert "revoked 20" in run("list", "hearth")


def test_an_unused_key_says_so():
    make_firm(slug="hearth")
    run("make", "hearth", "telephone menu")
    assert "never used, in use" in run("list", "hearth")


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        (("list", "nobody"), "There is no such firm. Give its name as it stands in addresses."),
        (("make", "hearth", " "), "Give the key a name of 1 to 80 characters that says what uses it."),
        (("revoke", "hearth", "999"), "The firm has no key with this number. Its keys are listed by: api_key list."),
    ],
)
def test_a_mistake_is_told_in_a_sentence(text, sentence):
    make_firm(slug="hearth")
    with pytest.raises(CommandError) as caught:
        run(*text)
    assert str(caught.value) == sentence
