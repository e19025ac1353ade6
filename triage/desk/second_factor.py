"""A second factor: six digits that change every half minute (TOTP, RFC 6238, over HOTP, RFC 4226, with SHA-1).

SHA-1 and six digits are what every authenticator reads. A code is taken from the half minute before to the one after,
for clocks that are off, and never twice: the step it came from is written down in the same statement that checks it.
pyotp's HOTP is asked by the step and not its TOTP by the time, because that one takes the clock on the wall, which
has an hour twice a year, and says only whether a code fits but not which step it was.
"""

import hmac
import re

import pyotp
from django.utils.translation import gettext_lazy

from triage.models import Member

WRONG_CODE = gettext_lazy("This code is wrong or has already been used. Wait for the next one and enter that.")
STEP_SECONDS = 30
DIGITS = 6
MAX_DRIFT_STEPS = 1


def new_secret() -> str:
    """A secret in base32, as authenticators take it, of the 160 bits that RFC 4226 recommends (section 4, R6)."""
    return pyotp.random_base32()


def matching_step(secret: str, code: str, now: float, after: int = 0) -> int | None:
    """The step after `after` whose code this is, of those that may be meant now; None where it is none of them."""
    digits = "".join(code.split())
    if len(digits) != DIGITS or not (digits.isascii() and digits.isdigit()):
        return None
    current, hotp = int(now) // STEP_SECONDS, pyotp.HOTP(secret)
    steps = range(max(after + 1, current - MAX_DRIFT_STEPS), current + MAX_DRIFT_STEPS + 1)
    return next((step for step in steps if hmac.compare_digest(hotp.at(step), digits)), None)


def verify_code(member: Member, code: str, now: float) -> bool:
    """Whether the code is right and was not used before; from now on it was."""
    step = matching_step(member.totp_secret, code, now, member.totp_last)
    if step is None:
        return False
    unused = Member.objects.filter(pk=member.pk, totp_secret=member.totp_secret, totp_last__lt=step)
    return unused.update(totp_last=step) == 1


def enable_second_factor(member: Member, secret: str, code: str, now: float) -> bool:
    """Takes the secret into use once a first code shows that the person has it."""
    step = matching_step(secret, code, now)
    if step is None:
        return False
    Member.objects.filter(pk=member.pk).update(totp_secret=secret, totp_last=step)
    return True


def disable_second_factor(member: Member) -> None:
    Member.objects.filter(pk=member.pk).update(totp_secret="", totp_last=0)


def provisioning_uri(secret: str, account: str, firm: str) -> str:
    """What the QR code holds: the key URI that authenticators read."""
    return pyotp.TOTP(secret).provisioning_uri(_as_label(account), _as_label(firm))


def _as_label(name: str) -> str:
    """Without the signs that divide an address: authenticators take it apart before or after they decode it."""
    return " ".join(re.sub(r"[^\w .@+'-]", " ", name).split())
