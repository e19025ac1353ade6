"""The check itself: whatever the answers in the address lead to next."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.check_pages.keeping import kept
from triage.check_pages.page_models import Page
from triage.check_pages.presenters.advice import advice_page
from triage.check_pages.presenters.leave import exit_page
from triage.check_pages.presenters.make_safe import make_safe_page
from triage.check_pages.presenters.question import asked_page
from triage.check_pages.visit import Visit, open_visit
from triage.engine import Advice, Ask, MakeSafe, NotThis
from triage.household.views.showing import show


@require_safe
@kept
def step(request: HttpRequest) -> HttpResponseBase:
    visit = open_visit(request)
    return show(request, visit, page_of(visit))


def page_of(visit: Visit) -> Page:
    match visit.step:
        case Ask() as asked:
            return asked_page(visit, asked)
        case MakeSafe() as danger:
            return make_safe_page(visit, danger)
        case Advice() as advice:
            return advice_page(visit, advice)
        case NotThis(reason=reason):
            return exit_page(visit, reason)
