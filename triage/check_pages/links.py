"""Addresses of the householder's pages. Each carries the answers that could be used, the region and the firm."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from django.urls import reverse

from triage.engine import OPENING
from triage.query import FIRM, REGION, format_query


@dataclass(frozen=True, slots=True)
class Links:
    """Addresses that carry the good answers of this check, its region and its firm, and nothing else."""

    region: str
    answers: Mapping[str, str]
    firm: str = ""

    def step(self, more: Mapping[str, str] | None = None, without: Iterable[str] = ()) -> str:
        return self._to(reverse("household-step"), more, without)

    def danger(self) -> str:
        return self._to(reverse("household-danger"))

    def task(self, task: str, more: Mapping[str, str] | None = None) -> str:
        return self._to(self.task_path(task), more)

    def task_path(self, task: str) -> str:
        """The address without answers, for a form that carries them itself."""
        return reverse("household-task", args=[task])

    def reading(self, kind: str, more: Mapping[str, str] | None = None) -> str:
        return self._to(self.reading_path(kind), more)

    def reading_path(self, kind: str) -> str:
        return reverse("household-reading", args=[kind])

    def continue_url(self, more: Mapping[str, str] | None = None) -> str:
        """The check, or the first page for somebody who has not said what is wrong yet."""
        return self.step(more) if OPENING in self.answers else self.start(more)

    def summary(self) -> str:
        return self._to(reverse("household-summary"))

    def costs(self, more: Mapping[str, str] | None = None) -> str:
        return self._to(reverse("household-costs"), more)

    def hand_over(self) -> str:
        return self._to(reverse("household-hand-over"))

    def leave(self, reason: str) -> str:
        return self._to(reverse("household-exit", args=[reason]))

    def restart(self) -> str:
        """The first page, afresh: the place and the firm go along, the answers do not."""
        return Links(self.region, {}, self.firm).start()

    def start(self, more: Mapping[str, str] | None = None) -> str:
        """The first page with the answers kept, for somebody who has not said what is wrong yet."""
        return self._to(reverse("household-start"), more)

    def with_region(self, region: str) -> str:
        """The first page for another place, with the answers kept."""
        return Links(region, self.answers, self.firm).start()

    def _to(self, path: str, more: Mapping[str, str] | None = None, without: Iterable[str] = ()) -> str:
        left = set(without)
        kept = {name: answer for name, answer in self.answers.items() if name not in left} | dict(more or {})
        return f"{path}?{format_query({**self.context_params(), **kept}.items())}"

    def context_params(self) -> dict[str, str]:
        """What goes along with the answers and is none."""
        return {REGION: self.region, FIRM: self.firm} if self.firm else {REGION: self.region}
