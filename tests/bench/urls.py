"""The site's addresses, the barest page a Django template can make with six links on it, and the barest insert."""

from datetime import UTC, datetime
from functools import cache
from uuid import uuid4

from django.http import HttpResponse
from django.template import engines
from django.urls import include, path

from triage.models import RequestCount

LATER = datetime(2100, 1, 1, tzinfo=UTC)
LINKS = [{"href": f"/{n}/", "label": f"Answer number {n}"} for n in range(6)]
PAGE = """<!doctype html><html lang="en"><head><title>{{ heading }}</title></head><body><h1>{{ heading }}</h1>
<ul>{% for link in links %}<li><a href="{{ link.href }}">{{ link.label }}</a></li>{% endfor %}</ul></body></html>"""


@cache
def template():
    return engines["django"].from_string(PAGE)


def bare(request):
    return HttpResponse(template().render({"heading": "A bare page", "links": LINKS}, request))


def insert(request):
    RequestCount.objects.create(bucket=uuid4().hex, ends=LATER, count=1)
    return HttpResponse("One row.")


urlpatterns = [path("bare/", bare), path("insert/", insert), path("", include("site_config.urls"))]
handler404 = "triage.household.views.mishap.not_found"
handler500 = "triage.household.views.mishap.server_error"
