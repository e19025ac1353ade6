"""What was found, in the pack's own terms."""

from tests.builders import ANYWHERE, PACK
from tests.learning.visits import visit
from triage.engine.model import compile_model
from triage.learning.outcome import hypothesis_found, job_found, usable_answers

MODEL = compile_model(PACK, ANYWHERE)


def test_a_pair_is_found_whichever_of_the_two_was_written_down_first():
    h = hypothesis_found(MODEL, ("board-dead", "element-arcing"))
    assert MODEL.hypotheses[h].faults == ("element-arcing", "board-dead")
    assert job_found(PACK, ("board-dead", "element-arcing")) == "element-arcing"


def test_two_faults_the_pack_knows_no_pair_of_are_no_hypothesis_and_the_job_is_the_first():
    assert hypothesis_found(MODEL, ("board-dead", "lamp-failed")) is None
    assert job_found(PACK, ("board-dead", "lamp-failed")) == "board-dead"


def test_answers_the_pack_no_longer_has_are_passed_over():
    answers = {"heats": "no-heat", "heats-well": "no-heat", "never-asked": "x"}
    assert usable_answers(PACK, visit("element-open", answers)) == {"heats": "no-heat"}
