"""A form without its token: a page of the desk, in words, and nothing was done."""

import pytest
from django.test import Client
from django.urls import reverse

from tests.reading_pages import read_page


@pytest.mark.django_db
def test_a_form_from_elsewhere_is_refused_in_words():
    page = Client(enforce_csrf_checks=True).post(reverse("desk-sign-in"), {"account": "robin", "password": "x"})
    assert page.status_code == 403
    assert read_page(page).one("h1").text == "Form expired"
    assert "no-store" in page.headers["Cache-Control"]
