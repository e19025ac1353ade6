"""Getting in and out: password, then the firm, then that firm's second factor where one is set up.

A session that has only passed the password opens nothing but the choice of a firm. Its key changes at every step
further in, so that a key known to somebody before is worth nothing after.
"""

from django.contrib.auth import authenticate, login
from django.contrib.auth.models import User
from django.db.models import QuerySet
from django.http import HttpRequest
from django.urls import reverse
from django.utils.http import url_has_allowed_host_and_scheme

from triage.desk.login_throttle import clear_attempts, record_attempt
from triage.desk.middleware import DESK_PATH
from triage.models import Member
from triage.web.client_address import client_address

MEMBER_KEY = "desk_member"
PENDING_KEY = "desk_waiting"
MAX_PASSWORD_LENGTH = 1000


class Throttled(Exception):
    """Whoever this is has to wait before trying again."""


def check_password(request: HttpRequest, username: str, password: str) -> User | None:
    """The user these belong to; None where they do not fit, whether there is such an account or not.

    Raises Throttled.
    """
    if not record_attempt(username, client_address(request)):
        raise Throttled
    user = authenticate(request, username=username, password=password[:MAX_PASSWORD_LENGTH])
    if not isinstance(user, User):
        return None
    clear_attempts(username)
    return user


def sign_in_user(request: HttpRequest, user: User) -> None:
    """Signs the person in and, where there is one firm, goes on into it."""
    request.session.flush()
    login(request, user)
    members = memberships(user)
    if len(members) == 1:
        enter_firm(request, members[0])


def memberships(user: User) -> QuerySet[Member]:
    return Member.objects.filter(user=user).select_related("firm", "user").order_by("firm__name", "pk")


def enter_firm(request: HttpRequest, member: Member) -> bool:
    """Whether the person is in the firm now; False where its second factor has to be shown first."""
    request.session.cycle_key()
    request.session.pop(MEMBER_KEY, None)
    request.session.pop(PENDING_KEY, None)
    request.session[PENDING_KEY if member.totp_secret else MEMBER_KEY] = member.pk
    return not member.totp_secret


def pending_member(request: HttpRequest) -> Member | None:
    """The place in a firm for which the second factor is still due."""
    return _member(request, PENDING_KEY)


def current_member(request: HttpRequest) -> Member | None:
    """The place in a firm this session is in, if it still exists."""
    return _member(request, MEMBER_KEY)


def _member(request: HttpRequest, key: str) -> Member | None:
    pk = request.session.get(key)
    if pk is None or not request.user.is_authenticated:
        return None
    return memberships(request.user).filter(pk=pk).first()


def enter_after_second_factor(request: HttpRequest, member: Member) -> None:
    request.session.cycle_key()
    request.session.pop(PENDING_KEY, None)
    request.session[MEMBER_KEY] = member.pk


def safe_next(request: HttpRequest, wanted: str) -> str:
    """Where to go after signing in: a page of the desk and nowhere else."""
    fits = url_has_allowed_host_and_scheme(wanted, {request.get_host()}, require_https=request.is_secure())
    is_desk = wanted.startswith(DESK_PATH) and wanted.isprintable()
    return wanted if fits and is_desk else reverse("desk-inbox")
