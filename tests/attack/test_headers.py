"""Every header that guards, and its value, on every address of the site in production. A new value needs a reason here.

After the OWASP Secure Headers Project's list of response headers: each header of it is set, or left out for a reason.
"""

import pytest

from tests.attack.whole_site import World, every_answer
from triage.web.security_headers import CLOSED_FEATURES

pytestmark = pytest.mark.django_db

GUARDS = {
    "Strict-Transport-Security": "max-age=31536000",
    "X-Content-Type-Options": "nosniff",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Permissions-Policy": ", ".join(f"{feature}=()" for feature in CLOSED_FEATURES),
}
# What other sites may load as their own: the firm's one line, and what anybody may read without a cookie.
FOR_OTHER_SITES = {"embed-loader", "api-description", "api-job-sheet-schema", "api-pack", "api-step"}
# Without any referrer a browser sends its forms as from nowhere, and the desk's form tokens are refused.
DESK = "same-origin"
NO_SUCH_METHOD = 405  # a form's own address, opened like a page: there is nothing to see or to keep
# Named on that list and left out: it tells programs apart and helps nobody; a cookie's own flags do more; the browser
# that knew it is gone; and frames of ours need no other site's consent.
NEVER = {"Server", "X-Powered-By", "Clear-Site-Data", "X-XSS-Protection", "Expect-CT", "Feature-Policy", "P3P"}


@pytest.fixture
def answers(settings):
    settings.SECURE_SSL_REDIRECT = False
    settings.SECURE_HSTS_SECONDS = 31_536_000
    return every_answer(World(), X_Nothing="1")


def test_every_answer_is_guarded(answers):
    for name, answer in answers.items():
        data = {header: answer.headers.get(header) for header in GUARDS if header != "Strict-Transport-Security"}
        assert data == {header: GUARDS[header] for header in data}, name
        shared = answer.headers["Cross-Origin-Resource-Policy"]
        assert shared == ("cross-origin" if name in FOR_OTHER_SITES else "same-origin"), name
        at_the_desk = name.startswith("desk-") and answer.status_code != NO_SUCH_METHOD
        assert answer.headers["Referrer-Policy"] == (DESK if at_the_desk else "no-referrer"), name
        assert not NEVER & set(answer.headers), name


def test_over_tls_a_browser_is_told_to_stay_there(client, settings):
    settings.SECURE_HSTS_SECONDS = 31_536_000
    for address in ("/?region=gb-eng", "/no-such-page/", "/desk/sign-in/", "/api/v1/openapi.json", "/health/"):
        answer = client.get(address, secure=True)
        assert answer.headers["Strict-Transport-Security"] == GUARDS["Strict-Transport-Security"]
        assert "Strict-Transport-Security" not in client.get(address).headers


def test_without_tls_everything_but_the_watching_is_sent_there(client, settings):
    settings.SECURE_SSL_REDIRECT = True
    assert client.get("/check/?complaint=no-heat").headers["Location"].startswith("https://testserver/check/")
    assert {client.get(address).status_code for address in ("/health/", "/ready/")} == {200}


def test_what_names_somebody_is_kept_by_no_cache(answers):
    opened = {name for name, answer in answers.items() if answer.status_code != NO_SUCH_METHOD}
    private = {name for name in opened if name.startswith(("desk-", "household-sheet")) or name == "page: form"}
    assert len(private) > 20
    for name in private:
        assert "no-store" in answers[name].headers["Cache-Control"], name


def test_no_page_of_a_check_sets_a_cookie(answers):
    assert [name for name, answer in answers.items() if answer.cookies and not name.startswith("desk-")] == []
