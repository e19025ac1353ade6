"""The query string of a check, read and written here and nowhere else: its answers in order, its region, and the firm
it is done for. Nothing but the standard library, so that the author's tools share it with pages, calls and job sheets.

Django's own reading refuses an address with very many parameters; here every address opens a page. A byte that is not
UTF-8 becomes a replacement sign, so it can name no question and is reported like any other mistake.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from urllib.parse import parse_qsl, quote, urlencode

REGION = "region"
FIRM = "firm"  # the repair firm the check is done for; like the region it is no answer
TYPED = ("cost-", "read-")  # what is typed into a form of its own begins so; it is no answer
MAX_PAIRS = 1000
MAX_VALUE_LENGTH = 800  # characters: as long as a written reading may be

Pairs = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class ParsedQuery:
    """A query string as read: `region` is None where none is named, `truncated` whether there was more than is ever
    read, `typed` what stands in fields of a form beside the answers, `firm` the firm's name in addresses or nothing."""

    pairs: Pairs
    region: str | None
    truncated: bool
    typed: Mapping[str, str] = field(default_factory=dict)
    firm: str = ""


def parse_query(query: str) -> ParsedQuery:
    """A query string as WSGI hands it over: its bytes, each as one character. Never raises."""
    pieces = query.encode("latin-1", "replace").decode("utf-8", "replace").split("&", MAX_PAIRS)
    pairs = [
        (name[:MAX_VALUE_LENGTH], value[:MAX_VALUE_LENGTH])
        for name, value in parse_qsl("&".join(pieces[:MAX_PAIRS]), keep_blank_values=True)
    ]
    regions = [value for name, value in pairs if name == REGION]
    firms = [value for name, value in pairs if name == FIRM]
    answers = tuple(pair for pair in pairs if pair[0] not in (REGION, FIRM) and not pair[0].startswith(TYPED))
    typed = {name: value for name, value in pairs if name.startswith(TYPED)}
    truncated = len(pieces) > MAX_PAIRS
    return ParsedQuery(answers, regions[-1] if regions else None, truncated, typed, firms[-1] if firms else "")


def parse_pairs(query: str) -> Pairs:
    """Every pair of a query string that somebody pasted. Raises ValueError where it is none, UnicodeDecodeError where
    its bytes are no text."""
    return tuple(parse_qsl(query, keep_blank_values=True, strict_parsing=bool(query), errors="strict"))


def format_query(pairs: Iterable[tuple[str, str]], safe: str = "/") -> str:
    """The query string of these pairs, in order; characters in `safe` stay as they are."""
    return urlencode(list(pairs), quote_via=quote, safe=safe)


def check_query(region: str, answers: Iterable[tuple[str, str]]) -> str:
    """The query string that opens a check."""
    return format_query([(REGION, region), *answers])
