"""What an address says: the answers in order, the place, and the firm it is for. The query string is read here and
nowhere else.

Django's own reading of it refuses an address with very many parameters; here every address opens a page. A byte that
is not UTF-8 becomes a replacement sign, so it can name no question and is reported like any other mistake.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from urllib.parse import quote, unquote_to_bytes

from django.urls import reverse

from triage.engine import OPENING

REGION = "region"
FIRM = "firm"  # the repair firm the check is done for; like the place it is no answer
TYPED = ("cost-", "read-")  # what is typed into a form of its own begins so; it is no answer
MAX_PAIRS = 1000
MAX_VALUE_LENGTH = 800  # as long as a written reading may be

Pairs = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class ParsedQuery:
    """An address as read: `region` is None where none is named, `cut` whether there was more than is ever read,
    `typed` what stands in fields of a form beside the answers, `firm` the firm's name in addresses or nothing."""

    pairs: Pairs
    region: str | None
    truncated: bool
    typed: Mapping[str, str] = field(default_factory=dict)
    firm: str = ""


def parse_query(query: str) -> ParsedQuery:
    """The pairs of a query string as WSGI hands it over, in order; never raises."""
    pieces = query.split("&", MAX_PAIRS)
    pairs = [_pair(piece) for piece in pieces[:MAX_PAIRS] if piece]
    regions = [value for name, value in pairs if name == REGION]
    firms = [value for name, value in pairs if name == FIRM]
    answers = tuple(pair for pair in pairs if pair[0] not in (REGION, FIRM) and not pair[0].startswith(TYPED))
    typed = {name: value for name, value in pairs if name.startswith(TYPED)}
    cut = len(pieces) > MAX_PAIRS
    return ParsedQuery(answers, regions[-1] if regions else None, cut, typed, firms[-1] if firms else "")


def _pair(piece: str) -> tuple[str, str]:
    name, _, value = piece.partition("=")
    return _plain(name), _plain(value)


def _plain(text: str) -> str:
    raw = unquote_to_bytes(text.replace("+", " ").encode("latin-1", "replace"))
    return raw.decode("utf-8", "replace")[:MAX_VALUE_LENGTH]


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
        query = "&".join(f"{quote(name)}={quote(answer)}" for name, answer in {**self.context_params(), **kept}.items())
        return f"{path}?{query}"

    def context_params(self) -> dict[str, str]:
        """What goes along with the answers and is none."""
        return {REGION: self.region, FIRM: self.firm} if self.firm else {REGION: self.region}
