"""What it may be, as so many of ten ovens, which way it moved, and what would still move it."""

from triage.desk.call.presenters.differential import MAX_CANDIDATES, allowed_questions, differential, useful_questions

COLD = "complaint=no-heat&heat-main=no-heat&danger=none"


def leaning_of(opened):
    return differential(opened)


def test_nothing_told_nothing_believed(call):
    assert leaning_of(call()) == []


def test_the_leading_cause_moves_with_the_last_answer(call):
    before, after = leaning_of(call(COLD)), leaning_of(call(f"{COLD}&display-state=auto-or-timer"))
    assert len(before) == len(after) == MAX_CANDIDATES
    clock = next(cause for cause in after if cause.name.startswith("Clock not set"))
    assert clock.trend == "up"
    assert clock.tenths > next((c.tenths for c in before if c.name == clock.name), 0)


def test_the_engines_own_next_question_may_be_asked(call):
    opened = call(COLD)
    step = opened.check_request.step
    found = allowed_questions(opened)
    assert step.observation in {worth.observation for worth in found}
    assert [worth.bits for worth in found] == sorted((worth.bits for worth in found), reverse=True)


def test_only_what_is_worth_asking_is_offered(call):
    opened = call(COLD)
    found = allowed_questions(opened)
    assert [key.key for key in useful_questions(opened, found)] == ["j", "k", "l"]
    assert "call-ask=" in useful_questions(opened, found)[0].href
    assert useful_questions(opened, [worth for worth in found if worth.bits < 0.01]) == []
