"""A firm's outcomes as learning takes them: the numbers against an independent library, the file read back."""

import numpy as np
import pytest
from sklearn.metrics import log_loss

from tests.desk.outcomes import make_outcomes
from tests.firm_builders import ANSWERS, make_firm
from triage.desk.outcome_stats import (
    MIN_OUTCOMES_FOR_PROPOSAL,
    current_scores,
    outcomes_file,
    outcomes_of,
    report_calibration,
    training_outcomes,
)
from triage.knowledge.library import library
from triage.learning.cross_validation import forecasts
from triage.learning.outcome_file import read_outcomes
from triage.models import Outcome, Report

pytestmark = pytest.mark.django_db


def lessons(firm):
    return training_outcomes(outcomes_of(firm), library().pack)


def test_an_outcome_is_told_with_its_answers_and_the_ids_of_its_parts():
    firm = make_firm()
    part = library().texts_for("gb-eng").parts["ring-element"]
    make_outcomes(firm, 1, fitted=(part, "a clip of my own"))
    (told,) = lessons(firm)
    assert told.answers == dict(ANSWERS)
    assert (told.found, told.fitted, told.firm) == (("fan-element-open",), ("ring-element",), firm.slug)


def test_only_ones_own_outcomes_are_told():
    firm = make_firm()
    make_outcomes(make_firm(), 1)
    assert lessons(firm) == []
    assert current_scores([]) is None


def test_what_the_pack_no_longer_knows_is_left_out():
    firm = make_firm()
    make_outcomes(firm, 2)
    Outcome.objects.filter(pk=outcomes_of(firm)[0].pk).update(found=["gone-fault"])
    assert len(lessons(firm)) == 1


def test_the_scores_are_those_of_their_definitions_of_another_library():
    """Brier, Monthly Weather Review 1950: squares summed over all faults; the log score by scikit-learn's log_loss."""
    firm = make_firm()
    make_outcomes(firm, 3)
    make_outcomes(firm, 1, found="other-not-listed")
    outcomes = lessons(firm)
    regions = {code: place.region for code, place in library().regions.items()}
    told = forecasts(library().pack, regions, outcomes)
    names = sorted(told[0].probabilities)
    stated = np.array([[one.probabilities[name] for name in names] for one in told])
    was = np.array([[one.found == name for name in names] for one in told], dtype=float)
    held = current_scores(outcomes)
    assert held.brier == pytest.approx(((stated - was) ** 2).sum(axis=1).mean(), rel=1e-12)
    assert held.log_score == pytest.approx(log_loss(was.argmax(axis=1), stated, labels=range(len(names))), rel=1e-9)


def test_the_file_for_learning_is_read_back_as_it_was(tmp_path):
    firm = make_firm()
    make_outcomes(firm, 2, fitted=(library().texts_for("gb-eng").parts["ring-element"],))
    told, pack = lessons(firm), library().pack
    file = tmp_path / "outcomes.yaml"
    file.write_text(outcomes_file(told, pack), "utf-8")
    read = read_outcomes([file], pack, library().regions)
    plain = [(o.reference, o.region, dict(o.answers), o.found, o.day, o.first_visit, o.fitted, o.firm) for o in told]
    assert [
        (o.reference, o.region, dict(o.answers), o.found, o.day, o.first_visit, o.fitted, o.firm) for o in read
    ] == plain


def test_a_proposal_waits_for_enough_outcomes_and_is_kept_once():
    firm = make_firm()
    make_outcomes(firm, MIN_OUTCOMES_FOR_PROPOSAL - 1)
    assert report_calibration(firm) is None
    make_outcomes(firm, 1)
    kept = report_calibration(firm)
    assert report_calibration(firm).pk == kept.pk
    told = Report.objects.get().contents
    assert told["outcomes"] == MIN_OUTCOMES_FOR_PROPOSAL
    rates = {fault: (before, after) for fault, before, after, _found in told["rates"]}
    assert rates["fan-element-open"][1] > rates["fan-element-open"][0]
    assert told["plot"].startswith("<svg")
