"""What an address says: the answers in order, and the place. The query string is read here and nowhere else.

Django's own reading of it refuses an address with very many parameters; here every address opens a page. A byte that
is not UTF-8 becomes a replacement sign, so it can name no question and is reported like any other mistake.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from urllib.parse import quote, unquote_to_bytes

from django.urls import reverse

REGION = "region"
MOST_PAIRS = 1000
LONGEST_VALUE = 200

Pairs = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Asked:
    """An address as read: `region` is None where none is named, `cut` whether there was more than is ever read."""

    pairs: Pairs
    region: str | None
    cut: bool


def read_address(query: str) -> Asked:
    """The pairs of a query string as WSGI hands it over, in order; never raises."""
    pieces = query.split("&", MOST_PAIRS)
    pairs = [_pair(piece) for piece in pieces[:MOST_PAIRS] if piece]
    regions = [value for name, value in pairs if name == REGION]
    answers = tuple(pair for pair in pairs if pair[0] != REGION)
    return Asked(answers, regions[-1] if regions else None, len(pieces) > MOST_PAIRS)


def _pair(piece: str) -> tuple[str, str]:
    name, _, value = piece.partition("=")
    return _plain(name), _plain(value)


def _plain(text: str) -> str:
    raw = unquote_to_bytes(text.replace("+", " ").encode("latin-1", "replace"))
    return raw.decode("utf-8", "replace")[:LONGEST_VALUE]


@dataclass(frozen=True, slots=True)
class Links:
    """Addresses that carry the good answers of this check and its region, and nothing else."""

    region: str
    answers: Mapping[str, str]

    def step(self, more: Mapping[str, str] | None = None, without: Iterable[str] = ()) -> str:
        return self._to(reverse("household-step"), more, without)

    def danger(self) -> str:
        return self._to(reverse("household-danger"))

    def task(self, task: str, more: Mapping[str, str] | None = None) -> str:
        return self._to(reverse("household-task", args=[task]), more)

    def summary(self) -> str:
        return self._to(reverse("household-summary"))

    def leave(self, reason: str) -> str:
        return self._to(reverse("household-exit", args=[reason]))

    def start(self) -> str:
        """The first page, afresh: the place goes along, the answers do not."""
        return Links(self.region, {}).first()

    def first(self, more: Mapping[str, str] | None = None) -> str:
        """The first page with the answers kept, for somebody who has not said what is wrong yet."""
        return self._to(reverse("household-start"), more)

    def at(self, region: str) -> str:
        """The first page for another place, with the answers kept."""
        return Links(region, self.answers).first()

    def _to(self, path: str, more: Mapping[str, str] | None = None, without: Iterable[str] = ()) -> str:
        left = set(without)
        kept = {name: answer for name, answer in self.answers.items() if name not in left} | dict(more or {})
        query = "&".join(f"{quote(name)}={quote(answer)}" for name, answer in {REGION: self.region, **kept}.items())
        return f"{path}?{query}"
