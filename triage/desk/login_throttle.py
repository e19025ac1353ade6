"""How often somebody may try to get in: by account and by address.

An attempt is counted before anything is looked at, so that many at once count like many in a row. Accounts that do not
exist are counted alike, and the refusal says nothing else.
"""

from django.utils.translation import gettext_lazy

from triage.web.rate_limit import Policy, clear_count, count_request

PER_ACCOUNT = Policy("sign-in-account", quota=8, seconds=900)
PER_ADDRESS = Policy("sign-in-address", quota=40, seconds=900)
TOO_MANY_ATTEMPTS = gettext_lazy("Too many attempts. Wait 15 minutes, then try again.")


def record_attempt(account: str, address: str) -> bool:
    """Whether this attempt may go on; it counts either way."""
    allowances = [count_request(PER_ACCOUNT, account.casefold()), count_request(PER_ADDRESS, address)]
    return not any(allowance.exceeded for allowance in allowances)


def clear_attempts(account: str) -> None:
    """Who got in starts afresh; the address still counts what others tried from it."""
    clear_count(PER_ACCOUNT, account.casefold())
