"""From a page's values to the response: what stands on every page of the desk beside them.

A sentence for the next page waits in the session, because an answered form leads to a page by a redirect.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse
from django.utils.translation import gettext as _

from triage.models import Member
from triage.models.firm import Role

NOTICES = "desk_notices"


class DeskRequest(HttpRequest):
    """A request behind the desk's door: `member` is who asks, None where no firm was entered."""

    member: Member | None


@dataclass(frozen=True, slots=True)
class Link:
    href: str
    words: str
    here: bool


@dataclass(frozen=True, slots=True)
class Frame:
    """What every page shows around its own. `firms` whether there is another firm to change to."""

    firm: str
    who: str
    role: str
    links: tuple[Link, ...]
    notices: tuple[str, ...]
    signed_in: bool


def show(request: DeskRequest, name: str, context: Mapping[str, Any], status: int = 200) -> HttpResponse:
    """The page `name` of the desk."""
    whole = {**context, "desk": frame(request)}
    return render(request, f"triage/desk/{name}.html", whole, status=status)


def say_next(request: HttpRequest, sentence: str) -> None:
    """A sentence for the page that is shown next."""
    request.session[NOTICES] = [*request.session.get(NOTICES, []), sentence]


def frame(request: DeskRequest) -> Frame:
    member = request.member
    notices = request.session.pop(NOTICES, []) if NOTICES in request.session else []
    return Frame(
        firm=member.firm.name if member else "",
        who=request.user.get_username(),
        role=str(Role(member.role).label) if member else "",
        links=tuple(_links(request)),
        notices=tuple(notices),
        signed_in=request.user.is_authenticated,
    )


def _links(request: DeskRequest) -> list[Link]:
    role = request.member.role if request.member else ""
    places = []
    if role:
        places += [("desk-inbox", _("Job sheets")), ("desk-call", _("Calls"))]
    if role in (Role.OWNER, Role.REPAIRER):
        places.append(("desk-calibration", _("How right we were")))
    if role == Role.OWNER:
        places += [("desk-deliveries", _("Deliveries")), ("desk-exports", _("Take it with you"))]
        places += [("desk-staff", _("Staff")), ("desk-settings", _("Settings"))]
    if request.user.is_authenticated and request.user.is_staff:
        places.append(("desk-knowledge", _("The pack")))
    if role:
        places.append(("desk-account", _("Your account")))
    hrefs = ((reverse(name), words) for name, words in places)
    return [Link(href, words, _is_here(request.path, href)) for href, words in hrefs]


def _is_here(path: str, href: str) -> bool:
    inbox = reverse("desk-inbox")
    return (
        path == href
        or (href == inbox and path.startswith(f"{inbox}sheets/"))
        or (href != inbox and path.startswith(href))
    )
