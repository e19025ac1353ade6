"""The calibration page: what is scored, what is left out, and that a proposal is shown with its day."""

import pytest
from statsmodels.stats.proportion import proportion_confint

from tests.desk.outcomes import make_outcomes
from tests.firm_builders import make_firm
from tests.pack_texts import fault_name
from triage.desk.outcome_stats import MIN_OUTCOMES_FOR_PROPOSAL, report_calibration
from triage.desk.presenters.calibration import calibration_page
from triage.models import Outcome

FAN_ELEMENT = fault_name("fan-element-open")

pytestmark = pytest.mark.django_db


def test_nothing_written_down_is_nothing_scored():
    page = calibration_page(make_firm())
    assert (page.all, page.used, page.figures, page.plot, page.proposal) == (0, 0, (), "", None)


def test_shares_have_the_wilson_interval_of_another_library():
    firm = make_firm()
    make_outcomes(firm, 3)
    make_outcomes(firm, 2, fixed_first_visit=False, result="repairable")
    low, high = proportion_confint(3, 5, method="wilson")
    page = calibration_page(firm)
    assert page.figures[0][1] == f"3 of 5 (between {round(100 * low)} and {round(100 * high)} in 100, 95 %)"
    assert page.plot.startswith("<svg")


def test_what_cannot_be_learnt_from_is_counted():
    firm = make_firm()
    gone = make_outcomes(firm, 2)[0]
    Outcome.objects.filter(pk=gone.pk).update(found=["gone-fault"])
    page = calibration_page(firm)
    assert (page.all, page.used, page.left_out) == (2, 1, 1)


def test_a_proposal_is_shown_as_it_was_worked_out():
    firm = make_firm()
    make_outcomes(firm, MIN_OUTCOMES_FOR_PROPOSAL)
    kept = report_calibration(firm)
    proposal = calibration_page(firm).proposal
    assert (proposal.made, proposal.outcomes) == (kept.computed, MIN_OUTCOMES_FOR_PROPOSAL)
    assert proposal.rates[0].fault == FAN_ELEMENT
    assert proposal.rows[0][1] == f"{kept.contents['before'][0]:.3f}"
