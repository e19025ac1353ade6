"""A refusal reads as its sentences, one after the other."""

from triage.jobsheet.errors import FieldProblem, Refused


def test_it_says_everything_that_is_wrong():
    refused = Refused([FieldProblem("name", "Give a name."), FieldProblem("email", "Give an address.")])
    assert str(refused) == "Give a name. Give an address."
    assert [problem.field for problem in refused.problems] == ["name", "email"]
