"""Who opened or changed a job sheet, line by line, for the owner."""

from dataclasses import dataclass
from datetime import datetime

from django.utils.translation import gettext as _

from triage.models import JobSheet
from triage.models.audit_entry import Actor

MAX_LINES = 200


@dataclass(frozen=True, slots=True)
class AuditLine:
    at: datetime
    text: str


def audit_lines(sheet: JobSheet) -> list[AuditLine]:
    """The newest first, at most so many."""
    lines = sheet.audit_entries.select_related("member__user").order_by("-at", "-pk")[:MAX_LINES]
    found = []
    for line in lines:
        names = {Actor.SENDER: _("the sender"), Actor.SYSTEM: _("the firm’s own system"), Actor.SITE: _("this site")}
        who = names.get(Actor(line.actor))
        if who is None:
            who = line.member.user.get_username() if line.member else _("a former member")
        found.append(AuditLine(line.at, _("%(who)s %(deed)s it") % {"who": who, "deed": line.action}))
    return found
