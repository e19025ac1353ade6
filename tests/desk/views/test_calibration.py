"""The calibration page: it proposes, and says who decides and how."""

import pytest
from django.urls import reverse

from tests.desk.clients import client_of
from tests.desk.outcomes import make_outcomes
from tests.firm_builders import make_firm, make_member
from tests.reading_pages import read_page
from triage.desk.outcome_stats import MIN_OUTCOMES_FOR_PROPOSAL, report_calibration

pytestmark = pytest.mark.django_db

PAGE = reverse("desk-calibration")


def test_without_outcomes_it_says_what_to_do():
    firm = make_firm()
    page = client_of(make_member(firm)).get(PAGE).content.decode()
    assert "Nothing to score yet." in page
    assert f"manage.py compute_reports --firm {firm.slug}" in page


def test_it_shows_scores_plot_and_proposal_and_has_no_button_that_accepts():
    firm = make_firm()
    make_outcomes(firm, MIN_OUTCOMES_FOR_PROPOSAL)
    report_calibration(firm)
    page = read_page(client_of(make_member(firm)).get(PAGE))
    assert len(page.select(".plot svg")) == 2
    assert "20 of 20" in page.select("dl")[0].text
    assert page.select("main form") == []
    assert f"manage.py pack fit outcomes.yaml --firm {firm.slug}" in page.select("pre")[-1].text
    assert "manage.py pack accept proposal.yaml --accepted-by NAME" in page.select("pre")[-1].text
