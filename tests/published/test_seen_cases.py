"""Real accounts with the cause that was found, and a practitioner's short cases, played as a person would live
them.

`seen_cases.yaml` and `vignettes.yaml` say where each comes from. `python -m tests.published.replaying`
prints the figures behind these limits.
"""

import pytest

from tests.builders import electric_oven
from tests.published.places import place
from tests.published.replaying import missed_danger, play, seen_cases, vignettes, walk_in
from triage.authoring.case_result import case_result
from triage.authoring.figures import figures
from triage.engine import NONE_OF_THESE, SCREEN, Emergency, parse_answers, run_check
from triage.engine.safety import ends_check

RIGHT_CAUSES_AT_LEAST = 17
# What callers know who hang up early or were not there: only the first few questions they could answer.
CUT_SHORT = (3, 10)


def by_name(cases):
    return [pytest.param(case, id=case.id) for case in cases]


@pytest.mark.parametrize("case", by_name([*seen_cases(), *vignettes()]))
def test_every_case_is_told_in_the_packs_own_words(case):
    pack, told = electric_oven(), case.answers.items()
    assert {p.kind for p in parse_answers(pack, told).problems} <= {"out-of-place"}
    causes = {*pack.faults, *pack.out_of_scope.values()}
    assert set(case.expected.causes) <= causes


@pytest.mark.parametrize("case", by_name(seen_cases()))
def test_a_real_case_gets_the_right_advice_level(case):
    played = play(case)
    assert played.right_band, played


@pytest.mark.parametrize("most", [None, *CUT_SHORT])
def test_no_danger_is_missed_however_little_the_caller_knows(most):
    played = [play(case, most) for case in [*seen_cases(), *vignettes()]]
    assert [p.case for p in played if missed_danger(p)] == []


def test_the_cause_found_is_among_the_first_three_in_most_real_cases():
    found = figures([play(case) for case in seen_cases()])
    assert found.cause_in_three.count >= RIGHT_CAUSES_AT_LEAST, found


@pytest.mark.parametrize("most", CUT_SHORT)
def test_a_caller_cut_short_is_seldom_worse_off(most):
    whole = figures([play(case) for case in seen_cases()]).cause_in_three.count
    short = figures([play(case, most) for case in seen_cases()]).cause_in_three.count
    assert short >= whole - 2


def test_no_case_takes_more_questions_than_the_pack_allows():
    played = [play(case) for case in [*seen_cases(), *vignettes()]]
    assert max(len(p.asked) for p in played) <= electric_oven().limits.max_questions


@pytest.mark.parametrize("case", by_name(vignettes()))
def test_the_practitioners_verdict_when_all_is_told(case):
    """Everything at once, as a repairer reads it on the sheet: the first cause and the advice level."""
    pack, region = electric_oven(), place(case.region)
    trail = [(SCREEN, NONE_OF_THESE), *case.answers.items()]
    check = run_check(pack, region, trail)
    check.__dict__["step"] = check.conclusion()
    assert isinstance(check.step, Emergency) == ends_check(check.flags)
    played = case_result(walk_in(case.region), case.id, check, case.expected)
    assert (played.right_within(1), played.right_band) == (True, True), played


@pytest.mark.parametrize("case", by_name(vignettes()))
def test_the_practitioners_verdict_when_asked_question_by_question(case):
    played = play(case)
    assert (played.right_within(1), played.right_band) == (True, True), played
