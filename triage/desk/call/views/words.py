"""The words the page matches what callers say against, in the region's words: fetched once, then kept."""

from django.http import HttpRequest, JsonResponse
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.check_pages.caching import let_caches_keep
from triage.desk.call.open_call import open_call
from triage.desk.call.presenters.word_index import word_index


@require_safe
def words(request: HttpRequest) -> HttpResponseBase:
    visit = open_call(request).visit
    return let_caches_keep(request, JsonResponse(word_index(visit)), visit)
