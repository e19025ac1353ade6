"""What it may be, as so many of ten ovens, which way it moved, and what would still move it."""

from triage.desk.call.presenters.belief import MOST_LEANINGS, askable, leanings, would_change

COLD = "complaint=no-heat&heat-main=no-heat&danger=none"


def leaning_of(opened):
    return leanings(opened)


def test_nothing_told_nothing_believed(call):
    assert leaning_of(call()) == []


def test_the_leading_cause_moves_with_the_last_answer(call):
    before, after = leaning_of(call(COLD)), leaning_of(call(f"{COLD}&display-state=auto-or-timer"))
    assert len(before) == len(after) == MOST_LEANINGS
    clock = next(cause for cause in after if cause.name.startswith("Clock not set"))
    assert clock.moved == "up"
    assert clock.tenths > next((c.tenths for c in before if c.name == clock.name), 0)


def test_the_engines_own_next_question_may_be_asked(call):
    opened = call(COLD)
    step = opened.check_request.step
    found = askable(opened)
    assert step.observation in {worth.observation for worth in found}
    assert [worth.bits for worth in found] == sorted((worth.bits for worth in found), reverse=True)


def test_only_what_is_worth_asking_is_offered(call):
    opened = call(COLD)
    found = askable(opened)
    assert [key.key for key in would_change(opened, found)] == ["j", "k", "l"]
    assert "call-ask=" in would_change(opened, found)[0].href
    assert would_change(opened, [worth for worth in found if worth.bits < 0.01]) == []
