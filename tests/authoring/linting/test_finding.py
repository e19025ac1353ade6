"""A finding says how grave it is and where the author finds it."""

from tests.builders import ELECTRIC_OVEN
from triage.authoring.linting.finding import Finding, Gravity, Places


def test_a_finding_names_the_line_of_its_entry():
    problem = Places(ELECTRIC_OVEN).problem("faults", "grill-element-open", "is odd.", "Mend it.")
    written = (ELECTRIC_OVEN / "faults.yaml").read_text("utf-8").splitlines()
    assert written[problem.line - 1] == "grill-element-open:"
    assert problem.file == "electric_oven/faults.yaml"
    said = str(Finding(Gravity.REMARK, "test", problem))
    assert said == f"remark: electric_oven/faults.yaml:{problem.line}: grill-element-open: is odd. Mend it."


def test_an_entry_or_a_file_that_is_not_there_stands_at_the_first_line(tmp_path):
    assert Places(ELECTRIC_OVEN).problem("faults", "no-such-fault", "x.", "y.").line == 1
    assert Places(tmp_path).problem("faults", "element-open", "x.", "y.").line == 1
