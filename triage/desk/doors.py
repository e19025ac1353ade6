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

from triage.desk.tries import begin_try, forget_tries
from triage.models import Member
from triage.web.client_address import client_address
from triage.web.desk_only import DESK

INSIDE = "desk_member"
WAITING = "desk_waiting"
LONGEST_PASSWORD = 1000


class TooManyTries(Exception):
    """Whoever this is has to wait before trying again."""


def check_password(request: HttpRequest, account: str, password: str) -> User | None:
    """The user these belong to; None where they do not fit, whether there is such an account or not.

    Raises TooManyTries.
    """
    if not begin_try(account, client_address(request)):
        raise TooManyTries
    user = authenticate(request, username=account, password=password[:LONGEST_PASSWORD])
    if not isinstance(user, User):
        return None
    forget_tries(account)
    return user


def let_in(request: HttpRequest, user: User) -> None:
    """Signs the person in and, where there is one firm, goes on into it."""
    request.session.flush()
    login(request, user)
    own = memberships(user)
    if len(own) == 1:
        step_into(request, own[0])


def memberships(user: User) -> QuerySet[Member]:
    return Member.objects.filter(user=user).select_related("firm", "user").order_by("firm__name", "pk")


def step_into(request: HttpRequest, member: Member) -> bool:
    """Whether the person is in the firm now; False where its second factor has to be shown first."""
    request.session.cycle_key()
    request.session.pop(INSIDE, None)
    request.session.pop(WAITING, None)
    request.session[WAITING if member.totp_secret else INSIDE] = member.pk
    return not member.totp_secret


def waiting_member(request: HttpRequest) -> Member | None:
    """The place in a firm for which the second factor is still due."""
    return _member(request, WAITING)


def member_inside(request: HttpRequest) -> Member | None:
    """The place in a firm this session is in, if it still exists."""
    return _member(request, INSIDE)


def _member(request: HttpRequest, key: str) -> Member | None:
    number = request.session.get(key)
    if number is None or not request.user.is_authenticated:
        return None
    return memberships(request.user).filter(pk=number).first()


def pass_second_factor(request: HttpRequest, member: Member) -> None:
    request.session.cycle_key()
    request.session.pop(WAITING, None)
    request.session[INSIDE] = member.pk


def safe_next(request: HttpRequest, wanted: str) -> str:
    """Where to go after signing in: a page of the desk and nowhere else."""
    fits = url_has_allowed_host_and_scheme(wanted, {request.get_host()}, require_https=request.is_secure())
    is_desk = wanted.startswith(DESK) and wanted.isprintable()
    return wanted if fits and is_desk else reverse("desk-inbox")
