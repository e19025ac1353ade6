"""Figures that raise a red flag are not shown as a result: the check opens with them, and says what to do first."""

from typing import cast

from django.http import HttpRequest, HttpResponseRedirect
from django.http.response import HttpResponseBase
from django_htmx.http import HttpResponseClientRedirect

from triage.check_pages.presenters.readings.form import ReadingResult
from triage.web.rendering import StepRequest


def to_the_check(request: HttpRequest, found: ReadingResult | None) -> HttpResponseBase | None:
    """The way to the check with these figures; None where they raise nothing."""
    if found is None or not found.alarm or not found.continue_href:
        return None
    if cast(StepRequest, request).htmx:
        return HttpResponseClientRedirect(found.continue_href)
    return HttpResponseRedirect(found.continue_href)
