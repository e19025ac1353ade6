"""What a person who waits is told."""

from triage.authoring.progress import Progress


def test_nothing_is_said_in_the_first_two_seconds_and_then_only_now_and_then():
    said, ticks = [], iter([0.0, 1.9, 2.0, 2.5, 3.9, 4.0])
    tell = Progress("checks", 50, said.append, lambda: next(ticks))
    for done in (10, 20, 30, 40, 50):
        tell(done)
    assert said == ["20 of 50 checks", "50 of 50 checks"]
