"""From a page's view model to the response: which templates, what every page shows, and the cache headers."""

from django.http import HttpRequest, HttpResponse
from django.http.response import HttpResponseBase

from triage.check_pages.caching import let_caches_keep
from triage.check_pages.presenters.numbers import emergency_call
from triage.check_pages.view_models import (
    AdvicePage,
    DangerPage,
    ExitPage,
    MakeSafePage,
    Page,
    QuestionPage,
    StartPage,
    TaskPage,
)
from triage.check_pages.visit import Visit
from triage.web.rendering import render_step

TEMPLATES: dict[type[Page], str] = {
    StartPage: "start",
    DangerPage: "danger",
    QuestionPage: "question",
    MakeSafePage: "make_safe",
    AdvicePage: "advice",
    TaskPage: "task",
    ExitPage: "exit",
}


def show(request: HttpRequest, visit: Visit, page: Page) -> HttpResponseBase:
    name = TEMPLATES[type(page)]
    context = {
        "page": page,
        "notices": visit.notices,
        "danger_href": visit.links.danger(),
        "start_href": visit.links.start(),
        "summary_href": visit.links.summary(),
        "emergency": emergency_call(visit.place),
    }
    response = render_step(request, f"triage/{name}.html", f"triage/_{name}.html", context)
    return let_caches_keep(request, response, visit)


def show_text(request: HttpRequest, visit: Visit, text: str, name: str) -> HttpResponseBase:
    """A plain text to keep as a file."""
    response = HttpResponse(text, content_type="text/plain; charset=utf-8")
    response.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    return let_caches_keep(request, response, visit)
