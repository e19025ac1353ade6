"""A second factor: six digits that change every half minute (TOTP, RFC 6238, over HOTP, RFC 4226, with SHA-1).

SHA-1 and six digits are what every authenticator reads. A code is taken from the half minute before to the one after,
for clocks that are off, and never twice: the step it came from is written down in the same statement that checks it.
"""

import base64
import hashlib
import hmac
import re
import secrets
import struct
from urllib.parse import quote

from django.utils.translation import gettext_lazy

from triage.models import Member

WRONG_CODE = gettext_lazy("This code does not fit, or was used before. Wait for the next one and type it.")
STEP_SECONDS = 30
DIGITS = 6
MAX_DRIFT_STEPS = 1
SECRET_BYTES = 20  # RFC 4226, section 4, R6: 160 bits are recommended


def new_secret() -> str:
    """A secret in base32, as authenticators take it."""
    return base64.b32encode(secrets.token_bytes(SECRET_BYTES)).decode()


def code_at(secret: str, step: int, digits: int = DIGITS) -> str:
    """The code of one time step."""
    key = base64.b32decode(secret, casefold=True)
    mac = hmac.new(key, struct.pack(">Q", step), hashlib.sha1).digest()
    offset = mac[-1] & 0xF
    number = struct.unpack(">I", mac[offset : offset + 4])[0] & 0x7FFFFFFF
    return str(number % 10**digits).zfill(digits)


def matching_step(secret: str, code: str, now: float, after: int = 0) -> int | None:
    """The step after `after` whose code this is, of those that may be meant now; None where it is none of them."""
    told = "".join(code.split())
    if len(told) != DIGITS or not (told.isascii() and told.isdigit()):
        return None
    middle = int(now) // STEP_SECONDS
    steps = range(max(after + 1, middle - MAX_DRIFT_STEPS), middle + MAX_DRIFT_STEPS + 1)
    return next((step for step in steps if hmac.compare_digest(code_at(secret, step), told)), None)


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
    issuer, account = _as_label(firm), _as_label(account)
    return f"otpauth://totp/{issuer}:{account}?secret={secret}&issuer={issuer}&digits={DIGITS}&period={STEP_SECONDS}"


def _as_label(name: str) -> str:
    """Without the signs that divide an address: authenticators take it apart before or after they decode it."""
    return quote(" ".join(re.sub(r"[^\w .@+'-]", " ", name).split()), safe="@")
