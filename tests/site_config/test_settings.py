"""What the site promises about every answer, and what production refuses to start without."""

import os
import subprocess
import sys

import pytest
from django.http import HttpResponse
from django.test import override_settings
from django.urls import path

from tests.whole_site.project_files import ROOT


def count_answers(request):
    """A page as the householder's are: it reads the query string itself."""
    return HttpResponse(f"{request.META['QUERY_STRING'].count('=')} answers. " * 50)


SMALL_SITE = (path("count/", count_answers),)


@pytest.fixture
def small_site():
    with override_settings(ROOT_URLCONF=SMALL_SITE):
        yield


def test_no_middleware_refuses_ten_thousand_parameters(client, small_site):
    response = client.get("/count/?" + "&".join(f"a{number}=b" for number in range(10_000)))
    assert response.status_code == 200
    assert response.content.decode().startswith("10000 answers.")


def test_a_page_is_guarded_and_sets_no_cookie(client, small_site):
    response = client.get("/count/")
    assert not response.cookies
    assert response["Referrer-Policy"] == "no-referrer"
    assert response["X-Content-Type-Options"] == "nosniff"
    assert set(response["Content-Security-Policy"].split("; ")) == {
        "default-src 'self'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self' data:",
        "object-src 'none'",
        "base-uri 'none'",
        "form-action 'self'",
        "frame-ancestors 'none'",
    }


def test_a_page_is_compressed_for_a_browser_that_can_read_it(client, small_site):
    response = client.get("/count/", headers={"Accept-Encoding": "gzip"})
    assert response["Content-Encoding"] == "gzip"
    assert "Accept-Encoding" in response["Vary"]


def test_a_missing_page_is_guarded_too(client):
    response = client.get("/no-such-page/")
    assert response.status_code == 404
    assert response["Referrer-Policy"] == "no-referrer"
    assert "default-src 'self'" in response["Content-Security-Policy"]


def in_production(code, **environment):
    bare = {name: os.environ[name] for name in ("PATH", "HOME", "LANG") if name in os.environ}
    return subprocess.run(
        [sys.executable, "-c", f"from django.conf import settings as s; {code}"],
        env={**bare, "DJANGO_SETTINGS_MODULE": "site_config.settings", **environment},
        cwd=ROOT,
        capture_output=True,
        text=True,
    )


def test_what_a_file_database_acknowledged_outlives_a_power_cut(tmp_path):
    """In WAL mode NORMAL "might lose durability", FULL (2) does not: SQLite's own page on PRAGMA synchronous."""
    asked = (
        "import django; django.setup(); from django.db import connection;"
        "print(*connection.cursor().execute('PRAGMA synchronous').fetchone())"
    )
    whole = {"SECRET_KEY": "k" * 50, "ALLOWED_HOSTS": "127.0.0.1", "DATABASE_URL": f"sqlite:///{tmp_path}/one.sqlite3"}
    run = in_production(asked, **whole)
    assert (run.stdout, run.stderr) == ("2\n", "")


def test_production_does_not_start_without_a_secret_key():
    run = in_production("s.DEBUG")
    assert run.returncode == 1
    assert run.stderr.splitlines()[-1].startswith(
        "django.core.exceptions.ImproperlyConfigured: SECRET_KEY is not set. Make one with "
    )


def test_production_is_closed_until_opened():
    shown = "print(s.DEBUG, s.ALLOWED_HOSTS, s.SECURE_SSL_REDIRECT, s.STORAGES['staticfiles']['BACKEND'])"
    run = in_production(shown, SECRET_KEY="x" * 50)
    assert run.stdout == "False [] True site_config.static_files.SqueezedStaticFilesStorage\n", run.stderr


def test_static_files_can_be_built_for_production(tmp_path):
    run = in_production(
        f"import django; django.setup(); s.STATIC_ROOT = {str(tmp_path)!r};"
        "from django.core.management import call_command; call_command('collectstatic', verbosity=0)",
        SECRET_KEY="x" * 50,
    )
    assert run.returncode == 0, run.stderr
    assert list(tmp_path.glob("django_htmx/htmx*.min.*.js.br"))
