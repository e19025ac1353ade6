"""A difference between two records of one step would be seen, in each part of them."""

from tests.golden.recording import differences, recorded
from tests.household.checks_done import answers_of
from triage.engine import run_check
from triage.knowledge.library import library


def test_a_difference_would_be_seen():
    pairs = answers_of("fan-element-open", "no-heat").items()
    step = recorded(run_check(library().pack, library().regions["gb-eng"].region, pairs))
    assert step["weights"]
    assert differences(step, step) == []
    for part in step:
        assert differences(step, step | {part: "something else"}) != []
    shifted = {**step, "chances": [chance + 2e-9 for chance in step["chances"]]}
    assert [sentence.split(":")[0] for sentence in differences(step, shifted)] == ["chances"]
    assert differences(step, step | {"chances": [chance + 5e-10 for chance in step["chances"]]}) == []
    assert differences(step, step | {"weights": step["weights"][:-1]}) != []
