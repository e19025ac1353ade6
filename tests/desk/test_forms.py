"""What the doors ask for: a weak password or a bad name is told with its remedy."""

import pytest

from tests.desk.clients import PASSWORD, make_account
from triage.desk.forms import AccountForm, CodeForm, InvitationForm, PasswordForm, SignInForm

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(
    ("account", "password", "field"),
    [
        ("Robin", PASSWORD, "account"),
        ("a b", PASSWORD, "account"),
        ("", PASSWORD, "account"),
        ("kim\x00", PASSWORD, "account"),
        ("k" * 151, PASSWORD, "account"),
        ("kim", "short", "password"),
        ("kim", "password1234", "password"),
        ("kimberley-grey", "kimberley-grey1", "password"),
    ],
)
def test_a_new_account_is_refused(account, password, field):
    make_account("robin")
    form = AccountForm({"account": account, "password": password})
    assert not form.is_valid()
    assert set(form.errors) == {field}


def test_a_new_account_is_taken_with_its_name_normalised():
    form = AccountForm({"account": "ki\uff4d", "password": PASSWORD})
    assert form.is_valid()
    assert form.cleaned_data["account"] == "kim"


def test_a_new_password_is_held_against_the_name_of_its_owner():
    user = make_account("kimberley-grey")
    assert set(PasswordForm(user, {"old": "x", "new": "kimberley-grey1"}).errors) == {"new"}
    assert PasswordForm(user, {"old": "x", "new": PASSWORD}).is_valid()


def test_spaces_around_a_password_are_part_of_it():
    form = SignInForm({"account": " robin ", "password": " secret "})
    assert form.is_valid()
    assert form.cleaned_data == {"account": "robin", "password": " secret "}


def test_a_role_is_one_of_three():
    assert set(InvitationForm({"name": "Kim", "role": "king"}).errors) == {"role"}
    assert CodeForm({"code": "1" * 21}).errors
