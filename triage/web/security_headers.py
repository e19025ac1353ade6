"""Response headers that keep a check private to the person who does it.

The whole check stands in the address, so no address may travel to another site. Other sites may not open
these pages in a window they keep a hold on, nor load them as their own material, and no page here can use a
sensor, the camera or a payment. A view that needs something else, as a frame in a firm's page does, sets its
own header and keeps it. The content policy is not here: django-csp writes it from the site's settings.
"""

from collections.abc import Callable

from django.http import HttpRequest
from django.http.response import HttpResponseBase

CLOSED_FEATURES = (
    "accelerometer",
    "camera",
    "display-capture",
    "geolocation",
    "gyroscope",
    "hid",
    "magnetometer",
    "microphone",
    "midi",
    "payment",
    "serial",
    "usb",
    "xr-spatial-tracking",
)

HEADERS = {
    "Referrer-Policy": "no-referrer",
    "Permissions-Policy": ", ".join(f"{feature}=()" for feature in CLOSED_FEATURES),
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
}


class SecurityHeadersMiddleware:
    def __init__(self, get_response: Callable[[HttpRequest], HttpResponseBase]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        response = self.get_response(request)
        for name, value in HEADERS.items():
            response.headers.setdefault(name, value)
        return response
