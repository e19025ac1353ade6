"""A finding says how grave it is and where the author finds it."""

from tests.builders import ELECTRIC_OVEN
from triage.authoring.linting.finding import Gravity, LintFinding, PackSource


def test_a_finding_names_the_line_of_its_entry():
    problem = PackSource(ELECTRIC_OVEN).problem("faults", "grill-element-open", "is odd.", "Mend it.")
    written = (ELECTRIC_OVEN / "faults.yaml").read_text("utf-8").splitlines()
    assert written[problem.line - 1] == "grill-element-open:"
    assert problem.file == "electric_oven/faults.yaml"
    said = str(LintFinding(Gravity.REMARK, "test", problem))
    assert said == f"remark: electric_oven/faults.yaml:{problem.line}: grill-element-open: is odd. Mend it."


def test_an_entry_or_a_file_that_is_not_there_stands_at_the_first_line(tmp_path):
    assert PackSource(ELECTRIC_OVEN).problem("faults", "no-such-fault", "x.", "y.").line == 1
    assert PackSource(tmp_path).problem("faults", "element-open", "x.", "y.").line == 1
