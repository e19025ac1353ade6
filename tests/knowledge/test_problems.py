"""A problem reads as one line; a refusal carries them all, once each, in the order of the files."""

from triage.knowledge.problems import PackProblem, PackProblems

LATE = PackProblem("b.yaml", 2, "lamp", "is dark.", "Light it.")
EARLY = PackProblem("a.yaml", 10, "oven, door", "is open.", "Shut it.")
FIRST = PackProblem("a.yaml", 9, "oven", "is hot.", "Wait.")


def test_a_problem_reads_as_place_what_is_wrong_and_what_to_do():
    assert str(EARLY) == "a.yaml:10: oven, door: is open. Shut it."


def test_a_refusal_tells_every_problem_in_the_order_of_the_files_and_lines():
    refusal = PackProblems([LATE, EARLY, FIRST])
    assert refusal.problems == (FIRST, EARLY, LATE)
    assert str(refusal).splitlines() == [str(FIRST), str(EARLY), str(LATE)]


def test_a_problem_found_twice_is_told_once():
    assert PackProblems([LATE, PackProblem(*LATE_PARTS)]).problems == (LATE,)


LATE_PARTS = ("b.yaml", 2, "lamp", "is dark.", "Light it.")
