"""How many requests somebody may make in a window of time, and the header fields that say so.

Counted in the database: a site runs several workers, on several hosts maybe, and a count that each of them kept for
itself would let through as many times the quota. One UPDATE adds one whoever else adds at that moment, so no worker
waits for another. The windows are fixed; across the end of one, twice the quota can pass, which is enough
against floods and needs one small row each. A row names nobody: it holds a keyed hash.

The fields are `RateLimit-Policy` and `RateLimit` of draft-ietf-httpapi-ratelimit-headers-11, with `Retry-After` of
RFC 9110 where the quota is used up.
"""

import ipaddress
from dataclasses import dataclass
from datetime import UTC, datetime

from django.db import IntegrityError, transaction
from django.db.models import F
from django.utils import timezone
from django.utils.crypto import salted_hmac

from triage.models import RequestCount

SALT = "triage.web.rate_limit"
HOUSEHOLD_BITS = 64  # one household or one server holds at least so many bits of an IPv6 address


@dataclass(frozen=True, slots=True)
class Policy:
    """So many requests in so many seconds."""

    name: str
    quota: int
    seconds: int


@dataclass(frozen=True, slots=True)
class Allowance:
    """What is left of a policy after this request; `reset_after` is in seconds. `exceeded`: this one was too many."""

    policy: Policy
    remaining: int
    reset_after: int
    exceeded: bool

    def headers(self) -> dict[str, str]:
        name, policy = f'"{self.policy.name}"', self.policy
        fields = {
            "RateLimit-Policy": f"{name};q={policy.quota};w={policy.seconds}",
            "RateLimit": f"{name};r={self.remaining};t={self.reset_after}",
        }
        return {**fields, "Retry-After": str(self.reset_after)} if self.exceeded else fields


def count_request(policy: Policy, who: str, now: datetime | None = None) -> Allowance:
    """Counts one request of `who` and says what is left; it counts whether or not the request may go on."""
    moment = (now or timezone.now()).timestamp()
    end = (int(moment) // policy.seconds + 1) * policy.seconds
    used = _add_one(_bucket(policy, who), datetime.fromtimestamp(end, UTC), datetime.fromtimestamp(moment, UTC))
    return Allowance(policy, max(0, policy.quota - used), max(1, int(end - moment)), used > policy.quota)


def clear_count(policy: Policy, who: str) -> None:
    """`who` starts afresh."""
    RequestCount.objects.filter(bucket=_bucket(policy, who)).delete()


def network_of(address: str) -> str:
    """The address, or the network it can choose freely from, as a household with IPv6 can."""
    try:
        known = ipaddress.ip_address(address.partition("%")[0])
    except ValueError:
        return address
    if isinstance(known, ipaddress.IPv6Address) and not known.ipv4_mapped:
        return str(ipaddress.ip_network((known, HOUSEHOLD_BITS), strict=False))
    return str(getattr(known, "ipv4_mapped", None) or known)


def _add_one(bucket: str, ends: datetime, now: datetime) -> int:
    mine = RequestCount.objects.filter(bucket=bucket, ends=ends)
    if not mine.update(count=F("count") + 1):
        RequestCount.objects.filter(ends__lte=now).delete()
        try:
            with transaction.atomic():
                RequestCount.objects.create(bucket=bucket, ends=ends, count=1)
        except IntegrityError:  # another worker began this window just now
            mine.update(count=F("count") + 1)
    # The window may have ended meanwhile and another worker have cleared its row away: then this was its last request.
    return int(mine.values_list("count", flat=True).first() or 1)


def _bucket(policy: Policy, who: str) -> str:
    key = who.encode("utf-8", "replace").decode()
    return salted_hmac(f"{SALT}.{policy.name}", key, algorithm="sha256").hexdigest()
