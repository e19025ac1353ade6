"""What it may cost. Before there is advice there is no price either, but an energy label can be read; a red flag or a
way out of the check stops both."""

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe

from triage.check_pages.costs_page import CostsPage
from triage.check_pages.page_models import Page
from triage.check_pages.presenters.costs import costs_page
from triage.check_pages.presenters.energy_label import label_page
from triage.check_pages.visit import Visit, open_visit
from triage.engine import Advice, Ask
from triage.household.views.showing import show
from triage.household.views.step import page_of


@require_safe
def costs(request: HttpRequest) -> HttpResponseBase:
    visit = open_visit(request)
    return show(request, visit, _page(visit))


def _page(visit: Visit) -> Page | CostsPage:
    match visit.step:
        case Advice() as advice:
            return costs_page(visit, advice)
        case Ask():
            return label_page(visit)
        case _:
            return page_of(visit)
