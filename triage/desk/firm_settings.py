"""The only writer of a firm's settings and of its webhook's secret."""

import logging
from collections.abc import Mapping
from typing import Any

from triage.jobsheet.formats.webhook import new_secret
from triage.models import Firm

log = logging.getLogger(__name__)


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
