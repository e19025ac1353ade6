"""What a view of the desk is handed, by who may open it: the decorators of `access` make these promises."""

from django.contrib.auth.models import AnonymousUser, User
from django.http import HttpRequest

from triage.models import Member


class DeskRequest(HttpRequest):
    """Any request under /desk/: `member` is who asks, None where no firm was entered."""

    user: User | AnonymousUser
    member: Member | None


class UserRequest(DeskRequest):
    """The request of somebody who signed in."""

    user: User


class MemberRequest(UserRequest):
    """The request of a member of the firm that was entered."""

    member: Member
