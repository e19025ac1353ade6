"""From a page's view model to the response: which templates, what every page shows, and the cache headers."""

from typing import Any

from django.http import HttpRequest, HttpResponse
from django.http.response import HttpResponseBase

from triage.check_pages.caching import let_caches_keep
from triage.check_pages.presenters.costs import CostsPage
from triage.check_pages.presenters.emergency import EmergencyPage
from triage.check_pages.presenters.energy_label import LabelPage
from triage.check_pages.presenters.out_of_scope import OutOfScopePage
from triage.check_pages.presenters.phone_numbers import emergency_call
from triage.check_pages.presenters.question import DangerPage, QuestionPage
from triage.check_pages.presenters.readings.page import ReadingPage
from triage.check_pages.presenters.result import ResultPage
from triage.check_pages.presenters.start import StartPage
from triage.check_pages.presenters.task import TaskPage
from triage.check_pages.request import CheckRequest
from triage.household.presenters.offer import offer_of
from triage.web.framing import allow_frames, good_origins
from triage.web.rendering import render_step
from triage.web.step_header import STEP

Page = (
    StartPage
    | DangerPage
    | QuestionPage
    | EmergencyPage
    | ResultPage
    | TaskPage
    | ReadingPage
    | OutOfScopePage
    | CostsPage
    | LabelPage
)
TEMPLATES: dict[type[Page], str] = {
    StartPage: "start",
    DangerPage: "danger",
    QuestionPage: "question",
    EmergencyPage: "emergency",
    ResultPage: "result",
    TaskPage: "task",
    ReadingPage: "reading",
    OutOfScopePage: "out_of_scope",
    CostsPage: "costs",
    LabelPage: "costs",
}


def show(request: HttpRequest, check_request: CheckRequest, page: Page) -> HttpResponseBase:
    name = TEMPLATES[type(page)]
    offer = offer_of(check_request) if isinstance(page, ResultPage | EmergencyPage) else None
    context = {**context_of(check_request, page), "summary_href": check_request.links.summary(), "offer": offer}
    response = render_step(request, f"triage/{name}.html", f"triage/_{name}.html", context)
    response.headers[STEP] = name
    # A browser that is told "not modified" takes the new headers for the old page: these say who may frame it.
    return allow_frames(
        let_caches_keep(request, response, check_request), check_request.firm.origins if check_request.firm else ()
    )


def context_of(check_request: CheckRequest, page: object) -> dict[str, Any]:
    """What every page of a check needs beside its own matter."""
    return {
        "page": page,
        "notices": check_request.notices,
        "danger_href": check_request.links.danger(),
        "start_href": check_request.links.restart(),
        "emergency": emergency_call(check_request.region),
        "firm": check_request.firm,
        "firm_origins": " ".join(good_origins(check_request.firm.origins)) if check_request.firm else "",
    }


def show_text(request: HttpRequest, check_request: CheckRequest, text: str, name: str) -> HttpResponseBase:
    """A plain text to keep as a file."""
    response = HttpResponse(text, content_type="text/plain; charset=utf-8")
    response.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    return let_caches_keep(request, response, check_request)
