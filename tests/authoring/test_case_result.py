"""How a check came out, beside what it should have come to."""

import pytest

from tests.builders import ANYWHERE, make_pack
from triage.authoring.case_result import case_result
from triage.authoring.cases import Expected
from triage.authoring.check_runner import CheckRunner
from triage.engine import NONE_OF_THESE, SCREEN, Band, Result, run_check

COLD = [(SCREEN, NONE_OF_THESE), ("heats", "no-heat"), ("screen-shows", "letters"), ("control", "electronic")]


def came_out(trail, causes, bands):
    walk = CheckRunner(make_pack(), ANYWHERE)
    check = walk.run(trail, lambda _: "cant-tell")
    return walk, check, case_result(walk, "one", check, Expected(causes, bands))


def test_the_chances_are_those_of_the_right_jobs_after_and_before():
    walk, check, found = came_out(list(COLD), ("board-dead", "element-open"), (Band.QUALIFIED,))
    families = check.belief.families
    assert isinstance(check.step, Result)
    assert (found.rank, found.job, found.right_job) == (1, "control", True)
    assert found.leading_probability == families["control"]
    assert found.job_probability == pytest.approx(families["control"] + families["element"], abs=1e-12)
    assert found.prior_job_probability == pytest.approx(
        sum(walk.prior_families[job] for job in ("control", "element")), abs=1e-12
    )


def test_the_rank_is_among_all_causes_though_the_advice_names_few():
    _, check, found = came_out(list(COLD), ("lamp-failed",), (Band.QUALIFIED,))
    assert found.rank > len(found.causes) == len(check.step.verdict.causes)
    assert not found.right_within(3)


def test_a_danger_sign_is_make_safe_and_graver_than_wanted():
    _, _, found = came_out([("shock", "felt-one")], ("element-open",), (Band.QUALIFIED, Band.NORMAL))
    assert (found.band, found.over_triage, found.under_triage) == (Band.MAKE_SAFE, True, False)


def test_between_two_right_bands_is_milder_than_the_gravest():
    _, _, found = came_out(list(COLD), ("board-dead",), (Band.NORMAL, Band.MAKE_SAFE))
    assert (found.band, found.under_triage, found.over_triage) == (Band.QUALIFIED, True, False)


def test_a_way_out_is_right_when_it_was_expected_and_has_no_chance():
    _, _, found = came_out([("fuel", "gas")], ("gas-oven",), (Band.QUALIFIED,))
    assert (found.causes, found.rank, found.right_job) == ((("gas-oven", 1.0),), 1, True)
    assert (found.job_probability, found.prior_job_probability, found.leading_probability) == (None, None, None)


def test_a_way_out_that_was_missed_has_no_rank_and_no_chance():
    _, _, found = came_out(list(COLD), ("gas-oven",), (Band.QUALIFIED,))
    assert (found.rank, found.right_job, found.job_probability, found.prior_job_probability) == (
        None,
        False,
        None,
        None,
    )


def test_a_check_that_goes_on_has_come_to_nothing_yet():
    walk = CheckRunner(make_pack(), ANYWHERE)
    with pytest.raises(TypeError, match="one: the check has not ended"):
        case_result(walk, "one", run_check(walk.pack, ANYWHERE, []), Expected(("other",), (Band.NORMAL,)))
