"""One weakness of a pack: how grave, where it stands, what is wrong and what to do."""

from dataclasses import dataclass
from enum import Enum
from pathlib import Path

from triage.knowledge.problems import PackProblem
from triage.knowledge.yaml_reader import read_yaml


class Gravity(Enum):
    """A `mistake` has to be put right; a `remark` is for the author to weigh."""

    MISTAKE = "mistake"
    REMARK = "remark"


@dataclass(frozen=True, slots=True)
class LintFinding:
    """One weakness; `kind` names what was looked for."""

    gravity: Gravity
    kind: str
    problem: PackProblem

    def __str__(self) -> str:
        return f"{self.gravity.value}: {self.problem}"


@dataclass(frozen=True, slots=True)
class PackSource:
    """Where the entries of a pack stand, for findings about ids."""

    folder: Path

    def problem(self, file: str, name: str, what: str, remedy: str) -> PackProblem:
        """A problem with the entry `name` of one file of the pack, such as `faults` or `text/en/faults`."""
        fields = read_yaml(self.folder / f"{file}.yaml", "", [])
        line = fields.lines.get(name, 1) if fields is not None else 1
        return PackProblem(f"{self.folder.name}/{file}.yaml", line, name, what, remedy)
