"""Every address of the API that does not exist, told in the API's own shape and not as a page."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.utils.translation import gettext as _
from django.views.decorators.csrf import csrf_exempt

from triage.web.json_errors import Kind, Trouble, problem_response


@csrf_exempt
def nowhere(_request: HttpRequest) -> HttpResponseBase:
    sentence = _("There is no such address. All addresses are in /api/v1/openapi.json.")
    return problem_response(Trouble(Kind.NOT_HERE, sentence))
