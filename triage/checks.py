"""What must be right before the site starts: the knowledge, and the settings that point into it.

E001  a mistake in a pack, a text or a region: file, line, what is wrong, what to do
E002  the default region does not exist
E003  where webhooks may go is neither public nor any
"""

from typing import Any

from django.core.checks import CheckMessage, Error

from triage.conf import DEFAULT_REGION, WEBHOOK_NETWORKS
from triage.knowledge.library import library
from triage.knowledge.problems import PackProblems


def check_knowledge(**_told: Any) -> list[CheckMessage]:
    """Every mistake in the knowledge, all at once."""
    try:
        library()
    except PackProblems as found:
        return [
            Error(f"{p.file}:{p.line}: {p.where}: {p.what}", hint=p.remedy, id="triage.E001") for p in found.problems
        ]
    return []


def check_default_region(**_told: Any) -> list[CheckMessage]:
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


def check_webhook_networks(**_told: Any) -> list[CheckMessage]:
    """Whether it is plain where webhooks may go."""
    chosen = WEBHOOK_NETWORKS.value()
    if chosen in ("public", "any"):
        return []
    return [Error(f"{WEBHOOK_NETWORKS.name} is {chosen!r}.", hint="Use public or any.", id="triage.E003")]
