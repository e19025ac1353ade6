"""The only writer of a firm's API keys. A key is shown once, when it is made; its hash and first characters are kept.

A key is 256 random bits, so a plain hash of it cannot be searched, and looking it up by its hash tells nothing by the
time it takes.
"""

import logging
import secrets
from datetime import timedelta

from django.db.models import Q
from django.utils import timezone
from django.utils.translation import gettext as _

from triage.jobsheet.errors import FieldProblem, Refused
from triage.jobsheet.plain_text import clean_line
from triage.jobsheet.sender_token import hash_of
from triage.models import ApiKey, Firm
from triage.models.api_key import MAX_NAME_LENGTH, PREFIX_LENGTH

log = logging.getLogger(__name__)

PREFIX = "ofc_"  # by which a key that leaked into a file is found
BYTES = 32
LAST_USED_PRECISION = timedelta(minutes=1)


def make_key(*, firm: Firm, name: str) -> tuple[ApiKey, str]:
    """A new key and its secret, which is shown nowhere again. Raises Refused where the name is none."""
    cleaned = clean_line(name)
    if not cleaned or len(cleaned) > MAX_NAME_LENGTH:
        sentence = _("Give the key a name of 1 to %(most)s characters that says what uses it.")
        raise Refused([FieldProblem("name", sentence % {"most": MAX_NAME_LENGTH})])
    secret = PREFIX + secrets.token_urlsafe(BYTES)
    fields = {"name": cleaned, "key_hash": hash_of(secret), "prefix": secret[:PREFIX_LENGTH]}
    key = ApiKey.objects.create(firm=firm, created=timezone.now(), **fields)
    log.info("API key %s made for firm %s", key.pk, firm.pk)
    return key, secret


def revoke_key(*, key: ApiKey) -> bool:
    """Ends a key at once; whether it was still in use."""
    ended = ApiKey.objects.filter(pk=key.pk, revoked__isnull=True).update(revoked=timezone.now()) == 1
    if ended:
        log.info("API key %s of firm %s revoked", key.pk, key.firm_id)
    return ended


def authenticate_key(secret: str) -> ApiKey | None:
    """The key with this secret, if it still works; notes that it was used, to the minute."""
    key = ApiKey.objects.filter(key_hash=hash_of(secret), revoked__isnull=True).select_related("firm").first()
    if key:
        now = timezone.now()
        stale = Q(last_used__isnull=True) | Q(last_used__lt=now - LAST_USED_PRECISION)
        ApiKey.objects.filter(stale, pk=key.pk).update(last_used=now)
    return key
