"""The words the page matches what callers say against, in the region's words: fetched once by each open page."""

from django.http import HttpRequest, HttpResponse, JsonResponse
from django.views.decorators.http import require_safe

from triage.desk.call.open_call import open_call
from triage.desk.call.presenters.word_index import word_index


@require_safe
def words(request: HttpRequest) -> HttpResponse:
    return JsonResponse(word_index(open_call(request).check_request))
