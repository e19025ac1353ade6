"""A trail as an author pastes it: the query string of a check, its whole address, or JSON."""

import json
from dataclasses import dataclass
from urllib.parse import unquote

from triage.engine.check import Check, run_check
from triage.engine.pack import Pack, Region
from triage.query import REGION, Pairs, parse_pairs

LONGEST = 100_000
SHOWN = 5


class InvalidAnswersText(ValueError):
    """A trail that cannot be read; the message says what is wrong and what to do."""


@dataclass(frozen=True, slots=True)
class AnswersText:
    """A trail as read, and the region it names, if any."""

    pairs: Pairs
    region: str | None


def read_text(text: str) -> AnswersText:
    """The pairs of a query string, an address or JSON (`{"question": "answer"}` or a list of pairs).

    Raises BadTrail.
    """
    if len(text) > LONGEST:
        raise InvalidAnswersText(f"The trail is longer than {LONGEST} signs. Give one check.")
    stripped = text.strip()
    pairs = _from_json(stripped) if stripped.startswith(("{", "[")) else _from_query(stripped)
    if not pairs:
        raise InvalidAnswersText("The trail is empty. Paste what stands after the question mark of a check's address.")
    regions = [value for name, value in pairs if name == REGION]
    return AnswersText(tuple(pair for pair in pairs if pair[0] != REGION), regions[-1] if regions else None)


def known_check(pack: Pack, region: Region, pairs: Pairs) -> Check:
    """The check of a trail whose every id is of this pack. Raises BadTrail naming those that are not."""
    check = run_check(pack, region, pairs)
    strange = [problem for problem in check.problems if problem.kind in {"unknown-question", "unknown-answer"}]
    if strange:
        named = [f"{p.observation}={p.answer}" if p.answer else p.observation for p in strange]
        more = f" and {len(named) - SHOWN} more" if len(named) > SHOWN else ""
        raise InvalidAnswersText(
            f"The pack has no {', '.join(named[:SHOWN])}{more}. Take the ids from observations.yaml, or the address "
            "of a check made with this pack."
        )
    return check


def _from_query(text: str) -> Pairs:
    query = text.partition("?")[2] if "?" in text else text
    try:
        return parse_pairs(query)
    except UnicodeDecodeError as error:
        raise InvalidAnswersText("The trail holds bytes that are no text. Copy the address again.") from error
    except ValueError as error:
        shown = unquote(query[:60])
        raise InvalidAnswersText(
            f"{shown!r} is no trail. Write it as question=answer&question=answer, or as JSON."
        ) from error


def _from_json(text: str) -> Pairs:
    try:
        parsed = json.loads(text)
    except (ValueError, RecursionError) as error:
        raise InvalidAnswersText(
            f"The trail begins like JSON and is not: {error}. Check its quotes and commas."
        ) from error
    items = list(parsed.items()) if isinstance(parsed, dict) else parsed
    if not all(_is_pair(item) for item in items):
        raise InvalidAnswersText(
            'A trail in JSON is {"question": "answer"} or [["question", "answer"]], all of it texts.'
        )
    return tuple((name, answer) for name, answer in items)


def _is_pair(item: object) -> bool:
    return isinstance(item, list | tuple) and len(item) == 2 and all(isinstance(part, str) for part in item)
