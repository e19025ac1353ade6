"""Every TRIAGE_ setting: its name, its default and one line of help.

The rest of the package asks here and never reads `django.conf.settings` for a TRIAGE_ name itself.
"""

from dataclasses import dataclass

from django.conf import settings
from django.core.exceptions import ImproperlyConfigured


@dataclass(frozen=True)
class Setting:
    """A text that a site may choose in its Django settings. `old_name` is refused, with this one named instead."""

    name: str
    default: str
    meaning: str
    old_name: str = ""

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

BOOKING_RATE_LIMIT = Setting(
    name="TRIAGE_BOOKING_RATE_LIMIT",
    default="60",
    meaning="How many hand-overs one address may send in ten minutes by the forms of this site.",
    old_name="TRIAGE_HAND_OVERS",
)

METRICS_ALLOWED_NETWORKS = Setting(
    name="TRIAGE_METRICS_ALLOWED_NETWORKS",
    default="none",
    meaning="Addresses and networks that may read /metrics/, with commas between them, or none.",
    old_name="TRIAGE_METRICS_FROM",
)

METRICS_TOKEN = Setting(
    name="TRIAGE_METRICS_TOKEN",
    default="none",
    meaning="A secret of 32 characters or more that opens /metrics/ as a bearer token, or none.",
)

METRICS_DIR = Setting(
    name="TRIAGE_METRICS_DIR",
    default="none",
    meaning="A directory in which the processes of one host keep their counts of steps, or none for each by itself.",
    old_name="TRIAGE_METRICS_FOLDER",
)

SETTINGS = (
    DEFAULT_REGION,
    WEBHOOK_NETWORKS,
    BOOKING_RATE_LIMIT,
    METRICS_ALLOWED_NETWORKS,
    METRICS_TOKEN,
    METRICS_DIR,
)
