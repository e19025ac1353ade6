"""Addresses of the agent's call page."""

from django.urls import path

from triage.desk.call.views.call import call
from triage.desk.call.views.phone_code import phone_code
from triage.desk.call.views.words import words

urlpatterns = [
    path("", call, name="call"),
    path("words.json", words, name="call-words"),
    path("phone.svg", phone_code, name="call-phone-code"),
]
