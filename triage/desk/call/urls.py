"""Addresses of the agent's call page."""

from django.urls import path

from triage.desk.call.views.booking import booking, confirmation
from triage.desk.call.views.call import call, phone_code, phrase_index
from triage.desk.call.views.previous_sheet import previous_sheet

urlpatterns = [
    path("", call, name="desk-call"),
    path("earlier/", previous_sheet, name="desk-call-previous-sheet"),
    path("hand-over/", booking, name="desk-call-booking"),
    path("taken/<str:reference>/", confirmation, name="desk-call-confirmation"),
    path("words.json", phrase_index, name="desk-call-phrases"),
    path("phone.svg", phone_code, name="desk-call-phone-code"),
]
