"""The check stands in the address, so the headers keep the address at home."""

from django.http import HttpResponse

from triage.web.security_headers import CLOSED_FEATURES, SecurityHeadersMiddleware


def test_a_plain_answer_gets_every_header(rf):
    response = SecurityHeadersMiddleware(lambda _request: HttpResponse())(rf.get("/"))
    assert response["Referrer-Policy"] == "no-referrer"
    assert response["Cross-Origin-Opener-Policy"] == "same-origin"
    assert response["Cross-Origin-Resource-Policy"] == "same-origin"
    assert "camera=(), " in response["Permissions-Policy"]
    assert response["Permissions-Policy"].count("=()") == len(CLOSED_FEATURES)


def test_a_header_the_view_chose_stays(rf):
    def loader(request):
        return HttpResponse(headers={"Cross-Origin-Resource-Policy": "cross-origin"})

    response = SecurityHeadersMiddleware(loader)(rf.get("/"))
    assert response["Cross-Origin-Resource-Policy"] == "cross-origin"
    assert response["Referrer-Policy"] == "no-referrer"
