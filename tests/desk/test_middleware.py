"""Sessions and sign-in exist under /desk/ and nowhere else."""

import pytest
from django.contrib.auth.models import User
from django.http import HttpResponse
from django.middleware.csrf import get_token
from django.test import Client, override_settings
from django.urls import include, path


def look(request):
    return HttpResponse(f"{getattr(request, 'user', 'no user')}, {hasattr(request, 'session')}")


def form(request):
    return HttpResponse(get_token(request))


PLACES = (
    path("desk/look/", look),
    path("desk/form/", form),
    path("look/", look),
    path("", include("site_config.urls")),  # the page for a form without its token links to the desk
)


@pytest.fixture(autouse=True)
def small_site():
    with override_settings(ROOT_URLCONF=PLACES):
        yield


def test_a_page_of_the_check_has_no_session_and_asks_no_database(client):
    client.cookies["sessionid"] = "a" * 32
    assert client.get("/look/").content == b"no user, False"


@pytest.mark.django_db
def test_the_desk_knows_who_is_signed_in(client):
    assert client.get("/desk/look/").content == b"AnonymousUser, True"
    client.force_login(User.objects.create(username="kim"))
    assert client.get("/desk/look/").content == b"kim, True"


@pytest.mark.django_db
def test_the_session_cookie_never_travels_to_the_check():
    client = Client()
    client.force_login(User.objects.create(username="kim"))
    assert client.cookies["sessionid"]["path"] in ("/", "/desk/")
    response = client.get("/desk/form/")
    assert response.cookies["csrftoken"]


@pytest.mark.django_db
def test_a_form_of_the_desk_is_refused_without_its_token():
    client = Client(enforce_csrf_checks=True)
    assert client.post("/desk/look/").status_code == 403
    token = client.get("/desk/form/").content.decode()
    assert client.post("/desk/look/", {"csrfmiddlewaretoken": token}).status_code == 200
    assert client.post("/look/").status_code == 200


def test_passwords_are_kept_with_argon2():
    user = User(username="kim")
    user.set_password("an oven door that closes")
    assert user.password.startswith("argon2$argon2id$")
    assert user.check_password("an oven door that closes")
