"""Every TRIAGE_ setting: its name, its default and one line of help.

The rest of the package asks here and never reads `django.conf.settings` for a TRIAGE_ name itself.
"""

from dataclasses import dataclass

from django.conf import settings
from django.core.exceptions import ImproperlyConfigured


@dataclass(frozen=True)
class Setting:
    """A text that a site may choose in its Django settings."""

    name: str
    default: str
    meaning: str

    def value(self) -> str:
        """What the site chose, else the default; ImproperlyConfigured when it is not a text."""
        chosen = getattr(settings, self.name, self.default)
        if not isinstance(chosen, str) or not chosen:
            raise ImproperlyConfigured(f"{self.name} is {chosen!r}. {self.meaning} Use a text, as in {self.default!r}.")
        return chosen


DEFAULT_REGION = Setting(
    name="TRIAGE_DEFAULT_REGION",
    default="gb-eng",
    meaning="The region whose rules and emergency numbers apply until a person chooses another.",
)

WEBHOOK_NETWORKS = Setting(
    name="TRIAGE_WEBHOOK_NETWORKS",
    default="public",
    meaning="Where webhooks may go: public for https addresses on the internet, any to try a receiver on this machine.",
)

SETTINGS = (DEFAULT_REGION, WEBHOOK_NETWORKS)
