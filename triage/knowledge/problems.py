"""What is wrong with a pack file, said so that its author can put it right."""

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, order=True)
class PackProblem:
    """One mistake: where it stands, what is wrong, and what to do."""

    file: str
    line: int
    where: str
    what: str
    remedy: str

    def __str__(self) -> str:
        return f"{self.file}:{self.line}: {self.where}: {self.what} {self.remedy}"


class PackProblems(Exception):
    """Everything wrong with a pack or region, at once; `problems` in file order."""

    def __init__(self, problems: Iterable[PackProblem]) -> None:
        self.problems = tuple(sorted(set(problems)))
        super().__init__("\n".join(str(problem) for problem in self.problems))
