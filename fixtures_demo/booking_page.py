"""The invented firm's own web site: one line of it is ours. It keeps nothing; it shows what its form was sent.

It has to be opened under another host name than the check, or the browser would take both for one site and hide what
a frame may not do.
"""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.csrf import csrf_exempt
from django.views.decorators.http import require_http_methods, require_safe

from fixtures_demo.firm import SLUG

CHECK_HOST = "127.0.0.1"


@csrf_exempt
@require_http_methods(["GET", "HEAD", "POST"])
def booking_page(request: HttpRequest) -> HttpResponse:
    """The firm's own form around the frame, which takes the summary."""
    if request.method == "POST":
        return _own_page(request, "asked.html", {"asked": request.POST})
    return _own_page(request, "booking.html", {"own_form": True})


@require_safe
def in_the_frame(request: HttpRequest) -> HttpResponse:
    """The same site without a form: the frame asks for name and address itself."""
    return _own_page(request, "booking.html", {"own_form": False})


@require_safe
def plain_frame(request: HttpRequest) -> HttpResponse:
    """The same without a line of our script: a frame of a fixed height, as any page builder can make one."""
    return _own_page(request, "plain_frame.html", {})


def _own_page(request: HttpRequest, template: str, more: dict[str, object]) -> HttpResponse:
    check = f"{request.scheme}://{CHECK_HOST}:{request.get_port()}"
    context = {"loader": f"{check}/embed/{SLUG}/loader.js", "frame": f"{check}/embed/{SLUG}/", **more}
    response = render(request, f"fixtures_demo/{template}", context)
    response._csp_replace = {"script-src": ["'self'", check], "frame-src": [check]}
    return response
