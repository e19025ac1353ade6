"""How often somebody may try to get in: by account and by address, counted in the database.

A try is written down before anything is looked at, so that many at once count like many in a row. Accounts that do
not exist are counted alike, and the refusal says nothing else.
"""

from datetime import timedelta

from django.utils import timezone
from django.utils.crypto import salted_hmac
from django.utils.translation import gettext_lazy

from triage.models import SignInTry

WINDOW = timedelta(minutes=15)
MAX_PER_ACCOUNT = 8
MAX_PER_ADDRESS = 40
TOO_MANY_ATTEMPTS = gettext_lazy("There were too many tries. Wait 15 minutes, then try again.")
SALT = "triage.desk.login_throttle"


def record_attempt(account: str, address: str) -> bool:
    """Whether this try may go on; it counts either way."""
    now = timezone.now()
    whose, where = _print("account", account.casefold()), _print("address", address)
    SignInTry.objects.filter(at__lt=now - WINDOW).delete()
    SignInTry.objects.create(account=whose, address=where, at=now)
    recent = SignInTry.objects.filter(at__gte=now - WINDOW)
    return (
        recent.filter(account=whose).count() <= MAX_PER_ACCOUNT
        and recent.filter(address=where).count() <= MAX_PER_ADDRESS
    )


def clear_attempts(account: str) -> None:
    """Who got in starts afresh; the address still counts what others tried from it."""
    SignInTry.objects.filter(account=_print("account", account.casefold())).delete()


def _print(kind: str, text: str) -> str:
    told = text.encode("utf-8", "replace").decode()
    return salted_hmac(f"{SALT}.{kind}", told, algorithm="sha256").hexdigest()
