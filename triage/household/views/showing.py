"""From a page's view model to the response: which templates, what every page shows, and the cache headers."""

from typing import Any

from django.http import HttpRequest, HttpResponse
from django.http.response import HttpResponseBase

from triage.check_pages.caching import let_caches_keep
from triage.check_pages.costs_page import CostsPage
from triage.check_pages.page_models import (
    AdvicePage,
    DangerPage,
    ExitPage,
    MakeSafePage,
    Page,
    QuestionPage,
    ReadingPage,
    StartPage,
    TaskPage,
)
from triage.check_pages.presenters.numbers import emergency_call
from triage.check_pages.visit import Visit
from triage.household.presenters.offer import offer_of
from triage.web.framing import allow_frames, good_origins
from triage.web.rendering import render_step
from triage.web.step_header import STEP

TEMPLATES: dict[type[Page | CostsPage], str] = {
    StartPage: "start",
    DangerPage: "danger",
    QuestionPage: "question",
    MakeSafePage: "make_safe",
    AdvicePage: "advice",
    TaskPage: "task",
    ReadingPage: "reading",
    ExitPage: "exit",
    CostsPage: "costs",
}


def show(request: HttpRequest, visit: Visit, page: Page | CostsPage) -> HttpResponseBase:
    name = TEMPLATES[type(page)]
    offer = offer_of(visit) if isinstance(page, AdvicePage | MakeSafePage) else None
    context = {**context_of(visit, page), "summary_href": visit.links.summary(), "offer": offer}
    response = render_step(request, f"triage/{name}.html", f"triage/_{name}.html", context)
    response.headers[STEP] = name
    # A browser that is told "not modified" takes the new headers for the old page: these say who may frame it.
    return allow_frames(let_caches_keep(request, response, visit), visit.firm.origins if visit.firm else ())


def context_of(visit: Visit, page: object) -> dict[str, Any]:
    """What every page of a check needs beside its own matter."""
    return {
        "page": page,
        "notices": visit.notices,
        "danger_href": visit.links.danger(),
        "start_href": visit.links.start(),
        "emergency": emergency_call(visit.place),
        "firm": visit.firm,
        "firm_origins": " ".join(good_origins(visit.firm.origins)) if visit.firm else "",
    }


def show_text(request: HttpRequest, visit: Visit, text: str, name: str) -> HttpResponseBase:
    """A plain text to keep as a file."""
    response = HttpResponse(text, content_type="text/plain; charset=utf-8")
    response.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    return let_caches_keep(request, response, visit)
