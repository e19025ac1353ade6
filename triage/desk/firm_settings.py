"""A firm's settings: the form, and the only writer of them and of the webhook's secret.

Lists are lines of text, as the firm writes them; each line that is wrong is named.
"""

import logging
from collections.abc import Mapping
from typing import Any

from django import forms
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy

from triage.jobsheet.formats.webhook import new_secret
from triage.jobsheet.networks import ForbiddenTarget, parse_webhook_url
from triage.jobsheet.plain_text import clean_line, clean_text
from triage.knowledge.library import library
from triage.models import Firm
from triage.models.firm import MAX_RETENTION_DAYS, is_colour
from triage.web.accent import contrast_error
from triage.web.framing import is_origin

log = logging.getLogger(__name__)

MAX_LINES = 50
MAX_LINE_LENGTH = 200


def lines_field(label: Any, help_text: Any) -> forms.CharField:
    widget = forms.Textarea(attrs={"rows": 4, "spellcheck": "false"})
    return forms.CharField(label=label, help_text=help_text, required=False, max_length=10_000, widget=widget)


class SettingsForm(forms.Form):
    name = forms.CharField(label=gettext_lazy("Name of the firm"), max_length=120)
    address = forms.CharField(label=gettext_lazy("Address"), max_length=300, required=False)
    telephone = forms.CharField(label=gettext_lazy("Telephone"), max_length=40, required=False)
    email = forms.EmailField(
        label=gettext_lazy("E-mail for job sheets"),
        required=False,
        help_text=gettext_lazy("Every job sheet is sent here too. Leave it empty for none."),
    )
    region = forms.ChoiceField(
        label=gettext_lazy("Region"),
        help_text=gettext_lazy("Whose electricity supply, terms and rules your customers see first."),
    )
    accent = forms.CharField(
        label=gettext_lazy("Colour"),
        max_length=7,
        help_text=gettext_lazy("As # and six hexadecimal digits. It has to be readable on a light page."),
    )
    origins = lines_field(
        gettext_lazy("Websites that may show the check"),
        gettext_lazy("One per line, as in https://www.example.org, without a path."),
    )
    prices = lines_field(gettext_lazy("Prices"), gettext_lazy("One per line, with a colon, as in Call-out: £60."))
    hours = lines_field(
        gettext_lazy("Hours"), gettext_lazy("One per line, with a colon, as in Monday to Friday: 8 to 18.")
    )
    areas = lines_field(gettext_lazy("Areas you serve"), gettext_lazy("One per line."))
    retention_days = forms.IntegerField(
        label=gettext_lazy("Days a job sheet is kept"),
        min_value=1,
        max_value=MAX_RETENTION_DAYS,
        help_text=gettext_lazy("Then it is erased. Applies to job sheets received from now on."),
    )
    wants_repair_form = forms.BooleanField(
        label=gettext_lazy("Offer the European repair form where it may apply"), required=False
    )
    webhook_url = forms.CharField(
        label=gettext_lazy("Webhook"),
        max_length=500,
        required=False,
        help_text=gettext_lazy(
            "The https address of your own system that receives job sheets. Leave it empty for none."
        ),
    )

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        places = sorted((profile.name, code) for code, profile in library().regions.items())
        region = self.fields["region"]
        if isinstance(region, forms.ChoiceField):
            region.choices = [(code, name) for name, code in places]

    def clean_name(self) -> str:
        name = clean_line(self.cleaned_data["name"])
        if not name:
            raise forms.ValidationError(_("Give the firm a name."))
        return name

    def clean_accent(self) -> str:
        colour = str(self.cleaned_data["accent"]).strip().lower()
        is_colour(colour)
        refusal = contrast_error(colour)
        if refusal:
            raise forms.ValidationError(refusal.message)
        return colour

    def clean_origins(self) -> list[str]:
        written = (line.rstrip("/").lower() for line in _lines(self.cleaned_data["origins"]))
        origins = list(dict.fromkeys(written))
        wrong = next((origin for origin in origins if not is_origin(origin)), None)
        if wrong is not None:
            sentence = _("“%(line)s” is not a web address. Write it like https://www.example.org.")
            raise forms.ValidationError(sentence % {"line": wrong[:80]})
        return origins

    def clean_prices(self) -> dict[str, str]:
        return _pairs(self.cleaned_data["prices"])

    def clean_hours(self) -> dict[str, str]:
        return _pairs(self.cleaned_data["hours"])

    def clean_areas(self) -> list[str]:
        return _lines(self.cleaned_data["areas"])

    def clean_webhook_url(self) -> str:
        address = str(self.cleaned_data["webhook_url"]).strip()
        if address:
            try:
                parse_webhook_url(address)
            except ForbiddenTarget as reason:
                raise forms.ValidationError(str(reason)) from reason
        return address


def initial_settings(firm: Firm) -> dict[str, Any]:
    """The settings as the form shows them."""
    plain = ("name", "address", "telephone", "email", "region", "accent", "retention_days", "wants_repair_form")
    initial = {name: getattr(firm, name) for name in (*plain, "webhook_url")}
    initial |= {name: "\n".join(str(line) for line in getattr(firm, name)) for name in ("origins", "areas")}
    return initial | {name: _as_lines(getattr(firm, name)) for name in ("prices", "hours")}


def _as_lines(pairs: Mapping[str, object]) -> str:
    return "\n".join(f"{name}: {value}" for name, value in pairs.items())


def _lines(text: str) -> list[str]:
    cleaned = (clean_line(line) for line in clean_text(text).split("\n"))
    lines = list(dict.fromkeys(line for line in cleaned if line))
    if len(lines) > MAX_LINES or any(len(line) > MAX_LINE_LENGTH for line in lines):
        limits = {"most": MAX_LINES, "length": MAX_LINE_LENGTH}
        raise forms.ValidationError(_("Write at most %(most)s lines of at most %(length)s characters.") % limits)
    return lines


def _pairs(text: str) -> dict[str, str]:
    pairs = {}
    for line in _lines(text):
        name, colon, value = line.partition(":")
        if not (colon and name.strip() and value.strip()):
            sentence = _("“%(line)s” needs a colon with text on both sides, as in Call-out: £60.")
            raise forms.ValidationError(sentence % {"line": line[:80]})
        pairs[name.strip()] = value.strip()
    return pairs


def change_settings(*, firm: Firm, values: Mapping[str, Any]) -> str:
    """Writes the settings; the secret made for a first webhook, else nothing."""
    for name, value in values.items():
        setattr(firm, name, value)
    new = new_secret() if firm.webhook_url and not firm.webhook_secret else ""
    if new:
        firm.webhook_secret = new
    firm.save(update_fields=[*values, "webhook_secret"] if new else [*values])
    log.info("settings of firm %s changed", firm.pk)
    return new


def rotate_secret(*, firm: Firm) -> str:
    """A new secret; the old one signs nothing from now on."""
    firm.webhook_secret = new_secret()
    firm.save(update_fields=["webhook_secret"])
    log.info("webhook secret of firm %s replaced", firm.pk)
    return firm.webhook_secret
