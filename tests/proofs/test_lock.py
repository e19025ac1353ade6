"""A proof is due when a file it depends on has changed, and only then; no lock is written that was not earned."""

from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from tests.proofs.inputs import fingerprint, inputs_of, matches
from tests.proofs.lock import Entry, due_proofs, proof_by_lot, read_lock, write_lock
from tests.proofs.registry import BY_NAME, PROOFS, Proof
from tests.proofs.running import Tally, not_earned
from tests.whole_site.project_files import project_files

PROOF = Proof("small", "one and one is two", ("tests/test_sum.py",), ("data/**", "!data/words/**"), ("triage/web.py",))
FILES = {
    ".gitignore": "*.pyc\n",
    "tests/conftest.py": "",
    "tests/test_sum.py": "from tests import adding\nfrom triage.engine.numbers import ONE\n",
    "tests/adding.py": "def late():\n    import triage.engine.late\n",
    "triage/__init__.py": "",
    "triage/engine/__init__.py": "",
    "triage/engine/numbers.py": "ONE = 1\n",
    "triage/engine/late.py": "",
    "triage/web.py": "import json\nimport triage.shown\n",
    "triage/shown.py": "",
    "triage/desk.py": "",
    "data/a/pack.yaml": "one: 1\ntwo: 2\n",
    "data/words/en.yaml": "one: one\n",
}
OUTSIDE = {".gitignore", "triage/desk.py", "data/words/en.yaml"}


inputs = cache(inputs_of)


@pytest.fixture
def root(tmp_path):
    for name, text in FILES.items():
        write(tmp_path, name, text)
    return tmp_path


def write(root, name, text):
    path = root / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(text.encode())
    project_files.cache_clear()


def test_a_proof_depends_on_what_its_tests_import_and_on_the_data_it_names(root):
    assert {path.as_posix() for path in inputs_of(PROOF, root)} == set(FILES) - OUTSIDE


@pytest.mark.parametrize("name", FILES)
def test_a_change_of_any_of_these_makes_it_due_and_no_other_change_does(root, name):
    before = fingerprint(PROOF, root)
    write(root, name, FILES[name] + "\n")
    assert (fingerprint(PROOF, root) == before) is (name in OUTSIDE)


def test_a_new_file_makes_it_due_and_line_endings_do_not(root):
    before = fingerprint(PROOF, root)
    write(root, "data/a/pack.yaml", "one: 1\r\ntwo: 2\r\n")
    assert fingerprint(PROOF, root) == before
    write(root, "data/b/pack.yaml", "")
    assert fingerprint(PROOF, root) != before


def test_where_the_project_lies_does_not_matter(root, tmp_path_factory):
    other = tmp_path_factory.mktemp("elsewhere")
    for name, text in FILES.items():
        write(other, name, text)
    assert fingerprint(PROOF, other) == fingerprint(PROOF, root)


def test_the_lock_is_read_as_it_was_written_and_names_what_is_due(tmp_path):
    earned = {proof.name: Entry(fingerprint(proof), 7, 1) for proof in PROOFS}
    write_lock(earned, tmp_path / "lock")
    assert read_lock(tmp_path / "lock") == earned
    assert due_proofs(earned) == []
    stale = earned | {"walks": replace(earned["walks"], inputs="0" * 64)}
    assert due_proofs(stale) == [BY_NAME["walks"]]
    assert due_proofs(read_lock(tmp_path / "none")) == list(PROOFS)


def test_a_lock_that_says_other_numbers_than_a_run_on_the_same_files_was_not_earned():
    kept = Entry("a", 21_000, 40)
    assert not_earned(kept, Entry("a", 21_000, 55)) == ""
    assert not_earned(kept, Entry("b", 7, 1)) == ""
    assert not_earned(kept, Entry("a", 7, 40)) == "the lock says 21000 states, this run met 7: the lock was not earned."


def test_a_proof_of_which_one_test_failed_or_none_ran_is_not_earned():
    tally = Tally(list(PROOFS))
    assert not tally.earned(BY_NAME["forged"])
    test = f"{PROOFS[0].tests[0]}::test_a"
    report = pytest.TestReport(test, ("", 0, ""), {}, "passed", None, "call", user_properties=[("states", 9)])
    tally.pytest_runtest_logreport(report)
    assert tally.earned(PROOFS[0])
    assert tally.states == {"walks": 9}
    report.outcome, report.when = "failed", "teardown"
    tally.pytest_runtest_logreport(report)
    assert not tally.earned(PROOFS[0])
    assert tally.states == {"walks": 9}


def test_every_test_file_of_a_proof_is_there_and_each_pattern_names_something():
    every = project_files()
    assert [test for proof in PROOFS for test in proof.tests if Path(test) not in every] == []
    for proof in PROOFS:
        for pattern in (*proof.data, *proof.modules):
            assert any(matches(path, (pattern.lstrip("!"),)) for path in every), pattern


@pytest.mark.parametrize(
    ("path", "names"),
    [
        ("triage/engine/safety.py", {proof.name for proof in PROOFS}),
        ("triage/knowledge/packs/electric_oven/faults.yaml", {proof.name for proof in PROOFS}),
        ("triage/knowledge/packs/electric_oven/text/en/faults.yaml", {"pages", "page-mutations", "page-parity"}),
        ("triage/templates/triage/_question.html", {"pages", "page-mutations", "page-parity", "step-view"}),
        ("triage/household/urls.py", {"pages", "page-parity", "step-view", "fuzzing"}),
        ("triage/static/triage/offline/engine/belief.js", {"engine-parity", "page-parity"}),
        ("triage/desk/urls.py", {"fuzzing"}),
    ],
)
def test_these_proofs_depend_on_this_file(path, names):
    assert names <= {proof.name for proof in PROOFS if Path(path) in inputs(proof)}


def test_the_lot_falls_on_some_proof():
    assert proof_by_lot() in PROOFS
