"""The call page: a person's story is on it, so no cache keeps it."""

from django.http import HttpRequest, HttpResponse
from django.utils.cache import patch_cache_control
from django.views.decorators.http import require_safe

from triage.check_pages.presenters.numbers import emergency_call
from triage.desk.call.open_call import open_call
from triage.desk.call.presenters.page import call_page
from triage.web.rendering import render_step


@require_safe
def call(request: HttpRequest) -> HttpResponse:
    opened = open_call(request)
    context = {
        "page": call_page(opened),
        "notices": opened.visit.notices,
        "emergency": emergency_call(opened.visit.place),
        "place": opened.visit.place.name,
    }
    response = render_step(request, "triage/call/call.html", "triage/call/_call.html", context)
    patch_cache_control(response, private=True, no_store=True)
    return response
