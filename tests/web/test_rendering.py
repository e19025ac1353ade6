"""Each step is one address that answers four ways, and every cache is told."""

import pytest
from django.http import HttpResponse
from django.test import override_settings
from django_htmx.middleware import HtmxMiddleware

from triage.web.rendering import render_step

TEMPLATES = {
    "page.html": '<main id="step">{% include "_step.html" %}</main>',
    "_step.html": "<h1>{{ question }}</h1>",
}
FRAGMENT = "<h1>Is the light on?</h1>"
PAGE = f'<main id="step">{FRAGMENT}</main>'

WAYS = {
    "page": ({}, PAGE),
    "fragment": ({"HX-Request": "true"}, FRAGMENT),
    "boosted": ({"HX-Request": "true", "HX-Boosted": "true"}, PAGE),
    "history restore": ({"HX-Request": "true", "HX-History-Restore-Request": "true"}, PAGE),
}


@pytest.fixture(autouse=True)
def two_templates():
    engine = {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "OPTIONS": {"loaders": [("django.template.loaders.locmem.Loader", TEMPLATES)]},
    }
    with override_settings(TEMPLATES=[engine]):
        yield


def answer(rf, headers, **extra):
    view = HtmxMiddleware(
        lambda request: render_step(request, "page.html", "_step.html", {"question": "Is the light on?"}, **extra)
    )
    return view(rf.get("/check/", headers=headers))


@pytest.mark.parametrize("way", WAYS)
def test_a_step_is_a_fragment_only_when_htmx_swaps_it_in(rf, way):
    headers, expected = WAYS[way]
    assert answer(rf, headers).content.decode() == expected


@pytest.mark.parametrize("way", WAYS)
def test_every_way_names_the_headers_it_depends_on(rf, way):
    headers, _ = WAYS[way]
    assert answer(rf, headers)["Vary"] == "HX-Request, HX-Boosted, HX-History-Restore-Request"


def test_the_status_is_the_one_asked_for(rf):
    response = answer(rf, {}, status=404)
    assert isinstance(response, HttpResponse)
    assert response.status_code == 404
