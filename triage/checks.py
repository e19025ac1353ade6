"""What must be right before the site starts: the knowledge, and the settings that point into it.

E001  a mistake in a pack, a text or a region: file, line, what is wrong, what to do
E002  the default region does not exist
E003  where webhooks may go is neither public nor any
E004  who may read the metrics is no list of addresses
E005  the metrics' token can be guessed
E006  how many hand-overs an address may send is no number
E007  a setting is set under the name it had before
"""

from typing import Any

from django.conf import settings
from django.core.checks import CheckMessage, Error

from triage.conf import (
    BOOKING_RATE_LIMIT,
    DEFAULT_REGION,
    METRICS_ALLOWED_NETWORKS,
    METRICS_TOKEN,
    SETTINGS,
    WEBHOOK_NETWORKS,
)
from triage.knowledge.library import library
from triage.knowledge.problems import PackProblems
from triage.operations.metrics_auth import MIN_TOKEN_LENGTH, NO_TOKEN, networks


def check_knowledge(**_options: Any) -> list[CheckMessage]:
    """Every mistake in the knowledge, all at once."""
    try:
        library()
    except PackProblems as found:
        return [
            Error(f"{p.file}:{p.line}: {p.where}: {p.what}", hint=p.remedy, id="triage.E001") for p in found.problems
        ]
    return []


def check_default_region(**_options: Any) -> list[CheckMessage]:
    """Whether the region that applies until a person chooses is one we know."""
    try:
        known = library().regions
    except PackProblems:
        return []
    chosen = DEFAULT_REGION.value()
    if chosen in known:
        return []
    what = f"{DEFAULT_REGION.name} is {chosen!r}, which is no region."
    return [Error(what, hint=f"Use one of: {', '.join(sorted(known))}.", id="triage.E002")]


def check_webhook_networks(**_options: Any) -> list[CheckMessage]:
    """Whether it is plain where webhooks may go."""
    chosen = WEBHOOK_NETWORKS.value()
    if chosen in ("public", "any"):
        return []
    return [Error(f"{WEBHOOK_NETWORKS.name} is {chosen!r}.", hint="Use public or any.", id="triage.E003")]


def check_metrics(**_options: Any) -> list[CheckMessage]:
    """Whether it is plain who may read the metrics."""
    found: list[CheckMessage] = []
    try:
        list(networks())
    except ValueError:
        what = f"{METRICS_ALLOWED_NETWORKS.name} is {METRICS_ALLOWED_NETWORKS.value()!r}."
        found.append(Error(what, hint="Use addresses or networks, as in 127.0.0.1,10.0.0.0/8.", id="triage.E004"))
    token = METRICS_TOKEN.value()
    if token != NO_TOKEN and len(token) < MIN_TOKEN_LENGTH:
        what = f"{METRICS_TOKEN.name} has {len(token)} characters."
        found.append(Error(what, hint=f"Use {MIN_TOKEN_LENGTH} or more that nobody can guess.", id="triage.E005"))
    return found


def check_booking_rate_limit(**_options: Any) -> list[CheckMessage]:
    """Whether the limit on hand-overs is a number."""
    chosen = BOOKING_RATE_LIMIT.value()
    if chosen.isascii() and chosen.isdigit() and int(chosen) > 0:
        return []
    return [Error(f"{BOOKING_RATE_LIMIT.name} is {chosen!r}.", hint="Use a whole number, as in 60.", id="triage.E006")]


def check_renamed_settings(**_options: Any) -> list[CheckMessage]:
    """Whether a setting still goes by its old name, under which nobody reads it."""
    return [
        Error(f"{s.old_name} is now called {s.name}.", hint=f"Set {s.name} and remove {s.old_name}.", id="triage.E007")
        for s in SETTINGS
        if s.old_name and hasattr(settings, s.old_name)
    ]
