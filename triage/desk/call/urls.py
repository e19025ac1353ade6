"""Addresses of the agent's call page."""

from django.urls import path

from triage.desk.call.views.call import call
from triage.desk.call.views.earlier import earlier
from triage.desk.call.views.hand_over import hand_over
from triage.desk.call.views.phone_code import phone_code
from triage.desk.call.views.taken import taken
from triage.desk.call.views.words import words

urlpatterns = [
    path("", call, name="desk-call"),
    path("earlier/", earlier, name="desk-call-earlier"),
    path("hand-over/", hand_over, name="desk-call-hand-over"),
    path("taken/<str:reference>/", taken, name="desk-call-taken"),
    path("words.json", words, name="desk-call-words"),
    path("phone.svg", phone_code, name="desk-call-phone-code"),
]
