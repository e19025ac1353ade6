"""From a page's values to the response: what stands on every page of the desk beside them.

A sentence for the next page is one of Django's messages, which the session keeps because an answered form leads to a
page by a redirect.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from django.contrib.messages import get_messages
from django.http import HttpResponse
from django.shortcuts import render
from django.urls import reverse
from django.utils.translation import gettext as _

from triage.desk.request import DeskRequest
from triage.models.firm import Role


@dataclass(frozen=True, slots=True)
class NavLink:
    href: str
    label: str
    is_current: bool


@dataclass(frozen=True, slots=True)
class Layout:
    """What every page shows around its own; without a firm, `firm` and `role` are empty."""

    firm: str
    username: str
    role: str
    links: tuple[NavLink, ...]
    messages: tuple[str, ...]
    signed_in: bool


def render_page(request: DeskRequest, name: str, context: Mapping[str, Any], status: int = 200) -> HttpResponse:
    """The page `name` of the desk."""
    page_context = {**context, "desk": layout_of(request)}
    return render(request, f"triage/desk/{name}.html", page_context, status=status)


def layout_of(request: DeskRequest) -> Layout:
    member = request.member
    return Layout(
        firm=member.firm.name if member else "",
        username=request.user.get_username(),
        role=str(Role(member.role).label) if member else "",
        links=tuple(_links(request)),
        messages=tuple(str(message) for message in get_messages(request)),
        signed_in=request.user.is_authenticated,
    )


def _links(request: DeskRequest) -> list[NavLink]:
    role = request.member.role if request.member else ""
    entries = []
    if role:
        entries += [("desk-inbox", _("Job sheets")), ("desk-call", _("Calls"))]
    if role in (Role.OWNER, Role.REPAIRER):
        entries.append(("desk-calibration", _("Accuracy")))
    if role == Role.OWNER:
        entries += [("desk-deliveries", _("Deliveries")), ("desk-exports", _("Exports"))]
        entries += [("desk-staff", _("Staff")), ("desk-settings", _("Settings"))]
    if request.user.is_authenticated and request.user.is_staff:
        entries.append(("desk-knowledge", _("Knowledge base")))
    if role:
        entries.append(("desk-account", _("Account")))
    hrefs = ((reverse(name), label) for name, label in entries)
    return [NavLink(href, label, _is_current(request.path, href)) for href, label in hrefs]


def _is_current(path: str, href: str) -> bool:
    inbox = reverse("desk-inbox")
    return (
        path == href
        or (href == inbox and path.startswith(f"{inbox}sheets/"))
        or (href != inbox and path.startswith(href))
    )
