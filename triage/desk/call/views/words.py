"""The words the page matches what callers say against, in the region's words: fetched once by each open page."""

from django.http import HttpResponse, JsonResponse
from django.views.decorators.http import require_safe

from triage.desk.access import ALL_ROLES, require_role
from triage.desk.call.open_call import open_call
from triage.desk.call.presenters.word_index import word_index
from triage.desk.request import MemberRequest


@require_safe
@require_role(*ALL_ROLES)
def words(request: MemberRequest) -> HttpResponse:
    return JsonResponse(word_index(open_call(request).check_request))
