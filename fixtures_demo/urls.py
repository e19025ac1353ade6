"""Addresses of the invented firm's web site."""

from django.urls import path

from fixtures_demo.booking_page import booking_page, in_the_frame, plain_frame

urlpatterns = [
    path("", booking_page, name="demo-booking"),
    path("in-the-frame/", in_the_frame, name="demo-in-the-frame"),
    path("plain-frame/", plain_frame, name="demo-plain-frame"),
]
