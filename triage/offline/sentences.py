"""Sentences that presenters say, in another language where there is one, and the rules of counting.

The presenters on the phone name a sentence by its words, as those on the server do, and `gettext` knows it by those
words. `extract_messages` finds the sentences in the phone's scripts, so nothing has to be listed twice.
"""

import re
from collections.abc import Callable, Iterator
from pathlib import Path

import triage

PAGES = Path(triage.__file__).parent / "static" / "triage" / "offline" / "pages"
MAX_COUNTED = 130  # more answers than that are never read

_LITERAL = r'"((?:[^"\\]|\\.)*)"'
_SAY = re.compile(rf"\bsay\(\s*{_LITERAL}")
_SAY_COUNTED = re.compile(rf"\bsayCounted\(\s*{_LITERAL},\s*{_LITERAL}")
_PLACEHOLDER = re.compile(r"%\((\w+)\)s")


def presenter_sources() -> str:
    """Every module of the phone's pages, one after the other."""
    return "".join(path.read_text("utf-8") for path in sorted(PAGES.rglob("*.js")))


def extract_messages(script: str) -> tuple[list[str], list[tuple[str, str]]]:
    """The sentences of a script, and those that count as one and as many; each once and in order."""
    return list(dict.fromkeys(_SAY.findall(script))), list(dict.fromkeys(_SAY_COUNTED.findall(script)))


def plural_table(form_for: Callable[[int], str]) -> tuple[str, list[str]]:
    """A digit for each count from nothing up, and the forms the digits stand for. The last digit counts for more."""
    every = [form_for(n) for n in range(MAX_COUNTED)]
    forms = list(dict.fromkeys(every))
    return _shortest("".join(str(forms.index(form)) for form in every)), forms


def _shortest(digits: str) -> str:
    return digits.rstrip(digits[-1]) + digits[-1]


def split_placeholders(sentence: str) -> Iterator[tuple[str, bool]]:
    """The text of a sentence and the names of the words left open in it, by turns; true for text."""
    for at, part in enumerate(_PLACEHOLDER.split(sentence)):
        if part:
            yield (part if at % 2 else part.replace("%%", "%")), at % 2 == 0
