"""The site is the oven fault check and nothing else; a demo has an invented firm's booking page beside it."""

from django.conf import settings
from django.urls import include, path

urlpatterns = [
    path("", include("triage.urls")),
]
if settings.DEMO:
    urlpatterns.append(path("booking-page/", include("fixtures_demo.urls")))

handler400 = "triage.household.views.mishap.bad_request"
handler404 = "triage.household.views.mishap.not_found"
handler500 = "triage.household.views.mishap.server_error"
