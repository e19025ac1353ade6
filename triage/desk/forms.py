"""The desk's forms, but for the firm's settings. Fields that fail say what is wrong and what to do."""

from typing import Any

from django import forms
from django.contrib.auth.models import User
from django.contrib.auth.password_validation import validate_password
from django.contrib.auth.validators import UnicodeUsernameValidator
from django.utils.translation import gettext, gettext_lazy

from triage.desk.authentication import MAX_PASSWORD_LENGTH
from triage.models.api_key import MAX_NAME_LENGTH
from triage.models.firm import Role

MAX_USERNAME_LENGTH = 150


def username_field() -> forms.CharField:
    widget = forms.TextInput(attrs={"autocomplete": "username", "autocapitalize": "none", "spellcheck": "false"})
    return forms.CharField(label=gettext_lazy("Username"), max_length=MAX_USERNAME_LENGTH, widget=widget)


def password_field(label: Any, autocomplete: str, help_text: Any = "") -> forms.CharField:
    widget = forms.PasswordInput(attrs={"autocomplete": autocomplete})
    return forms.CharField(label=label, max_length=MAX_PASSWORD_LENGTH, strip=False, widget=widget, help_text=help_text)


NEW_PASSWORD_HELP = gettext_lazy(
    "At least 8 characters, not a common word and not like your username. A short sentence works well."
)


class SignInForm(forms.Form):
    account = username_field()
    password = password_field(gettext_lazy("Password"), "current-password")


class CodeForm(forms.Form):
    code = forms.CharField(
        label=gettext_lazy("Six-digit code"),
        max_length=20,
        widget=forms.TextInput(attrs={"autocomplete": "one-time-code", "inputmode": "numeric"}),
    )


class PasswordForm(forms.Form):
    """A new password for who knows the old one."""

    old = password_field(gettext_lazy("Current password"), "current-password")
    new = password_field(gettext_lazy("New password"), "new-password", NEW_PASSWORD_HELP)

    def __init__(self, user: User, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.user = user

    def clean_new(self) -> str:
        new = str(self.cleaned_data["new"])
        validate_password(new, self.user)
        return new


class AccountForm(forms.Form):
    """A new account for who was invited."""

    account = username_field()
    password = password_field(gettext_lazy("Password"), "new-password", NEW_PASSWORD_HELP)

    def clean_account(self) -> str:
        name = str(User.normalize_username(self.cleaned_data["account"]))
        UnicodeUsernameValidator()(name)
        if User.objects.filter(username__iexact=name).exists():
            raise forms.ValidationError(gettext("This username is not available. Choose another one."))
        return name

    def clean(self) -> dict[str, Any]:
        data = self.cleaned_data
        if "password" in data:
            try:
                validate_password(data["password"], User(username=data.get("account", "")))
            except forms.ValidationError as weak:
                self.add_error("password", weak)
        return data


class InvitationForm(forms.Form):
    name = forms.CharField(
        label=gettext_lazy("Name"), max_length=120, help_text=gettext_lazy("Who the invitation is for.")
    )
    role = forms.ChoiceField(label=gettext_lazy("Role"), choices=Role.choices, initial=Role.REPAIRER)


class RoleForm(forms.Form):
    role = forms.ChoiceField(choices=Role.choices)


class KeyForm(forms.Form):
    name = forms.CharField(
        label=gettext_lazy("Name"),
        max_length=MAX_NAME_LENGTH,
        help_text=gettext_lazy(
            "Which system uses it, such as: telephone menu. Create one key for each system, to revoke it alone."
        ),
    )
